import { catalogue, type Part } from "../lib/catalogue.ts";
import type { RecordedTest, RecordTest } from "../model/test-record.ts";

const wording = catalogue({
  giveVolts: (most: Part) => `Give volts from 0 to ${most}, for example 121.8.`,
  giveOhms: (most: Part, open: Part) => `Give ohms from 0 to ${most}, for example 0.3, or “${open}”.`,
  giveOneOf: (results: Part) => `Give one of: ${results}.`,
  sayWhich: "Say which outlets went dark or came on; an empty list where none did.",
  writeNote: "Write what is to be noted.",
  cameOn: (outlets: Part) => `${outlets} came on`,
  nothingCameOn: "nothing came on",
  nothingWentDark: "nothing went dark",
  outletsCameOn: (count: Part) => `${count} outlets came on`,
  outletsWentDark: (count: Part) => `${count} outlets went dark`,
  wentDark: (outlets: Part) => `${outlets} went dark`,
});

/** How the result of a test is written down. */
export type ValueKind = "volts" | "ohms" | "word" | "outlets" | "text";

export const VALUE_KINDS: Readonly<Record<RecordTest, ValueKind>> = {
  "hot-neutral": "volts",
  "hot-ground": "volts",
  "neutral-ground": "volts",
  polarity: "word",
  works: "word",
  "own-test": "outlets",
  reset: "outlets",
  "plug-in-button": "outlets",
  dead: "word",
  continuity: "ohms",
  note: "text",
};

/** What a test with a word for a result may be found to be, the usual one first. Of polarity: names on the label of a tester. */
export const RESULT_WORDS: Readonly<Partial<Record<RecordTest, readonly string[]>>> = {
  polarity: [
    "correct",
    "open-ground",
    "open-neutral",
    "open-hot",
    "hot-ground-reversed",
    "hot-neutral-reversed",
    "unnamed",
  ],
  works: ["works", "does-not-work"],
  dead: ["dead", "live"],
};

/** No conduction at all, where a resistance is asked for. */
export const OPEN = "open";

/** Ranges keep slips of the keyboard out; they are not limits of any rule. */
const MOST_VOLTS = 1_000;
const MOST_OHMS = 1_000_000_000;

/** Why a result cannot be written so, as a sentence; undefined where it can. */
export function recordedProblem(
  { test, outlets }: RecordedTest,
  value: string,
  unit: string | undefined,
): string | undefined {
  const kind = VALUE_KINDS[test];
  const figure = figureOf(value);
  switch (kind) {
    case "volts":
      return figure !== undefined && figure >= 0 && figure <= MOST_VOLTS && unit === "V"
        ? undefined
        : wording.giveVolts(MOST_VOLTS);
    case "ohms":
      if (value === OPEN) return undefined;
      return figure !== undefined && figure >= 0 && figure <= MOST_OHMS && unit === "ohm"
        ? undefined
        : wording.giveOhms(MOST_OHMS, OPEN);
    case "word": {
      const words = RESULT_WORDS[test] ?? [];
      return words.includes(value) ? undefined : wording.giveOneOf(words.join(", "));
    }
    case "outlets":
      return outlets === undefined ? wording.sayWhich : undefined;
    case "text":
      return value.trim() === "" ? wording.writeNote : undefined;
  }
}

/** A plain decimal number as it is kept; a comma that a person types is turned into a point before. */
export const figureOf = (value: string): number | undefined =>
  /^-?\d+(\.\d+)?$/.test(value) ? Number(value) : undefined;

/** What is kept as the words of a button's result, for who reads the file: "R1b, R2 went dark". */
export function outletsValue(test: RecordTest, names: readonly string[]): string {
  const isOn = test === "reset";
  if (names.length === 0) return isOn ? wording.nothingCameOn : wording.nothingWentDark;
  const text = (isOn ? wording.cameOn : wording.wentDark)(names.join(", "));
  if (text.length <= LONGEST_VALUE) return text;
  return (isOn ? wording.outletsCameOn : wording.outletsWentDark)(names.length);
}

/** A reading's value holds so many letters. */
const LONGEST_VALUE = 200;

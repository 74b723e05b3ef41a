import type { RecordedTest, RecordTest } from "../model/test-record.ts";

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
        : `Give volts from 0 to ${MOST_VOLTS}, for example 121.8.`;
    case "ohms":
      if (value === OPEN) return undefined;
      return figure !== undefined && figure >= 0 && figure <= MOST_OHMS && unit === "ohm"
        ? undefined
        : `Give ohms from 0 to ${MOST_OHMS}, for example 0.3, or “${OPEN}”.`;
    case "word": {
      const words = RESULT_WORDS[test] ?? [];
      return words.includes(value) ? undefined : `Give one of: ${words.join(", ")}.`;
    }
    case "outlets":
      return outlets === undefined
        ? "Say which outlets went dark or came on; an empty list where none did."
        : undefined;
    case "text":
      return value.trim() === "" ? "Write what is to be noted." : undefined;
  }
}

/** A plain decimal number as it is kept; a comma that a person types is turned into a point before. */
export const figureOf = (value: string): number | undefined =>
  /^-?\d+(\.\d+)?$/.test(value) ? Number(value) : undefined;

/** What is kept as the words of a button's result, for who reads the file: "R1b, R2 went dark". */
export function outletsValue(test: RecordTest, names: readonly string[]): string {
  const did = test === "reset" ? "came on" : "went dark";
  const text = names.length === 0 ? `nothing ${did}` : `${names.join(", ")} ${did}`;
  return text.length <= LONGEST_VALUE ? text : `${names.length} outlets ${did}`;
}

/** A reading's value holds so many letters. */
const LONGEST_VALUE = 200;

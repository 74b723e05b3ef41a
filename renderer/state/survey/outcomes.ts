import type { SurveyAnswer, SurveyedCable, SurveyWanted } from "../../../shared-model/answers/survey.ts";
import type { CableId, DeviceId } from "../../../shared-model/model/ids.ts";
import type { SurveyPoint, SurveyTest } from "../../../shared-model/model/survey.ts";
import type { Result } from "./write-reading.ts";

/** What was entered for the tests of one form, by their place in it. */
export interface Entered {
  /** Figures as they were typed. */
  readonly figures: Readonly<Record<number, string>>;
  /** Outlets and lights that worked; undefined until something was said. */
  readonly works?: ReadonlySet<string>;
  /** Breakers that were turned off, where one is asked for. */
  readonly breakers: Readonly<Record<number, DeviceId>>;
  /** Yes or no of what is looked at. */
  readonly seen: Readonly<Record<number, boolean>>;
}

export const NOTHING_ENTERED: Entered = { figures: {}, breakers: {}, seen: {} };

/** Whether a test of an arrangement reads ohms: with the power off there is nothing else to read. */
export const readsOhms = ({ arrangement }: Pick<SurveyWanted, "arrangement">): boolean => arrangement === "A1";

type Wanted = Pick<SurveyWanted, "arrangement" | "tests">;

const isFigure = ({ kind }: SurveyTest): boolean => kind === "pair" || kind === "current" || kind === "test-lamp";
const isSeen = ({ kind }: SurveyTest): boolean => kind === "look" || kind === "breaker" || kind === "test-lamp";

/** Whether everything that is asked for was entered. */
export const isComplete = ({ tests }: Wanted, { figures, seen, breakers, works }: Entered): boolean =>
  tests.every(
    (test, at) =>
      (!isFigure(test) || (figures[at] ?? "").trim() !== "") &&
      (!isSeen(test) || seen[at] !== undefined) &&
      (test.kind !== "breaker" || breakers[at] !== undefined) &&
      (test.kind !== "works" || works !== undefined),
  );

/** The first figure that is none, as it was typed; undefined where all can be read. */
export function unreadable(wanted: Wanted, { figures }: Entered): string | undefined {
  return wanted.tests
    .flatMap((test, at) => (isFigure(test) ? [(figures[at] ?? "").trim()] : []))
    .find((typed) => {
      const value = figureTyped(typed);
      if (typed === "" || (value === OPEN && readsOhms(wanted))) return false;
      const number = Number(value);
      return !(number >= 0 && number <= (readsOhms(wanted) ? MOST_OHMS : MOST_VOLTS));
    });
}

/** Ranges keep slips of the keyboard out; they are not limits of any rule. */
const MOST_VOLTS = 1_000;
const MOST_OHMS = 1_000_000_000;

/** The results as they are written down. A decimal comma, and the unit behind a figure, are what people type. */
export const resultsOf = (wanted: Wanted, entered: Entered): readonly Result[] =>
  wanted.tests.map((test, at) => resultOf(wanted, test, at, entered));

function resultOf(wanted: Wanted, test: SurveyTest, at: number, entered: Entered): Result {
  const { figures, seen, breakers, works } = entered;
  const value = figureTyped(figures[at] ?? "");
  switch (test.kind) {
    case "pair":
      return { test, value, ...(value !== OPEN && { unit: readsOhms(wanted) ? "ohm" : "V" }) };
    case "current":
      return { test, value, unit: "A" };
    case "test-lamp":
      return { test: { ...test, lightGlows: seen[at] === true }, value, unit: "V" };
    case "works":
      return { test: { ...test, items: [...(works ?? [])] }, value: String(works?.size ?? 0) };
    case "look":
      return { test: { ...test, feedThere: seen[at] === true }, value: yesOrNo(seen[at]) };
    case "breaker":
      return {
        test: { ...test, breaker: breakers[at] ?? test.breaker, wentDead: seen[at] === true },
        value: yesOrNo(seen[at]),
      };
  }
}

/** As it stands in the file for a reading without a figure. */
const yesOrNo = (seen: boolean | undefined): string => (seen === true ? "yes" : "no");

/** No conduction, where a resistance is asked for. */
export const OPEN = "open";

function figureTyped(text: string): string {
  const typed = text.trim();
  if (typed.toLowerCase() === OPEN) return OPEN;
  const [, figure] = /^(-?[\d.,]+)\s*(v|volts?|a|ohms?|Ω)?$/i.exec(typed) ?? [];
  const number = Number((figure ?? typed).replace(",", "."));
  return figure !== undefined && Number.isFinite(number) ? String(Number(number.toFixed(3))) : typed;
}

/** Stands among what works for an outlet or light that is in no list. */
export const NOT_LISTED = "not-listed";

/** Cables of which a pair is read by this form, in its order: where one energisation reads them all. */
export function cablesRead({ tests }: Pick<SurveyWanted, "tests">): readonly CableId[] {
  const ids = tests.flatMap((test) => (test.kind === "pair" && test.from !== "ground" ? [test.from.cable] : []));
  return [...new Set(ids)];
}

/**
 * Figures as of one live cable among dead ones, to be corrected before they are written down.
 * @param live The cable that is live; undefined for none.
 * @param volts What a meter shows at the supply, as a person reads it off: a round figure.
 */
export function figuresOfOneLive(
  { tests }: Pick<SurveyWanted, "tests">,
  cables: readonly SurveyedCable[],
  live: CableId | undefined,
  volts: number,
): Readonly<Record<number, string>> {
  const isQuiet = (point: SurveyPoint): boolean =>
    point === "ground" ||
    cables
      .find(({ id }) => id === point.cable)
      ?.conductors.some(({ key, code, grounding }) => key === point.conductor && (grounding || code === "WH")) === true;
  return Object.fromEntries(
    tests.flatMap((test, at) => {
      if (test.kind !== "pair") return [];
      const own = [test.from, test.to].some((point) => point !== "ground" && point.cable === live);
      const across = isQuiet(test.from) !== isQuiet(test.to);
      return [[at, own && across ? String(volts) : "0"]];
    }),
  );
}

/** One thing that may be seen to work together, by what is not ruled out. */
export interface LikelyWorks {
  readonly key: string;
  readonly items: readonly string[];
  /** Share of what is not ruled out. */
  readonly weight: number;
}

/**
 * What may be seen to work once cables are joined to the supply: for each assignment that is not ruled out what its joined
 * cables lead to, the likeliest first. Empty where not every assignment is at hand.
 */
export function likelyWorks(answer: SurveyAnswer, joined: readonly CableId[] = []): readonly LikelyWorks[] {
  if (answer.surviving.length < answer.left) return [];
  const found = new Map<string, LikelyWorks>();
  for (const { roles, weight } of answer.surviving) {
    const on = new Set(
      answer.cables.flatMap(({ id }, at) =>
        joined.includes(id) ? (roles[at]?.items ?? []).map((item) => item.id) : [],
      ),
    );
    const items = answer.items.filter(({ id }) => on.has(id)).map(({ id }) => id);
    const key = items.join(" ");
    found.set(key, { key, items, weight: (found.get(key)?.weight ?? 0) + weight });
  }
  return [...found.values()].sort((p, q) => q.weight - p.weight || (p.key < q.key ? -1 : 1));
}

/**
 * Cables that are in the trap: what was read leaves only what is live, and among that a supply with hot and neutral reversed
 * and the switch end of a loop.
 */
export const inTrap = ({ cables }: Pick<SurveyAnswer, "cables">): readonly SurveyedCable[] =>
  cables.filter(
    ({ may }) =>
      may.every(({ role }) => role.kind === "loop-fed" || role.kind.endsWith("supply")) &&
      may.some(({ role }) => role.reversed === true) &&
      may.some(({ role }) => role.kind === "loop-fed"),
  );

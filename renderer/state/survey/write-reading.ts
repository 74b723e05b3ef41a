import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  OutletKey,
  ReadingId,
} from "../../../shared-model/model/ids.ts";
import { cableEnd } from "../../../shared-model/model/ids.ts";
import type { Reading } from "../../../shared-model/model/project.ts";
import type {
  SurveyArrangement,
  SurveyedReading,
  SurveyFacts,
  SurveyInstrument,
  SurveyPoint,
  SurveySwitch,
  SurveyTest,
  SurveyTold,
} from "../../../shared-model/model/survey.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { type Dispatched, dispatch, documentStore } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { testedByStore } from "../test-record.ts";
import { surveyStore } from "./survey-store.ts";
import { wording } from "./words.ts";

/** One result as it was entered. */
export interface Result {
  readonly test: SurveyTest;
  /** A figure, "open", or nothing where the test says it all. */
  readonly value: string;
  readonly unit?: "V" | "A" | "ohm";
}

/** What holds for all results of one test. */
export interface Circumstances {
  readonly box: EnclosureId;
  readonly arrangement: SurveyArrangement;
  readonly instrument: SurveyInstrument;
  readonly joined?: readonly CableId[];
  readonly switches?: readonly SurveySwitch[];
  readonly nothingPlugged?: boolean;
}

type Taken = Omit<Reading, "id" | "order">;

/** Readings of the survey of a box, or those of the map where no box is given, in the order in which they were written. */
export const surveyReadings = (
  readings: Readonly<Record<ReadingId, Reading>>,
  box?: EnclosureId,
): readonly (Reading & { readonly survey: SurveyedReading })[] =>
  inOrder<Reading>(readings).flatMap((reading) =>
    reading.survey !== undefined && reading.survey.box === box ? [{ ...reading, survey: reading.survey }] : [],
  );

/** Writes the results of one test down: one undo step. The hold points that were ticked for it stand in the remark. */
export function writeResults(around: Circumstances, results: readonly Result[]): Dispatched {
  const remark = ticksInWords();
  const { box, arrangement, instrument, joined, switches, nothingPlugged } = around;
  const calls = results.map(({ test, value, unit }) => {
    const reading: Taken = {
      instrument,
      points: pointsOf(test, box),
      value,
      ...(unit !== undefined && { unit }),
      state: "as-found",
      ...whoAndWhen(),
      ...(remark !== "" && { remark }),
      survey: {
        box,
        arrangement,
        test,
        ...(joined && joined.length > 0 && { joined }),
        ...(switches && switches.length > 0 && { switches }),
        ...(nothingPlugged === true && { nothingPlugged }),
      },
    };
    return { command: "add-reading" as const, args: { id: mintId<ReadingId>("m"), reading } };
  });
  const [only] = calls;
  const done =
    calls.length === 1 && only !== undefined
      ? dispatch(only)
      : dispatch({ command: "run-together", args: { title: wording.recordReadings(calls.length), calls } });
  // The test stays in sight until it is worked out what comes after it.
  if (done.ok) surveyStore.merge({ ticks: [], goOn: true });
  return done;
}

/** What is said about a box; what is undefined is said no longer. */
export type FactsSaid = { readonly [K in keyof SurveyFacts]?: SurveyFacts[K] | undefined };

/** Says something about a box that no reading tells; what was said before is kept where it is not about the same. */
export function writeFacts(box: EnclosureId, said: FactsSaid): Dispatched {
  const before = factsOf(box);
  const all = Object.entries({ ...before?.facts, ...said }).filter(([, value]) => value !== undefined);
  const facts: SurveyFacts = Object.fromEntries(all);
  return writeTold({ kind: "facts", facts }, box, wording.saidAboutTheBox, before?.id);
}

/** What was said about a box last. */
export function factsOf(box: EnclosureId): { readonly id: ReadingId; readonly facts: SurveyFacts } | undefined {
  const told = surveyReadings(documentStore.get().project.readings, box).flatMap(({ id, survey: { test } }) =>
    test.kind === "facts" ? [{ id, facts: test.facts }] : [],
  );
  return told.at(-1);
}

/**
 * What was seen with one breaker off. One account of a breaker: a new one takes the place of the old.
 * @param live What was seen to stay live. What is in neither list was not looked at.
 */
export function writeBreakerOff(
  breaker: DeviceId,
  name: string,
  dead: readonly OutletKey[],
  live: readonly OutletKey[],
): Dispatched {
  const told: SurveyTold = { kind: "breaker-off", breaker, dead, ...(live.length > 0 && { stillLive: live }) };
  const old = surveyReadings(documentStore.get().project.readings).find(isOf(breaker));
  return writeTold(told, undefined, wording.off(name), old?.id);
}

const isOf =
  (breaker: DeviceId) =>
  ({ survey: { test } }: { readonly survey: SurveyedReading }): boolean =>
    test.kind === "breaker-off" && test.breaker === breaker;

/** What was written of a breaker that was off; undefined where nothing was. */
export function breakerOff(
  readings: Readonly<Record<ReadingId, Reading>>,
  breaker: DeviceId,
): Extract<SurveyTold, { readonly kind: "breaker-off" }> | undefined {
  const test = surveyReadings(readings).find(isOf(breaker))?.survey.test;
  return test?.kind === "breaker-off" ? test : undefined;
}

/** What tells the order along a circuit. */
export const writeOrder = (told: Extract<SurveyTold, { readonly kind: "drop" | "opened" }>): Dispatched =>
  writeTold(told, undefined, told.kind === "drop" ? String(told.volts) : wording.jointsOpened);

export const takeBack = (id: ReadingId): Dispatched => dispatch({ command: "remove-reading", args: { id } });

function writeTold(test: SurveyTold, box: EnclosureId | undefined, value: string, old?: ReadingId): Dispatched {
  const isDrop = test.kind === "drop";
  const reading: Taken = {
    instrument: isDrop ? testedByStore.get().instrument : "by-eye",
    points: [pointOfTold(test, box)],
    value,
    ...(isDrop && { unit: "V" }),
    state: "as-found",
    ...whoAndWhen(),
    survey: { ...(box !== undefined && { box }), test },
  };
  return old === undefined
    ? dispatch({ command: "add-reading", args: { id: mintId<ReadingId>("m"), reading } })
    : dispatch({ command: "change-reading", args: { id: old, reading } });
}

function whoAndWhen(): Pick<Taken, "takenAt" | "by" | "instrumentId"> {
  const { by, instrumentId } = testedByStore.get();
  return {
    takenAt: new Date().toISOString(),
    ...(by.trim() !== "" && { by: by.trim() }),
    ...(instrumentId.trim() !== "" && { instrumentId: instrumentId.trim() }),
  };
}

/** "2026-05-04 10:42" by the clock of this machine: it is read on other days too. */
function dayAndTime(at: number): string {
  const then = new Date(at);
  const two = (part: number): string => String(part).padStart(2, "0");
  const day = `${then.getFullYear()}-${two(then.getMonth() + 1)}-${two(then.getDate())}`;
  return `${day} ${two(then.getHours())}:${two(then.getMinutes())}`;
}

/** "Hold point 1: Pat, 2026-05-04 10:42; Hold point 6: Pat, 2026-05-04 10:44". */
const ticksInWords = (): string =>
  surveyStore
    .get()
    .ticks.map(({ point, by, at }) => wording.hold(point, by, dayAndTime(at)))
    .join("; ")
    .slice(0, 500);

/** Where the leads were, for whoever lists readings: one or two places. */
function pointsOf(test: SurveyTest, box: EnclosureId): readonly string[] {
  switch (test.kind) {
    case "pair":
      return [test.from, test.to].map((point) => pointWords(point, box));
    case "current":
      return [pointWords(test, box)];
    case "works":
      return [box];
    case "test-lamp":
    case "look":
    case "breaker":
      return [test.cable];
  }
}

function pointWords(point: SurveyPoint, box: EnclosureId): string {
  if (point === "ground") return box;
  const { cables } = documentStore.get().project.asFound;
  const side = cablesInto(cables, box).find(({ cable }) => cable.id === point.cable)?.side ?? "a";
  return cableEnd(point.cable, point.conductor as ConductorKey, side);
}

function pointOfTold(test: SurveyTold, box: EnclosureId | undefined): string {
  switch (test.kind) {
    case "facts":
      return box ?? "";
    case "breaker-off":
      return test.breaker;
    case "drop":
    case "opened":
      return test.at;
  }
}

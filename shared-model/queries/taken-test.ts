import type { OutletKey } from "../model/ids.ts";
import type { Project, Reading, ReadingInstrument } from "../model/project.ts";
import type { ExpectedTest, RecordStage, RecordTest } from "../model/test-record.ts";
import { VALUE_KINDS } from "./recorded-value.ts";

/** What a test is made with unless another is told. */
export const USUAL_INSTRUMENT: Readonly<Record<RecordTest, ReadingInstrument>> = {
  "hot-neutral": "meter",
  "hot-ground": "meter",
  "neutral-ground": "meter",
  polarity: "plug-in-tester",
  works: "by-eye",
  "own-test": "own-test",
  reset: "reset",
  "plug-in-button": "plug-in-button",
  dead: "meter",
  continuity: "continuity",
  note: "by-eye",
};

/** What may be chosen for tests that are measured; a button is pressed, a lamp looked at. */
export const MEASURING: readonly ReadingInstrument[] = [
  "meter",
  "low-impedance-meter",
  "noncontact",
  "continuity",
  "insulation",
];

/** Tests that leave the choice. */
export const isMeasured = (test: RecordTest): boolean =>
  VALUE_KINDS[test] === "volts" || VALUE_KINDS[test] === "ohms" || test === "dead";

/** A test as a person or a file gives it. */
export interface TakenTest {
  readonly stage: RecordStage;
  readonly test: RecordTest;
  /** Outlet, device or enclosure, and how it and its box are called. */
  readonly point: string;
  readonly item: string;
  readonly box?: string;
  readonly value: string;
  readonly outlets?: readonly OutletKey[];
  readonly expected?: ExpectedTest;
  readonly instrument?: ReadingInstrument;
  readonly instrumentId?: string;
  readonly takenAt?: string;
  readonly by?: string;
  readonly remark?: string;
}

/** The reading that keeps a test, without its id and its place in the order. Empty texts are left out. */
export function readingOfTest(project: Project, taken: TakenTest): Omit<Reading, "id" | "order"> {
  const { stage, test, point, item, box, value, outlets, expected, instrument } = taken;
  const unit =
    VALUE_KINDS[test] === "volts" ? "V" : VALUE_KINDS[test] === "ohms" && value !== "open" ? "ohm" : undefined;
  const state = stage === "after" && project.proposed !== undefined ? "proposed" : "as-found";
  const said = Object.fromEntries(
    (["instrumentId", "takenAt", "by", "remark"] as const).flatMap((field) => {
      const text = taken[field]?.trim();
      return text === undefined || text === "" ? [] : [[field, text] as const];
    }),
  );
  return {
    instrument: (isMeasured(test) ? instrument : undefined) ?? USUAL_INSTRUMENT[test],
    points: [point],
    value,
    ...(unit !== undefined && { unit }),
    state,
    ...said,
    record: {
      test,
      stage,
      item,
      ...(box !== undefined && { box }),
      ...(expected !== undefined && { expected }),
      ...(outlets !== undefined && { outlets }),
    },
  };
}

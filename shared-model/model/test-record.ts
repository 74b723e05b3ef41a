import type { OutletKey } from "./ids.ts";

/** What one line of a test record tests. */
export const RECORD_TESTS = [
  /** Volts between the contacts of an outlet. */
  "hot-neutral",
  "hot-ground",
  "neutral-ground",
  /** What a plug-in tester with three lamps shows. */
  "polarity",
  /** A luminaire lights, an appliance runs. */
  "works",
  /** Buttons: TEST and RESET of a ground-fault device, and the one of a plug-in tester. */
  "own-test",
  "reset",
  "plug-in-button",
  /** Every conductor found dead, with the breaker off. */
  "dead",
  /** Ohms of a path, as of a ground. */
  "continuity",
  "note",
] as const;
export type RecordTest = (typeof RECORD_TESTS)[number];

/** Before the work, on the wiring as found, or after it, at commissioning. */
export const RECORD_STAGES = ["before", "after"] as const;
export type RecordStage = (typeof RECORD_STAGES)[number];

/** What the drawing leads to expect of a test. */
export type ExpectedTest =
  | {
      readonly kind: "figure";
      readonly value: number;
      /** How far off a reading may be and still agree, in the same unit. */
      readonly within: number;
      readonly unit: "V" | "ohm";
    }
  /** "correct", "works", "dead", as a reading of the same test is written. */
  | { readonly kind: "word"; readonly word: string }
  /** Outlets that go dark, or of RESET come on, with the names that they have. */
  | { readonly kind: "outlets"; readonly outlets: readonly OutletKey[]; readonly names: readonly string[] };

/** What makes a reading a line of the test record. Its first point is the outlet, device or enclosure that was tested. */
export interface RecordedTest {
  readonly test: RecordTest;
  readonly stage: RecordStage;
  /** What was tested and where, as they were called then: the line can be read when they are gone. */
  readonly item: string;
  readonly box?: string;
  /** What the drawing led to expect then; absent where it led to nothing. */
  readonly expected?: ExpectedTest;
  /** Of a button: every outlet that went dark, or of RESET came on. */
  readonly outlets?: readonly OutletKey[];
}

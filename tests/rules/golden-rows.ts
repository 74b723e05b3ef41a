import { deviceId, jumperId } from "../builders/ids.ts";
import type { SampleDrawing } from "../builders/samples/sample-drawing.ts";

/** A slip on the way to the plan of the laundry circuit. */
export type Edit = (drawing: SampleDrawing) => unknown;

/** A conductor of a cable of B1, "C2 wh", to a joint of B1. */
export const move =
  (cable: string, conductor: string, joint: string): Edit =>
  (drawing) =>
    drawing.land(`${cable}.${conductor}@B1`, `splice ${joint}`);

export const both =
  (...edits: readonly Edit[]): Edit =>
  (drawing) => {
    for (const edit of edits) edit(drawing);
  };

/** a and b are on LINE, c and d on LOAD of R1b. */
const exchangeLineAndLoad: Edit = (drawing) =>
  drawing.land("p.b", "R1b.LOAD_H").land("c.b", "R1b.LINE_H").land("q.b", "R1b.LOAD_N").land("d.b", "R1b.LINE_N");

const tieFace: Edit = (drawing) => drawing.set({ kind: "device", id: deviceId("R1b") }, "faceContact", "tied-to-load");

interface Row {
  readonly name: string;
  readonly edit: Edit;
  /** "rule subject", sorted. */
  readonly brings: readonly string[];
  /** What is folded under the first of them; looked at where it is told. */
  readonly folds?: readonly string[];
  /** The same of what it takes away; nothing unless told. */
  readonly takes?: readonly string[];
  /** Live with the contacts of R1b open. */
  readonly live?: readonly string[];
}

const C = ["C1", "C2", "C3", "C4", "C5", "C6", "C7"];

/** Slips, and what the golden table says of each; see `golden.test.ts` for where it comes from. */
export const ROWS: readonly Row[] = [
  {
    name: "G3, white of C2 on LINE",
    edit: move("C2", "wh", "Y"),
    brings: ["downstream-neutral-on-line R2", "downstream-neutral-on-line R3"],
    live: ["L1", "R4b"],
  },
  {
    name: "G3b, white of C5 on LINE",
    edit: move("C5", "wh", "Y"),
    brings: ["downstream-neutral-on-line R5"],
    live: ["L1", "R4b"],
  },
  {
    name: "G3c, white of C4 on LOAD",
    edit: move("C4", "wh", "ND"),
    brings: ["downstream-hot-on-line L1"],
    live: ["L1", "R4b"],
  },
  {
    name: "G4, both of C2 on LINE",
    edit: both(move("C2", "bk", "X"), move("C2", "wh", "Y")),
    brings: ["outlet-not-protected R2"],
    folds: ["R3"],
    live: ["L1", "R2", "R3", "R4b"],
  },
  {
    name: "G4b, both of C5 on LINE: the hall is a wish",
    edit: both(move("C5", "bk", "X"), move("C5", "wh", "Y")),
    brings: ["wish-not-protected R5"],
    live: ["L1", "R4b", "R5"],
  },
  {
    name: "G4c, both of C3 on LOAD: R4b behind R1b",
    edit: both(move("C3", "bk", "HD"), move("C3", "wh", "ND")),
    brings: ["freezer-shares-trip R1b", "gfci-behind-gfci R4b"],
    live: ["L1"],
  },
  {
    name: "G4d, both of C4 on LOAD: the stair goes dark",
    edit: both(move("C4", "bk", "HD"), move("C4", "wh", "ND")),
    brings: ["lighting-behind-gfci-egress L1"],
    live: ["R4b"],
  },
  {
    name: "G5, LINE and LOAD of R1b exchanged",
    edit: exchangeLineAndLoad,
    brings: ["line-load-swapped R1b"],
    live: ["L1", "R4b"],
  },
  {
    name: "G5, the same with a face tied to LOAD",
    edit: both(exchangeLineAndLoad, tieFace),
    brings: ["line-load-swapped R1b"],
    live: ["L1", "R1b", "R4b"],
  },
  {
    name: "G6, a jumper from HL to HD",
    edit: (drawing) => drawing.jumper("y", "B1", "splice X", "splice HD"),
    brings: ["hot-both-sides R1b"],
    live: ["L1", "R2", "R3", "R4b", "R5"],
  },
  {
    name: "G6, the same with a face tied to LOAD",
    edit: both((drawing) => drawing.jumper("y", "B1", "splice X", "splice HD"), tieFace),
    brings: ["hot-both-sides R1b"],
    live: ["L1", "R1b", "R2", "R3", "R4b", "R5"],
  },
  {
    name: "G7, without e",
    edit: (drawing) => drawing.remove({ kind: "jumper", id: jumperId("r") }),
    brings: ["device-egc-missing R1b"],
    live: ["L1", "R4b"],
  },
  {
    name: "G7, without f",
    edit: (drawing) => drawing.remove({ kind: "jumper", id: jumperId("t") }),
    brings: ["metal-box-unbonded B1"],
    live: ["L1", "R4b"],
  },
  {
    name: "G8, c of 14 AWG",
    edit: (drawing) => drawing.set({ kind: "jumper", id: jumperId("c") }, "awg", "14"),
    brings: ["conductor-too-small c"],
  },
  {
    name: "G8, a 30 A breaker",
    edit: (drawing) => drawing.set({ kind: "device", id: deviceId("Q14") }, "breakerRatingA", 30),
    brings: ["conductor-too-small C1"],
    folds: [...C, "a", "b", "c", "d", "R1b", "R2", "R3", "R4b", "R5"],
    takes: ["laundry-circuit-mixed Q14"],
  },
  {
    name: "G8, a and b of 16 AWG",
    edit: (drawing) =>
      drawing
        .set({ kind: "jumper", id: jumperId("p") }, "awg", "16")
        .set({ kind: "jumper", id: jumperId("q") }, "awg", "16"),
    brings: [
      "conductor-too-small a",
      "conductor-too-small b",
      "splice-over-capacity HL",
      "splice-over-capacity NL",
      "terminal-gauge R1b LINE H",
      "terminal-gauge R1b LINE N",
    ],
  },
];

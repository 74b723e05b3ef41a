import type { Drawing } from "../../rules/drawing.ts";
import { laundryProposed, multiwire } from "../../rules/laundry.ts";
import { measured } from "./proofs.ts";

/*
 * Arrangements in which a search "reachable from LOAD" says yes and the truth is no. What fails, and the figures (difference
 * of current at the device for each ampere), were computed by an independent resistive reference on the same wiring:
 * 12 AWG copper at 1.588 milliohm a foot, contacts of 1 milliohm, jumpers of 0.6 ft, these lengths.
 */
const LAUNDRY_FT = { C1: 55, C2: 18, C3: 30, C4: 16, C5: 25, C6: 22, C7: 12 };
const MULTIWIRE_FT = { M3: 40, MA: 20, MB: 20 };

interface Failure {
  readonly outlet: string;
  readonly device: string;
  readonly fails: readonly string[];
  readonly balance?: number;
  readonly detection?: number;
}

export interface Arrangement {
  readonly name: string;
  readonly drawing: () => Drawing;
  readonly feet?: Readonly<Record<string, number>>;
  readonly failures: readonly Failure[];
  /** All outlets that no device protects, sorted; the rest is proved. From the same table, and by hand from what is on LINE. */
  readonly open: readonly string[];
  /** Device, and the outlets that make it trip in use. */
  readonly trips: readonly [device: string, ...outlets: string[]];
}

const laundry = (): Drawing => laundryProposed();
const exchanged = (): Drawing => laundry().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N");
const fedThroughSwitch = (): Drawing =>
  laundry()
    .removeJumper("a")
    .device("S9", "switch-single-pole", "B1")
    .jumper("y", "B1", "HL", "S9.C")
    .jumper("z", "B1", "S9.L", "R1b.LINE_H");
const behindBreaker = (type: string, kind: "gfci" | "afci" | "equipment-ground-fault", neutral: string): Drawing =>
  laundry().setDevice("Q14", { type, function: kind }).put({ "C1.wh@P": neutral });
const whiteOnGround = (): Drawing => laundry().jumper("y", "B3", "R3.N2", "bond", { colour: "white" });
const ROUND = ["P1(H)", "P1(N)", "P3"];

export const ARRANGEMENTS: readonly Arrangement[] = [
  {
    name: "1: second hot path around the contacts",
    drawing: () => laundry().jumper("y", "B1", "HL", "HD"),
    failures: [
      { outlet: "R3", device: "R1b", fails: ["P1(H)", "P2", "P3"], balance: 0.75, detection: 0.25 },
      { outlet: "R1b", device: "R1b", fails: ["P2", "P3"], balance: 0.51, detection: 0.49 },
      { outlet: "L1", device: "R1b", fails: ROUND, balance: 0, detection: 0 },
    ],
    open: ["L1", "R1b", "R2", "R3", "R5"],
    trips: ["R1b", "R1b", "R2", "R3", "R5"],
  },
  {
    name: "2: hot on LOAD, neutral on LINE",
    drawing: () => laundry().put({ "C5.wh@B1": "NL" }),
    failures: [
      { outlet: "R5", device: "R1b", fails: ["P1(N)", "P2"], balance: 1, detection: 1 },
      { outlet: "R2", device: "R1b", fails: [], balance: 0, detection: 1 },
    ],
    open: ["L1", "R5"],
    trips: ["R1b", "R5"],
  },
  {
    name: "3: neutral of another circuit",
    drawing: () =>
      laundry()
        .cable("C9", "nm-12-2-g", "P", "B6")
        .put({ "C9.wh@P": "P-NB.BAR", "C5.wh@B6": "cap", "C9.wh@B6": "R5.N1" }),
    feet: { C9: 40 },
    failures: [{ outlet: "R5", device: "R1b", fails: ["P1(N)", "P2"], balance: 1, detection: 1 }],
    open: ["L1", "R5"],
    trips: ["R1b", "R5"],
  },
  {
    name: "4: LINE and LOAD exchanged",
    drawing: exchanged,
    failures: [
      { outlet: "R2", device: "R1b", fails: ["P5(reversed)"], balance: 0, detection: 1 },
      { outlet: "R1b", device: "R1b", fails: ["P3", "P5(reversed)"], balance: 0, detection: 0 },
      { outlet: "R4b", device: "R1b", fails: [...ROUND, "P5(reversed)"], detection: 0 },
      { outlet: "L1", device: "R1b", fails: [...ROUND, "P5(reversed)"], detection: 0 },
    ],
    open: ["L1", "R1b", "R2", "R3", "R5"],
    trips: ["R1b"],
  },
  {
    name: "5: split duplex, upper half on LOAD, lower on LINE, neutral whole on LOAD",
    drawing: () =>
      laundry()
        .device("RX", "receptacle-15", "B1", { hotTab: "removed" })
        .jumper("x", "B1", "HD", "RX.H1")
        .jumper("y", "B1", "HL", "RX.H2")
        .jumper("z", "B1", "ND", "RX.N1"),
    failures: [
      { outlet: "RX/upper", device: "R1b", fails: [] },
      { outlet: "RX/lower", device: "R1b", fails: ["P1(H)", "P2", "P3"], balance: 1, detection: 0 },
    ],
    open: ["L1", "RX/lower"],
    trips: ["R1b", "RX/lower"],
  },
  {
    name: "6: one-pole device before a multiwire split",
    drawing: () =>
      multiwire()
        .device("G1", "gfci-receptacle-20", "JB")
        .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
        .jumper("y", "JB", "G1.LOAD_H", "jA")
        .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" }),
    feet: MULTIWIRE_FT,
    failures: [
      { outlet: "RA", device: "G1", fails: [] },
      { outlet: "RB", device: "G1", fails: ["P1(H)", "P2", "P3"], balance: 1, detection: 0 },
    ],
    open: ["RB"],
    trips: ["G1", "RB"],
  },
  {
    // The reference lets 1e-12 S a node drain what comes back to nothing and so has 0.94; without it all of it is gone.
    name: "7: no neutral on LINE",
    drawing: () => laundry().put({ "b.2": "cap" }),
    failures: [{ outlet: "R2", device: "R1b", fails: ["P2", "P4"], balance: 1, detection: 1 }],
    open: ["L1", "R1b", "R2", "R3", "R5"],
    trips: ["R1b"],
  },
  {
    name: "8: device fed through a switch",
    drawing: fedThroughSwitch,
    failures: [{ outlet: "R2", device: "R1b", fails: [] }],
    open: ["L1"],
    trips: ["R1b"],
  },
  {
    name: "8b: the same, and the hot of an outlet before the switch",
    drawing: () => fedThroughSwitch().put({ "C5.bk@B1": "HL" }),
    failures: [{ outlet: "R5", device: "R1b", fails: ["P1(H)", "P2", "P3", "P4"], balance: 1, detection: 0 }],
    open: ["L1", "R5"],
    trips: ["R1b", "R5"],
  },
  {
    name: "9: LOAD in one position of a three-way switch, LINE in the other",
    drawing: () =>
      laundry()
        .device("SX", "switch-3way", "B1")
        .device("RX", "receptacle-15", "B1")
        .jumper("x", "B1", "HD", "SX.T1")
        .jumper("y", "B1", "HL", "SX.T2")
        .jumper("w", "B1", "SX.C", "RX.H1")
        .jumper("z", "B1", "ND", "RX.N1"),
    failures: [{ outlet: "RX", device: "R1b", fails: ["P1(H)", "P2", "P3"], balance: 1, detection: 0 }],
    open: ["L1", "RX"],
    trips: ["R1b", "RX"],
  },
  {
    name: "10: arc-fault breaker",
    drawing: () => behindBreaker("breaker-afci-1", "afci", "Q14.LOAD_N"),
    failures: [
      { outlet: "R4b", device: "Q14", fails: ["P5(class)"], balance: 0, detection: 1 },
      { outlet: "R3", device: "R1b", fails: [] },
    ],
    open: ["L1"],
    trips: ["Q14"],
  },
  {
    name: "10: equipment-class breaker",
    drawing: () => behindBreaker("breaker-gfci-1", "equipment-ground-fault", "Q14.LOAD_N"),
    failures: [{ outlet: "R4b", device: "Q14", fails: ["P5(class)"] }],
    open: ["L1"],
    trips: ["Q14"],
  },
  {
    name: "11: sensing breaker, circuit neutral on the bar",
    drawing: () => behindBreaker("breaker-gfci-1", "gfci", "P-NB.BAR"),
    failures: ["R1b", "R2", "R3", "R4b", "R5", "L1"].map((outlet) => ({
      outlet,
      device: "Q14",
      fails: ["P2"],
      balance: 1,
      detection: 1,
    })),
    open: ["L1"],
    trips: ["Q14", "L1", "R1b", "R2", "R3", "R4b", "R5"],
  },
  {
    name: "11: the same, neutral on the breaker",
    drawing: () => behindBreaker("breaker-gfci-1", "gfci", "Q14.LOAD_N"),
    failures: ["R1b", "R2", "R3", "R4b", "R5", "L1"].map((outlet) => ({ outlet, device: "Q14", fails: [] })),
    open: [],
    trips: ["Q14"],
  },
  {
    name: "12: white and ground in contact at R3",
    drawing: whiteOnGround,
    failures: [
      { outlet: "R3", device: "R1b", fails: ["P2"], balance: 0.5, detection: 1 },
      { outlet: "R2", device: "R1b", fails: ["P2"], balance: 0.38, detection: 1 },
      { outlet: "R1b", device: "R1b", fails: ["P2"], balance: 0.29, detection: 1 },
      { outlet: "R5", device: "R1b", fails: ["P2"], balance: 0.29, detection: 1 },
      { outlet: "L1", device: "R1b", fails: ["P1(H)", "P1(N)", "P2", "P3"], balance: 0.28, detection: 0 },
    ],
    open: ["L1", "R1b", "R2", "R3", "R5"],
    trips: ["R1b", "L1", "R1b", "R2", "R3", "R4b", "R5"],
  },
  {
    name: "the other way round: LOAD sent back to a box nearer the panel",
    drawing: () =>
      laundry()
        .box("A0", 21)
        .cable("C9", "nm-12-2-g", "B1", "A0")
        .device("R9", "receptacle-15", "A0")
        .put({ "C9.bk@B1": "HD", "C9.wh@B1": "ND", "C9.bk@A0": "R9.H1", "C9.wh@A0": "R9.N1" }),
    feet: { C9: 20 },
    failures: [{ outlet: "R9", device: "R1b", fails: [], balance: 0, detection: 1 }],
    open: ["L1"],
    trips: ["R1b"],
  },
];

/** With the lengths of its cables. */
export function drawnWithLengths({ drawing, feet }: Arrangement): Drawing {
  const drawn = drawing();
  return measured(drawn, { ...("C1" in drawn.cables ? LAUNDRY_FT : {}), ...feet });
}

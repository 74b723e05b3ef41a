import { deviceId, drawing, jumperId } from "./drawing.ts";
import type { Drawing } from "./drawing-by-commands.ts";

/**
 * The circuit that the table of faults is computed for: panel P (bars joined), 60 ft of 14/2 with ground to box A with a
 * ground-fault receptacle R1, 25 ft to box B with duplex R2, 15 ft to box L with a 240 ohm lamp L1.
 *
 *     P [Q1] -- PA, 60 ft -- A [R1: LINE from P, LOAD onward] -- AB, 25 ft -- B [R2] -- BL, 15 ft -- L [L1]
 *
 * The face of R1 is tied to its LOAD. Ends are named as in drawings: "PA.bk@A". The lamp leaks nothing and is on; with
 * `idle` it is off.
 */
const PHYSICS_FAULTS = {
  F01: "correct",
  F02: "LOAD conductors left capped",
  F03: "downstream hot and neutral both on LINE",
  F04: "downstream hot on LOAD, neutral on LINE",
  F05: "downstream hot on LINE, neutral on LOAD",
  F06: "second hot path (cable X) from LINE to B, around the contacts",
  F07: "hot and neutral exchanged in the supply cable",
  F08: "hot and neutral exchanged at B",
  F09: "open hot between panel and A",
  F10: "open hot between A and B",
  F11: "open neutral between panel and A",
  F12: "open neutral between A and B",
  F13: "open ground between panel and A, A and B still joined",
  F14: "open ground between A and B",
  F15: "two-wire supply; A and B joined",
  F16: "hot and ground exchanged at B",
  F17: "neutral and ground exchanged at B",
  F18: "ground A-B open, jumper from neutral to ground at B",
  F19: "as F18, hot and neutral exchanged at B",
  F20: "neutral joined to ground at B, ground sound",
  F21: "hot joined to ground at B",
  F22: "hot joined to neutral at the lamp",
  F23: "neutral of the lamp returned by another circuit (cable X)",
  F24: "2 ohm joint in the hot A-B; heater at B",
  F25: "2 ohm joint in the supply neutral; heater at B",
  F26: "supply on LOAD, run to B on LINE, device that denies; face contact of its own",
  F27: "supply on LOAD, run to B on LINE, old device; face tied to LOAD",
  F28: "multiwire (cable M, 60 ft to box J): shared neutral open at the panel; lamp M1 on one leg, heater at M2 on the other",
  F29: "ground-fault receptacle at A, another (R2) at B on its LOAD",
  F30: "ground-fault breaker Q1, then the ground-fault receptacle at A",
  F31: "correct: for a person from hot to neutral at B",
  F32: "switch S1 in the neutral of the lamp, in box B",
  F33: "hot and neutral exchanged in the supply and again at B",
  F34: "open ground A-B and hot and neutral exchanged at B",
  F35: "open neutral and ground A-B, jumper from neutral to ground at B",
} as const;

export type PhysicsFault = keyof typeof PHYSICS_FAULTS;
export const physicsFaults = Object.keys(PHYSICS_FAULTS) as readonly PhysicsFault[];

const FOURTEEN = { item: "nm-14-2-g" } as const;
const BARE = { awg: "14", colour: "bare" } as const;
const WHITE = { awg: "14", colour: "white" } as const;
const BLACK = { awg: "14", colour: "black" } as const;

/** The circuit with one fault in it. */
export function physicsCircuit(fault: PhysicsFault = "F01"): Drawing {
  if (fault === "F28") return multiwire();
  const circuit = soundCircuit(fault);
  FAULTS[fault]?.(circuit);
  return circuit;
}

function soundCircuit(fault: PhysicsFault): Drawing {
  const breaker = fault === "F30" ? "breaker-gfci-1" : "breaker-1";
  const at = fault === "F29" ? "gfci-receptacle-15" : "receptacle-15";
  const circuit = drawing(2020, `${fault}: ${PHYSICS_FAULTS[fault]}`)
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P", { ratingA: 15, type: breaker })
    .box("A", "plastic-new-1")
    .box("B", "plastic-new-2")
    .box("L", "plastic-ceiling")
    .device("R1", "gfci-receptacle-15", "A", { set: { faceContact: "tied-to-load" } })
    .device("R2", at, "B", fault === "F29" ? { set: { faceContact: "tied-to-load" } } : {})
    .device("L1", "luminaire-60", "L", { set: { leakMa: 0 } })
    .cable("PA", "P", "A", { item: fault === "F15" ? "nm-14-2" : "nm-14-2-g", ft: 60 })
    .cable("AB", "A", "B", { ...FOURTEEN, ft: 25 })
    .cable("BL", "B", "L", { ...FOURTEEN, ft: 15 });
  const [lineAtB, loadAtB] = at === "receptacle-15" ? ["1", "2"] : ["LINE", "LOAD"];
  const terminal = (side: string, letter: string): string =>
    side.length === 1 ? `R2.${letter}${side}` : `R2.${side}_${letter}`;
  circuit
    .land("PA.bk@P", "Q1.OUT")
    .land("PA.wh@P", fault === "F30" ? "Q1.LOAD_N" : "P neutral.BAR")
    .land("PA.bk@A", "R1.LINE_H")
    .land("PA.wh@A", "R1.LINE_N")
    .land("AB.bk@A", "R1.LOAD_H")
    .land("AB.wh@A", "R1.LOAD_N")
    .land("AB.bk@B", terminal(lineAtB as string, "H"))
    .land("AB.wh@B", terminal(lineAtB as string, "N"))
    .land("BL.bk@B", terminal(loadAtB as string, "H"))
    .land("BL.wh@B", terminal(loadAtB as string, "N"))
    .land("BL.bk@L", "L1.H")
    .land("BL.wh@L", "L1.N")
    .land("BL.cu@L", "L1.G");
  if (fault === "F15") circuit.land("AB.cu@A", "R1.G");
  else
    circuit
      .land("PA.cu@P", "P ground.BAR")
      .splice("GA", "A", "twist-small", "PA.cu@A", "AB.cu@A")
      .jumper("ga", "A", "splice GA", "R1.G", BARE);
  return circuit.splice("GB", "B", "twist-small", "AB.cu@B", "BL.cu@B").jumper("gb", "B", "splice GB", "R2.G", BARE);
}

const bootleg = (circuit: Drawing): Drawing =>
  joined(circuit.land("AB.cu@A", "capped"), "ng", "B", "R2.N1", "splice GB");
const exchangedAtB = (circuit: Drawing): Drawing => circuit.land("AB.bk@B", "R2.N1").land("AB.wh@B", "R2.H1");
const exchangedInSupply = (circuit: Drawing): Drawing =>
  circuit.land("PA.bk@A", "R1.LINE_N").land("PA.wh@A", "R1.LINE_H");
const lineLoadExchanged = (circuit: Drawing): Drawing =>
  circuit
    .land("PA.bk@A", "R1.LOAD_H")
    .land("PA.wh@A", "R1.LOAD_N")
    .land("AB.bk@A", "R1.LINE_H")
    .land("AB.wh@A", "R1.LINE_N");
/** A jumper of a milliohm, which the table takes for a contact between two metals. */
const joined = (circuit: Drawing, name: string, box: string, from: string, to: string): Drawing =>
  circuit.jumper(name, box, from, to, BLACK).set({ kind: "jumper", id: jumperId(name) }, "lengthIn", 4.75);
const r1 = { kind: "device", id: deviceId("R1") } as const;

const FAULTS: Partial<Record<PhysicsFault, (circuit: Drawing) => unknown>> = {
  F02: (c) => c.land("AB.bk@A", "capped").land("AB.wh@A", "capped"),
  F03: (c) => c.land("AB.bk@A", "R1.LINE_H#2").land("AB.wh@A", "R1.LINE_N#2"),
  F04: (c) => c.land("AB.wh@A", "R1.LINE_N#2"),
  F05: (c) => c.land("AB.bk@A", "R1.LINE_H#2"),
  F06: (c) =>
    c
      .cable("X", "A", "B", { item: "knob-tube-14", ft: 25 })
      .land("X.bk@A", "R1.LINE_H#2")
      .land("X.bk@B", "R2.H1")
      .setEnd("X.bk@A", "jointOhm", 0.001),
  F07: exchangedInSupply,
  F08: exchangedAtB,
  F09: (c) => c.land("PA.bk@P", "capped"),
  F10: (c) => c.land("AB.bk@A", "capped"),
  F11: (c) => c.land("PA.wh@P", "capped"),
  F12: (c) => c.land("AB.wh@A", "capped"),
  F13: (c) => c.land("PA.cu@P", "capped"),
  F14: (c) => c.land("AB.cu@A", "capped"),
  F16: (c) => c.land("AB.bk@B", "splice GB").land("AB.cu@B", "R2.H1"),
  F17: (c) => c.land("AB.wh@B", "splice GB").land("AB.cu@B", "R2.N1"),
  F18: bootleg,
  F19: (c) => exchangedAtB(bootleg(c)),
  F20: (c) => joined(c, "ng", "B", "R2.N1", "splice GB"),
  F21: (c) => joined(c, "hg", "B", "R2.H1", "splice GB"),
  F22: (c) => joined(c, "hn", "L", "L1.H", "L1.N"),
  F23: (c) =>
    c
      .cable("X", "P", "L", { item: "nm-14-2", ft: 80 })
      .land("X.wh@P", "P neutral.BAR")
      .land("BL.wh@L", "capped")
      .land("X.wh@L", "L1.N"),
  F24: (c) => c.setEnd("AB.bk@A", "jointOhm", 2).load("Heater", "heater-1200", "R2"),
  F25: (c) => c.setEnd("PA.wh@A", "jointOhm", 2).load("Heater", "heater-1200", "R2"),
  F26: (c) => lineLoadExchanged(c).set(r1, "reversal", "deny").set(r1, "faceContact", "separate"),
  F27: (c) => lineLoadExchanged(c).set(r1, "reversal", "legacy"),
  F32: (c) =>
    c.device("S1", "switch-single-pole", "B").land("BL.wh@B", "S1.L").jumper("sn", "B", "R2.N2", "S1.C", WHITE),
  F33: (c) => exchangedAtB(exchangedInSupply(c)),
  F34: (c) => exchangedAtB(c.land("AB.cu@A", "capped")),
  F35: (c) => bootleg(c.land("AB.wh@A", "capped")),
};

/** Two legs over one white, which is open at the panel: 240 ohm on one leg, 12 ohm on the other. */
function multiwire(): Drawing {
  return drawing(2020, `F28: ${PHYSICS_FAULTS.F28}`)
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P", { ratingA: 15, type: "breaker-2" })
    .box("J", "plastic-new-2")
    .device("M1", "luminaire-60", "J", { set: { leakMa: 0 } })
    .device("M2", "receptacle-15", "J")
    .cable("M", "P", "J", { item: "nm-14-3-g", ft: 60 })
    .land("M.bk@P", "Q1.OUT1")
    .land("M.rd@P", "Q1.OUT2")
    .land("M.cu@P", "P ground.BAR")
    .land("M.bk@J", "M1.H")
    .land("M.rd@J", "M2.H1")
    .land("M.wh@J", "M2.N1")
    .jumper("n", "J", "M2.N2", "M1.N", WHITE)
    .land("M.cu@J", "M2.G")
    .load("Heater", "heater-1200", "M2");
}

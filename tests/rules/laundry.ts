import type { Edition } from "../../shared-model/model/project.ts";
import { Drawing } from "./drawing.ts";

/** What the five-cable laundry circuit has in both states: 12/2 copper from a 20 A breaker to seven boxes. */
function common(edition: Edition, clampsInB1: "present" | "none"): Drawing {
  const drawing = new Drawing(edition)
    .room("Laundry", ["laundry", "basement-unfinished"])
    .room("Porch", ["outdoor"])
    .room("Basement", ["basement-unfinished"])
    .room("Stair", ["stair"])
    .room("Hall", ["hallway"])
    .panel("P")
    .breaker("Q14", 20)
    .box("B1", 30.3, { roomId: room("Laundry"), internalClamps: clampsInB1 })
    .box("B2", 18, { roomId: room("Laundry") })
    .box("B3", 18, { roomId: room("Porch"), internalClamps: "none" })
    .box("B4", 18, { roomId: room("Basement") })
    .box("B5", 18, { roomId: room("Stair") })
    .box("B6", 14, { roomId: room("Hall") })
    .box("B7", 15.5, { roomId: room("Stair") });
  for (const [name, a, b] of [
    ["C1", "P", "B1"],
    ["C2", "B1", "B2"],
    ["C3", "B1", "B4"],
    ["C4", "B1", "B5"],
    ["C5", "B1", "B6"],
    ["C6", "B2", "B3"],
    ["C7", "B5", "B7"],
  ] as const)
    drawing.cable(name, "nm-12-2-g", a, b);
  return drawing
    .device("R2", "receptacle-15", "B2", { zones: ["sink-zone"] })
    .device("R3", "receptacle-15", "B3")
    .device("R5", "receptacle-15", "B6")
    .device("S1", "switch-single-pole", "B5")
    .device("L1", "luminaire-60", "B7")
    .splice("B5n", "B5", "twist-medium")
    .put({ "C1.bk@P": "Q14.OUT", "C1.wh@P": "P-NB.BAR", "C1.cu@P": "P-GB.BAR" })
    .put({ "C2.bk@B2": "R2.H1", "C2.wh@B2": "R2.N1", "C6.bk@B2": "R2.H2", "C6.wh@B2": "R2.N2" })
    .put({ "C6.bk@B3": "R3.H1", "C6.wh@B3": "R3.N1", "C5.bk@B6": "R5.H1", "C5.wh@B6": "R5.N1" })
    .put({ "C4.bk@B5": "S1.C", "C7.bk@B5": "S1.L", "C4.wh@B5": "B5n", "C7.wh@B5": "B5n" })
    .put({ "C7.bk@B7": "L1.H", "C7.wh@B7": "L1.N" });
}

const room = (name: string) => name as never;
const id = room;

/** Grounds of one box: cables, a pigtail to each device and to the metal. */
function grounds(drawing: Drawing, box: string, cables: readonly string[], device: string): void {
  const splice = `E-${box}`;
  drawing.splice(splice, box, cables.length === 1 ? "twist-medium" : "twist-large");
  for (const cable of cables) drawing.put({ [`${cable}.cu@${box}`]: splice });
  drawing
    .jumper(`${box}g`, box, splice, `${device}.G`, { colour: "bare" })
    .jumper(`${box}b`, box, splice, "bond", { colour: "bare" });
}

const otherGrounds = (drawing: Drawing): void => {
  grounds(drawing, "B2", ["C2", "C6"], "R2");
  grounds(drawing, "B3", ["C6"], "R3");
  grounds(drawing, "B5", ["C4", "C7"], "S1");
  grounds(drawing, "B6", ["C5"], "R5");
  grounds(drawing, "B7", ["C7"], "L1");
};

/** As found: all hots in X, all whites in Y, all grounds in Z; R1 on pigtails; internal clamps in B1. */
export function laundryAsFound(edition: Edition = 2020): Drawing {
  const drawing = common(edition, "present")
    .device("R1", "receptacle-15", "B1")
    .device("R4", "receptacle-15", "B4")
    .splice("X", "B1", "twist-large")
    .splice("Y", "B1", "twist-large")
    .splice("Z", "B1", "twist-large");
  for (const cable of ["C1", "C2", "C3", "C4", "C5"])
    drawing.put({ [`${cable}.bk@B1`]: "X", [`${cable}.wh@B1`]: "Y", [`${cable}.cu@B1`]: "Z" });
  drawing
    .jumper("p", "B1", "X", "R1.H1")
    .jumper("q", "B1", "Y", "R1.N1", { colour: "white" })
    .jumper("r", "B1", "Z", "R1.G", { colour: "bare" })
    .jumper("t", "B1", "Z", "bond", { colour: "bare" })
    .put({ "C3.bk@B4": "R4.H1", "C3.wh@B4": "R4.N1" });
  grounds(drawing, "B4", ["C3"], "R4");
  otherGrounds(drawing);
  return drawing;
}

/** Proposed: R1b protects C2 and C5 from its LOAD, C3 and C4 stay on LINE, R4b protects its own face. */
export function laundryProposed(edition: Edition = 2020): Drawing {
  const drawing = common(edition, "none")
    .device("R1b", "gfci-receptacle-15", "B1")
    .device("R4b", "gfci-receptacle-15", "B4")
    .splice("HL", "B1", "twist-large")
    .splice("NL", "B1", "twist-large")
    .splice("HD", "B1", "twist-medium")
    .splice("ND", "B1", "twist-medium")
    .splice("E1", "B1", "twist-large")
    .splice("E2", "B1", "twist-large");
  for (const cable of ["C1", "C3", "C4"]) drawing.put({ [`${cable}.bk@B1`]: "HL", [`${cable}.wh@B1`]: "NL" });
  for (const cable of ["C2", "C5"]) drawing.put({ [`${cable}.bk@B1`]: "HD", [`${cable}.wh@B1`]: "ND" });
  for (const cable of ["C1", "C2", "C3", "C4"]) drawing.put({ [`${cable}.cu@B1`]: "E1" });
  drawing
    .put({ "C5.cu@B1": "E2" })
    .jumper("a", "B1", "HL", "R1b.LINE_H")
    .jumper("b", "B1", "NL", "R1b.LINE_N", { colour: "white" })
    .jumper("c", "B1", "HD", "R1b.LOAD_H")
    .jumper("d", "B1", "ND", "R1b.LOAD_N", { colour: "white" })
    .jumper("g", "B1", "E1", "E2", { colour: "bare" })
    .jumper("e", "B1", "E2", "R1b.G", { colour: "bare" })
    .jumper("f", "B1", "E2", "bond", { colour: "bare" })
    .put({ "C3.bk@B4": "R4b.LINE_H", "C3.wh@B4": "R4b.LINE_N" });
  grounds(drawing, "B4", ["C3"], "R4b");
  otherGrounds(drawing);
  return drawing;
}

/** Two breakers share one neutral: 12/3 cable M3 to a junction box, then one receptacle on each leg. */
export function multiwire(edition: Edition = 2020): Drawing {
  const drawing = new Drawing(edition)
    .room("Dining", ["dining"])
    .panel("P")
    .breaker("QA", 20, { legs: ["A"] })
    .breaker("QB", 20, { legs: ["B"], tiedTo: id("QA") })
    .box("JB", 21)
    .box("BA", 18, { roomId: room("Dining") })
    .box("BB", 18, { roomId: room("Dining") })
    .cable("M3", "nm-12-3-g", "P", "JB")
    .cable("MA", "nm-12-2-g", "JB", "BA")
    .cable("MB", "nm-12-2-g", "JB", "BB")
    .device("RA", "receptacle-15", "BA")
    .device("RB", "receptacle-15", "BB")
    .splice("jA", "JB", "twist-medium")
    .splice("jB", "JB", "twist-medium")
    .splice("jN", "JB", "twist-large")
    .splice("jE", "JB", "twist-large")
    .put({ "M3.bk@P": "QA.OUT", "M3.rd@P": "QB.OUT", "M3.wh@P": "P-NB.BAR", "M3.cu@P": "P-GB.BAR" })
    .put({ "M3.bk@JB": "jA", "MA.bk@JB": "jA", "M3.rd@JB": "jB", "MB.bk@JB": "jB" })
    .put({ "M3.wh@JB": "jN", "MA.wh@JB": "jN", "MB.wh@JB": "jN" })
    .put({ "M3.cu@JB": "jE", "MA.cu@JB": "jE", "MB.cu@JB": "jE" })
    .jumper("jbond", "JB", "jE", "bond", { colour: "bare" })
    .put({ "MA.bk@BA": "RA.H1", "MA.wh@BA": "RA.N1", "MB.bk@BB": "RB.H1", "MB.wh@BB": "RB.N1" });
  grounds(drawing, "BA", ["MA"], "RA");
  grounds(drawing, "BB", ["MB"], "RB");
  return drawing;
}

/** The laundry circuit with one receptacle where protection is asked for: the boxes of the others are put into the hall. */
export function alone(drawing: Drawing, name: string): Drawing {
  for (const [receptacle, box] of [
    ["R1", "B1"],
    ["R2", "B2"],
    ["R3", "B3"],
    ["R4", "B4"],
  ] as const)
    if (receptacle !== name) drawing.setBox(box, { roomId: room("Hall") }).setDevice(receptacle, { zones: [] });
  return drawing;
}

import type { Project } from "../../shared-model/model/project.ts";
import { loadId } from "../builders/ids.ts";
import { Job } from "./job.ts";

const NM14 = { item: "nm-14-2-g" };

/** A stair light with its hot from the ground floor and its neutral from the circuit upstairs. */
export function borrowedNeutral(): Project {
  return Job.in("Stair light with a borrowed neutral")
    .roomAt("above", "Stair", "stair")
    .roomAt("above", "Landing", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Stair", note: "foot" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Stair", note: "ceiling" })
    .boxAt(3, 0, "B3", "plastic-new-1", { room: "Landing", note: "landing" })
    .device("S1", "switch-single-pole", "B1")
    .device("L1", "luminaire-led-9", "B2")
    .device("R1", "receptacle-15", "B3")
    .cable("W1", "P", "B1", { ...NM14, ft: 20 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .cable("W3", "P", "B2", { ...NM14, ft: 28 })
    .cable("W4", "B2", "B3", { ...NM14, ft: 10 })
    .home("W1", "Q1")
    .land("W1.bk@B1", "S1.C")
    .land("W2.bk@B1", "S1.L")
    .joint("B1", "white 1", ["W1.wh@B1", "W2.wh@B1"])
    .grounds("B1", ["W1", "W2"], ["S1"], "14")
    .land("W2.bk@B2", "L1.H")
    .home("W3", "Q3")
    .joint("B2", "hot", ["W3.bk@B2", "W4.bk@B2"])
    .joint("B2", "white 2", ["W3.wh@B2", "W4.wh@B2"], { w: "L1.N" }, { awg: "14", colour: "white" })
    .grounds("B2", ["W2", "W3", "W4"], ["L1"], "14")
    .endOfRun("W4", "B3", "R1").project;
}

/** A duplex meant for two circuits: the neutral tab was taken out, the hot one was not. */
export function hotTabLeftIn(): Project {
  return Job.in("Duplex on two circuits, its hot tab left in")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "hall" })
    .device("R1", "receptacle-15", "B1", { set: { neutralTab: "removed" } })
    .cable("W1", "P", "B1", { ...NM14, ft: 26 })
    .cable("W2", "P", "B1", { ...NM14, ft: 26 })
    .home("W1", "Q1")
    .home("W2", "Q3")
    .onto("W1", "B1", "R1.H1", "R1.N1")
    .onto("W2", "B1", "R1.H2", "R1.N2")
    .grounds("B1", ["W1", "W2"], ["R1"], "14").project;
}

/** An old two-wire cable to R2, and a ground run to it later: of the right size, and black. */
export function groundWireInBlack(): Project {
  return Job.in("Ground wire added in black")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "front" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "back" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("W1", "P", "B1", { ...NM14, ft: 20 })
    .cable("W2", "B1", "B2", { item: "nm-14-2", ft: 12 })
    .cable("G", "B1", "B2", { item: "single-12-black", ft: 12 })
    .home("W1", "Q1")
    .onto("W1", "B1", "R1.H1", "R1.N1")
    .onto("W2", "B1", "R1.H2", "R1.N2")
    .joint("B1", "ground", ["W1.cu@B1", "G.bk@B1"], { g: "R1.G" }, { awg: "14", colour: "bare" })
    .onto("W2", "B2", "R2.H1", "R2.N1")
    .land("G.bk@B2", "R2.G").project;
}

/** L1 with its two leads exchanged at the canopy; S2 with feed and leg under one screw, so that L2 is always on. */
export function hallLights(): Project {
  return Job.in("Two hall lights, two slips")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(5, "Q5", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Hall", note: "switches" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Hall", note: "front" })
    .boxAt(2, 1, "B3", "plastic-ceiling", { room: "Hall", note: "back" })
    .device("S1", "switch-single-pole", "B1")
    .device("S2", "switch-single-pole", "B1")
    .device("L1", "luminaire-60", "B2")
    .device("L2", "luminaire-60", "B3")
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 10 })
    .cable("W3", "B1", "B3", { ...NM14, ft: 14 })
    .home("W1", "Q5")
    .joint("B1", "feed", ["W1.bk@B1"], { s1: "S1.C", s2: "S2.C" }, { awg: "14" })
    .joint("B1", "white", ["W1.wh@B1", "W2.wh@B1", "W3.wh@B1"])
    .land("W2.bk@B1", "S1.L")
    .land("W3.bk@B1", "S2.C")
    .grounds("B1", ["W1", "W2", "W3"], ["S1", "S2"], "14")
    .endOfRun("W2", "B2", "L1", ["N", "H"])
    .endOfRun("W3", "B3", "L2", ["H", "N"]).project;
}

/** Black and white of W2 exchanged at both ends: everything works, and the next person is misled. */
export function coloursExchanged(): Project {
  return Job.in("Colours of a cable exchanged at both ends")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(7, "Q7", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "front" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "back" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .home("W1", "Q7")
    .onto("W1", "B1", "R1.H1", "R1.N1")
    .onto("W2", "B1", "R1.N2", "R1.H2")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .endOfRun("W2", "B2", "R2", ["N1", "H1"]).project;
}

/** A switch loop whose white was short, so that the bare wire carries the hot back to the light. */
export function bareWireAsReturn(): Project {
  return Job.in("Bare wire as the return of a switch loop")
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(9, "Q9", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-ceiling", { room: "Bedroom", note: "ceiling" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Bedroom", note: "door" })
    .device("L1", "luminaire-led-9", "B1")
    .device("S1", "switch-single-pole", "B2")
    .cable("W1", "P", "B1", { ...NM14, ft: 28 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 14 })
    .home("W1", "Q9")
    .joint("B1", "feed", ["W1.bk@B1", "W2.bk@B1"])
    .land("W1.wh@B1", "L1.N")
    .land("W1.cu@B1", "L1.G")
    .land("W2.cu@B1", "L1.H")
    .land("W2.bk@B2", "S1.C")
    .land("W2.cu@B2", "S1.L").project;
}

/** A multiwire circuit of two one-pole breakers, side by side, on different legs and not tied. */
export function handlesNotTied(): Project {
  return Job.in("Multiwire circuit without a handle tie")
    .roomAt("above", "Office", "den")
    .breakerIn(2, "Q2", "P", { ratingA: 20 })
    .breakerIn(4, "Q4", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Office", note: "desk" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Office", note: "printer" })
    .device("R1", "receptacle-20", "B1")
    .device("R2", "receptacle-20", "B2")
    .cable("M1", "P", "B1", { item: "nm-12-3-g", ft: 30 })
    .cable("W2", "B1", "B2", { ft: 10 })
    .land("M1.bk@P", "Q2.OUT")
    .land("M1.rd@P", "Q4.OUT")
    .land("M1.wh@P", "P neutral.BAR")
    .land("M1.cu@P", "P ground.BAR")
    .land("M1.bk@B1", "R1.H1")
    .joint("B1", "red", ["M1.rd@B1", "W2.bk@B1"])
    .joint("B1", "white", ["M1.wh@B1", "W2.wh@B1"], { w: "R1.N1" }, { colour: "white" })
    .grounds("B1", ["M1", "W2"], ["R1"])
    .endOfRun("W2", "B2", "R2")
    .know("seen", "P").project;
}

/** Five single conductors of two circuits in one conduit; black and red of the multiwire one are not tied to its white. */
export function conduitShared(): Project {
  const job = Job.in("Conduit with a multiwire circuit and another")
    .roomAt("below", "Workshop", "recreation")
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: "breaker-2" })
    .breakerIn(6, "Q6", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "square-4-11-16-2-1-8", { room: "Workshop", note: "bench" })
    .boxAt(2, 0, "B2", "square-4-2-1-8", { room: "Workshop", note: "saw" })
    .boxFacts("B1", { internalClamps: "none" })
    .boxFacts("B2", { internalClamps: "none" })
    .device("R1", "receptacle-20", "B1")
    .device("R2", "receptacle-20", "B1")
    .device("R3", "receptacle-20", "B2");
  for (const [name, box, colour] of [
    ["a", "B1", "black"],
    ["b", "B1", "black"],
    ["n", "B1", "white"],
    ["c", "B1", "black"],
    ["m", "B1", "white"],
  ] as const)
    job.cable(name, "P", box, { item: `single-12-${colour}`, ft: 18, set: { route: "conduit 1" } });
  return job
    .land("a.bk@P", "Q2/4.OUT1")
    .land("b.bk@P", "Q2/4.OUT2")
    .land("n.wh@P", "P neutral.BAR")
    .land("c.bk@P", "Q6.OUT")
    .land("m.wh@P", "P neutral.BAR")
    .land("a.bk@B1", "R1.H1")
    .land("b.bk@B1", "R2.H1")
    .joint("B1", "white", ["n.wh@B1"], { w1: "R1.N1", w2: "R2.N1" }, { colour: "white" })
    .cable("c2", "B1", "B2", { item: "single-12-black", ft: 9, set: { route: "conduit 2" } })
    .cable("m2", "B1", "B2", { item: "single-12-white", ft: 9, set: { route: "conduit 2" } })
    .joint("B1", "saw", ["c.bk@B1", "c2.bk@B1"])
    .joint("B1", "white of saw", ["m.wh@B1", "m2.wh@B1"])
    .land("c2.bk@B2", "R3.H1")
    .land("m2.wh@B2", "R3.N1")
    .facts("Q2/4", { groupedInPanel: false }).project;
}

/** A ground-fault receptacle at the ceiling of a hall, fed through the light switch, with R2 past it on LINE. */
export function gfciAtTheCeiling(): Project {
  return Job.in("Ground-fault receptacle fed through a switch", 2017)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(11, "Q11", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "at the ceiling" })
    .boxAt(3, 0, "B3", "plastic-new-1", { room: "Hall", note: "window" })
    .device("S1", "switch-single-pole", "B1")
    .device("R1", "gfci-receptacle-15", "B2", { set: { reachHeightIn: 96 } })
    .device("R2", "receptacle-15", "B3")
    .cable("W1", "P", "B1", { ...NM14, ft: 22 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 10 })
    .cable("W3", "B2", "B3", { ...NM14, ft: 9 })
    .home("W1", "Q11")
    .switched("B1", ["W1"], "S1", "W2", "14")
    .grounds("B1", ["W1", "W2"], ["S1"], "14")
    .pigtailed("B2", ["W2", "W3"], "R1.LINE_H", "R1.LINE_N", "14")
    .grounds("B2", ["W2", "W3"], ["R1"], "14")
    .endOfRun("W3", "B3", "R2").project;
}

/** Two old appliances behind one ground-fault receptacle, 1.2 mA and 0.9 mA to ground in normal use. */
export function leakyAppliances(): Project {
  const job = Job.in("Leaky appliances behind one device", 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(13, "Q13", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Kitchen", note: "counter left" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Kitchen", note: "counter right" })
    .device("R1", "gfci-receptacle-20", "B1")
    .device("R2", "receptacle-20", "B2")
    .cable("W1", "P", "B1", { ft: 26 })
    .cable("W2", "B1", "B2", { ft: 8 })
    .home("W1", "Q13")
    .onto("W1", "B1", "R1.LINE_H", "R1.LINE_N")
    .onto("W2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .endOfRun("W2", "B2", "R2")
    .load("Kettle", "appliance-600", "R2")
    .load("Toaster", "appliance-600", "R2");
  return job
    .set({ kind: "load", id: loadId("Kettle") }, "leakMa", 1.2)
    .set({ kind: "load", id: loadId("Toaster") }, "leakMa", 0.9).project;
}

/** A switch with a metal plate in an old box that no ground reaches. */
export function metalPlate(): Project {
  return Job.in("Metal plate where no ground comes")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(15, "Q15", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "octagon-4-1-1-2", { room: "Hall", note: "ceiling" })
    .device("S1", "switch-single-pole", "B1", { set: { metalPlate: true } })
    .device("L1", "luminaire-60", "B2")
    .cable("T1", "P", "B1", { item: "nm-14-2", ft: 22 })
    .cable("T2", "B1", "B2", { item: "nm-14-2", ft: 10 })
    .onto("T1", "P", "Q15.OUT", "P neutral.BAR")
    .switched("B1", ["T1"], "S1", "T2", "14")
    .onto("T2", "B2", "L1.H", "L1.N").project;
}

/** A 20 A face on 15 A, and a heater of 16 A on a 15 A switch. */
export function ratingsExceeded(): Project {
  return Job.in("Ratings exceeded")
    .roomAt("above", "Hobby room", "recreation")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hobby room", note: "bench" })
    .boxAt(1, 1, "B2", "plastic-new-1", { room: "Hobby room", note: "door" })
    .boxAt(2, 1, "B3", "plastic-new-1", { room: "Hobby room", note: "heater" })
    .device("R1", "receptacle-20", "B1")
    .device("S1", "switch-single-pole", "B2")
    .device("Heater", "appliance-120", "B3", { set: { loadW: 1920 } })
    .cable("W1", "P", "B1", { ...NM14, ft: 22 })
    .cable("W2", "P", "B2", { ft: 22 })
    .cable("W3", "B2", "B3", { ft: 10 })
    .home("W1", "Q1")
    .endOfRun("W1", "B1", "R1")
    .home("W2", "Q3")
    .switched("B2", ["W2"], "S1", "W3")
    .grounds("B2", ["W2", "W3"], ["S1"])
    .endOfRun("W3", "B3", "Heater", ["H", "N"]).project;
}

/** A new bedroom receptacle without shutters, behind a breaker that fits the panel and is not on its list. */
export function plainFaceNewWork(): Project {
  return Job.in("New bedroom receptacle of the old kind")
    .roomAt("above", "Bedroom", "bedroom")
    .boxFacts("P", { listedBreakers: ["breaker-1", "breaker-2"] })
    .plan()
    .breakerIn(5, "Q5", "P", { ratingA: 15, type: "breaker-afci-1" })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Bedroom", note: "bed wall" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { ...NM14, ft: 28 })
    .land("W1.bk@P", "Q5.OUT")
    .land("W1.wh@P", "Q5.LOAD_N")
    .land("W1.cu@P", "P ground.BAR")
    .endOfRun("W1", "B1", "R1").project;
}

import { asId, type ConductorKey } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { cableId, loadId, roomId } from "../builders/ids.ts";
import { Job } from "./job.ts";

const NM14 = { item: "nm-14-2-g" };

/** Two metal boxes on armoured cable, grounded by its armour alone. */
function armoured(title: string, item: string): Project {
  return Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "octagon-4-2-1-8", { room: "Hall", note: "ceiling" })
    .boxFacts("B1", { internalClamps: "none" })
    .boxFacts("B2", { internalClamps: "none" })
    .device("S1", "switch-single-pole", "B1", { set: { selfGrounding: true } })
    .device("L1", "luminaire-60", "B2")
    .cable("A1", "P", "B1", { item, ft: 24, means: "external-connector" })
    .cable("A2", "B1", "B2", { item, ft: 12, means: "external-connector" })
    .land("A1.bk@P", "Q1.OUT")
    .land("A1.wh@P", "P neutral.BAR")
    .land("A1.bk@B1", "S1.C")
    .land("A2.bk@B1", "S1.L")
    .joint("B1", "white", ["A1.wh@B1", "A2.wh@B1"])
    .onto("A2", "B2", "L1.H", "L1.N")
    .jumper("g", "B2", "bond", "L1.G", { colour: "bare" })
    .knowCables("seen", "A1", "A2").project;
}

export const armourWithStrip = (): Project => armoured("Armoured cable, its strip seen", "armoured-12-2-g");
export const armourWithoutStrip = (): Project => armoured("Old armoured cable as the ground", "armoured-12-2-old");

/** A bedroom receptacle on two-wire cable, its ground taken to a water pipe so far from where the pipe comes in. */
function pipeGround(title: string, feet: number): Project {
  const green = { kind: "conductor", cable: cableId("G1"), id: asId<ConductorKey>("bk") } as const;
  const run = { kind: "cable", id: cableId("G1") } as const;
  return Job.in(title)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Bedroom", note: "door" })
    .device("R1", "receptacle-15", "B1")
    .cable("T1", "P", "B1", { item: "nm-14-2", ft: 30 })
    .outside("G1", "B1", { item: "single-12-black" })
    .set(green, "grounding", true)
    .set(green, "colour", "green")
    .set(run, "groundClampedTo", "water-pipe")
    .set(run, "pipeFromEntryFt", feet)
    .onto("T1", "P", "Q1.OUT", "P neutral.BAR")
    .onto("T1", "B1", "R1.H1", "R1.N1")
    .joint("B1", "ground", ["G1.bk@B1"], { g: "R1.G", m: "bond" }, { colour: "bare" }).project;
}

export const pipeGroundNear = (): Project => pipeGround("Ground to the water pipe where it comes in", 5);
export const pipeGroundFar = (): Project => pipeGround("Ground to a water pipe far inside", 30);

/** A 20 A circuit: the counter with ground-fault protection, then a receptacle in another room on LINE. */
function counter(title: string, room: "Dining room" | "Hall"): Project {
  return Job.in(title, 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .roomAt("at", room, room === "Hall" ? "hallway" : "dining")
    .breakerIn(1, "Q1", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Kitchen", note: "counter" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room, note: "beyond" })
    .device("R1", "gfci-receptacle-20", "B1")
    .device("R2", "receptacle-20", "B2")
    .cable("W1", "P", "B1", { ft: 24 })
    .cable("W2", "B1", "B2", { ft: 14 })
    .home("W1", "Q1")
    .pigtailed("B1", ["W1", "W2"], "R1.LINE_H", "R1.LINE_N")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .endOfRun("W2", "B2", "R2").project;
}

export const counterAndDiningRoom = (): Project => counter("Kitchen counter and dining room", "Dining room");
export const counterAndHall = (): Project => counter("Kitchen counter and hall", "Hall");

/** The laundry has its 20 A circuit to itself. */
export const laundryAlone = (): Project =>
  Job.in("Laundry on a circuit of its own")
    .roomAt("at", "Laundry", "laundry")
    .breakerIn(1, "Q1", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Laundry", note: "washer" })
    .device("R1", "gfci-receptacle-20", "B1")
    .cable("W1", "P", "B1", { ft: 24 })
    .home("W1", "Q1")
    .endOfRun("W1", "B1", "R1", ["LINE_H", "LINE_N"]).project;

/** A counter duplex with its hot tab out, a leg of a multiwire circuit on each half. */
function splitCounter(title: string, breaker: "breaker-2" | "breaker-gfci-2"): Project {
  return Job.in(title, 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(2, "Q2/4", "P", { ratingA: 20, type: breaker })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Kitchen", note: "counter" })
    .device("K1", "receptacle-20", "B1", { set: { hotTab: "removed" } })
    .cable("M1", "P", "B1", { item: "nm-12-3-g", ft: 28 })
    .land("M1.bk@P", "Q2/4.OUT1")
    .land("M1.rd@P", "Q2/4.OUT2")
    .land("M1.wh@P", breaker === "breaker-2" ? "P neutral.BAR" : "Q2/4.LOAD_N")
    .land("M1.cu@P", "P ground.BAR")
    .land("M1.bk@B1", "K1.H1")
    .land("M1.rd@B1", "K1.H2")
    .land("M1.wh@B1", "K1.N1")
    .land("M1.cu@B1", "K1.G").project;
}

export const splitCounterProtected = (): Project =>
  splitCounter("Split counter receptacle on a two-pole ground-fault breaker", "breaker-gfci-2");
export const splitCounterOpen = (): Project => splitCounter("Split counter receptacle without protection", "breaker-2");

/** Two old receptacles of one bedroom box, both replaced by plain ones. */
export const twoFacesOneBox = (): Project =>
  Job.in("Two receptacles of one box replaced")
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Bedroom", note: "bed wall" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { ...NM14, ft: 26 })
    .home("W1", "Q1")
    .joint("B1", "hot", ["W1.bk@B1"], { h1: "R1.H1", h2: "R2.H1" }, { awg: "14" })
    .joint("B1", "white", ["W1.wh@B1"], { n1: "R1.N1", n2: "R2.N1" }, { awg: "14", colour: "white" })
    .grounds("B1", ["W1"], ["R1", "R2"], "14")
    .plan()
    .replace("R1", "R1b", "receptacle-tr-15")
    .replace("R2", "R2b", "receptacle-tr-15").project;

/** A metal plate on a switch that no ground reaches, behind a ground-fault breaker: the exception of 404.9(B). */
export const metalPlateProtected = (): Project =>
  Job.in("Metal plate where no ground comes, behind a ground-fault breaker")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(15, "Q15", "P", { ratingA: 15, type: "breaker-gfci-1" })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "octagon-4-1-1-2", { room: "Hall", note: "ceiling" })
    .device("S1", "switch-single-pole", "B1", { set: { metalPlate: true } })
    .device("L1", "luminaire-60", "B2")
    .cable("T1", "P", "B1", { item: "nm-14-2", ft: 22 })
    .cable("T2", "B1", "B2", { item: "nm-14-2", ft: 10 })
    .onto("T1", "P", "Q15.OUT", "Q15.LOAD_N")
    .switched("B1", ["T1"], "S1", "T2", "14")
    .onto("T2", "B2", "L1.H", "L1.N").project;

/** A hall receptacle 66 in. up, with a ground-fault device that everything beyond hangs on; its appliances leak 1.8 mA. */
export const leakAtTheLimit = (): Project => {
  const job = Job.in("Two appliances that leak as much as they may", 2017)
    .roomAt("at", "Kitchen", "kitchen-counter")
    .breakerIn(13, "Q13", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Kitchen", note: "counter left" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Kitchen", note: "counter right" })
    .device("R1", "gfci-receptacle-20", "B1", { set: { reachHeightIn: 66 } })
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
    .set({ kind: "load", id: loadId("Kettle") }, "leakMa", 1)
    .set({ kind: "load", id: loadId("Toaster") }, "leakMa", 0.8).project;
};

/** Knob-and-tube to an attic lamp between open joists. */
export const knobTubeInTheOpen = (): Project =>
  Job.in("Knob-and-tube wiring in the open")
    .roomAt("above", "Attic", "attic")
    .set({ kind: "room", id: roomId("Attic") }, "insulatedCavity", false)
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "octagon-4-2-1-8", { room: "Attic", note: "attic lamp" })
    .boxFacts("B1", { internalClamps: "none" })
    .device("L1", "luminaire-led-9", "B1")
    .cable("N1", "P", "B1", { item: "knob-tube-14", ft: 34, means: "external-connector" })
    .cable("N2", "P", "B1", { item: "knob-tube-14", ft: 34, means: "external-connector" })
    .land("N1.bk@P", "Q1.OUT")
    .land("N2.bk@P", "P neutral.BAR")
    .land("N1.bk@B1", "L1.H")
    .land("N2.bk@B1", "L1.N").project;

/** As in the conduit that two circuits share, but the other one goes to a box of its own; `grouped` in the panel or not. */
function conduitToTwoBoxes(title: string, grouped: boolean): Project {
  const job = Job.in(title)
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
    ["c", "B2", "black"],
    ["m", "B2", "white"],
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
    .land("c.bk@B2", "R3.H1")
    .land("m.wh@B2", "R3.N1")
    .facts("Q2/4", { groupedInPanel: grouped }).project;
}

export const conduitGrouped = (): Project => conduitToTwoBoxes("Multiwire circuit tied together in the panel", true);
export const conduitSpread = (): Project =>
  conduitToTwoBoxes("Multiwire circuit spread in the panel, its conduit shared with another box", false);

import { asId, type EntryId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { boxId, cableId, jumperId } from "../builders/ids.ts";
import { Job } from "./job.ts";

const NM14 = { item: "nm-14-2-g" };

const entry = (cable: string, box: string) =>
  ({ kind: "entry", enclosure: boxId(box), id: asId<EntryId>(`e-${cable}`) }) as const;

interface Made {
  readonly ceiling: string;
  /** Of the metal box with three cables; what is marked counts. */
  readonly ring: "marked" | "from-table";
}

/** A bedroom circuit seen before the walls are closed: five boxes, two cables in one connector of B2. */
function bedroom(title: string, { ceiling, ring }: Made): Job {
  const job = Job.in(title)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Bedroom", note: "door" })
    .boxAt(2, 0, "B2", "square-4-1-1-2", { room: "Bedroom", note: "desk" })
    .boxAt(3, 0, "B3", "plastic-new-1", { room: "Bedroom", note: "switch" })
    .boxAt(4, 0, "B4", ceiling, { room: "Bedroom", note: "ceiling" })
    .boxAt(2, 1, "B5", "square-4-1-1-2", { room: "Bedroom", note: "wardrobe" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .device("S1", "switch-single-pole", "B3")
    .device("L1", "luminaire-60", "B4")
    .device("R3", "receptacle-15", "B5");
  for (const box of ["B2", "B5"]) job.boxFacts(box, { internalClamps: "none" });
  job
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .cable("W3", "B2", "B3", { ...NM14, ft: 10 })
    .cable("W4", "B3", "B4", { ...NM14, ft: 8 })
    .cable("W5", "B2", "B5", { ...NM14, ft: 9 })
    .run("move-cable-side", {
      cable: cableId("W3"),
      side: "a",
      to: { enclosure: boxId("B2"), entry: asId<EntryId>("e-W2") },
    })
    .home("W1", "Q1")
    .pigtailed("B1", ["W1", "W2"], "R1.H1", "R1.N1", "14")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .pigtailed("B2", ["W2", "W3", "W5"], "R2.H1", "R2.N1", "14")
    .grounds("B2", ["W2", "W3", "W5"], ["R2"], "14")
    .switched("B3", ["W3"], "S1", "W4", "14")
    .grounds("B3", ["W3", "W4"], ["S1"], "14")
    .onto("W4", "B4", "L1.H", "L1.N")
    .grounds("B4", ["W4"], ["L1"], "14")
    .onto("W5", "B5", "R3.H1", "R3.N1")
    .grounds("B5", ["W5"], ["R3"], "14")
    .ring(
      "B2",
      ring === "marked" ? { kind: "marked", volumeIn3: cubicInches(4) } : { kind: "table", size: "4x1-1/2 square" },
    )
    .facts("R2", { fastenedTo: "ring" });
  return job.boxFacts("B4", { mountedOn: "ceiling", cover: "luminaire" }).facts("L1", { supplyC: 90 });
}

/** Everything that was measured lies on its limit, or on its right side. */
export const roughInRight = (): Project =>
  bedroom("Bedroom before the walls are closed", { ceiling: "octagon-4-2-1-8", ring: "marked" })
    .ring("B5", { kind: "marked", volumeIn3: cubicInches(4) })
    .boxFacts("B1", { depthIn: 2.75, cover: "device-plate", setbackIn: 0.25, wallCombustible: false })
    .boxFacts("B2", { openKnockouts: 0, accessible: true, cover: "device-plate" })
    .boxFacts("B3", { cover: "device-plate", setbackIn: 0, wallCombustible: true })
    .boxFacts("B4", { listedFor: ["luminaire"] })
    .facts("R1", { bodyDepthIn: 2.125 })
    .facts("R3", { fastenedTo: "ring" })
    .facts("L1", { weightLb: 50 })
    .set(entry("W1", "B1"), "sheathInsideIn", 0.25)
    .set(entry("W2", "B2"), "markedForCables", 2)
    .setEnd("W1.bk@B1", "freeLengthIn", 6)
    .setEnd("W1.bk@B1", "outsideOpeningIn", 3)
    .set({ kind: "cable", id: cableId("W4") }, "insulationC", 90).project;

/** One step past each limit. */
export const roughInWrong = (): Project =>
  bedroom("Bedroom before the walls are closed, to be done again", { ceiling: "plastic-new-1", ring: "from-table" })
    .boxFacts("B1", { depthIn: 2.75, setbackIn: 0.375, wallCombustible: false })
    .boxFacts("B2", { openKnockouts: 2 })
    .boxFacts("B3", { cover: "none" })
    .boxFacts("B5", { accessible: false })
    .facts("R1", { bodyDepthIn: 2.25 })
    .facts("R3", { fastenedTo: "nothing" })
    .facts("L1", { weightLb: 20 })
    .set(entry("W1", "B1"), "sheathInsideIn", 0.125)
    .set(entry("W2", "B2"), "markedForCables", 1)
    .setEnd("W1.bk@B1", "freeLengthIn", 5.5)
    .setEnd("W1.bk@B1", "outsideOpeningIn", 3)
    .set({ kind: "cable", id: cableId("W4") }, "insulationC", 60).project;

/** A bedroom light on 14/3: the black by S1, the red by S2, which works the wardrobe light as well; capped at the ceiling. */
function spareRed(title: string, ceiling: string): Project {
  return Job.in(title)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Bedroom", note: "door" })
    .boxAt(2, 0, "B2", ceiling, { room: "Bedroom", note: "ceiling" })
    .boxAt(2, 1, "B3", "plastic-ceiling", { room: "Bedroom", note: "wardrobe" })
    .device("S1", "switch-single-pole", "B1")
    .device("S2", "switch-single-pole", "B1")
    .device("L1", "luminaire-led-9", "B2")
    .device("L2", "luminaire-led-9", "B3")
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { item: "nm-14-3-g", ft: 12 })
    .cable("W3", "B1", "B3", { ...NM14, ft: 9 })
    .boxFacts("B2", { mountedOn: "ceiling" })
    .home("W1", "Q1")
    .joint("B1", "feed", ["W1.bk@B1"], { s1: "S1.C", s2: "S2.C" }, { awg: "14" })
    .joint("B1", "white", ["W1.wh@B1", "W2.wh@B1", "W3.wh@B1"])
    .joint("B1", "second", ["W2.rd@B1", "W3.bk@B1"], { s3: "S2.L" }, { awg: "14" })
    .land("W2.bk@B1", "S1.L")
    .grounds("B1", ["W1", "W2", "W3"], ["S1", "S2"], "14")
    .onto("W2", "B2", "L1.H", "L1.N")
    .grounds("B2", ["W2"], ["L1"], "14")
    .spare("W2.rd@B2")
    .endOfRun("W3", "B3", "L2", ["H", "N"]).project;
}

export const spareRedOnFanBox = (): Project => spareRed("Spare red at a box for fans", "fan-rated");
export const spareRedAtLight = (): Project => spareRed("Spare red at a box for luminaires", "plastic-ceiling");

/** A hall of four receptacles on push-in entries and screws; a 20 A one beside it. */
function quickWiring(title: string): Job {
  return Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "front" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "middle" })
    .boxAt(3, 0, "B3", "plastic-new-1", { room: "Hall", note: "back" })
    .boxAt(1, 1, "B4", "plastic-new-1", { room: "Hall", note: "landing" })
    .device("R1", "receptacle-15", "B1", { set: { entryKind: "push-in" } })
    .device("R2", "receptacle-15", "B2")
    .device("R3", "receptacle-15", "B3")
    .device("R4", "receptacle-15", "B4")
    .cable("W1", "P", "B1", { ...NM14, ft: 22 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 10 })
    .cable("W3", "B2", "B3", { ...NM14, ft: 10 })
    .cable("W4", "P", "B4", { ft: 26 })
    .home("W1", "Q1")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .pigtailed("B2", ["W2", "W3"], "R2.H1", "R2.N1", "14")
    .grounds("B2", ["W2", "W3"], ["R2"], "14")
    .set({ kind: "jumper", id: jumperId("B2p") }, "stranded", true)
    .onto("W3", "B3", "R3.H1", "R3.N1")
    .grounds("B3", ["W3"], ["R3"], "14")
    .home("W4", "Q3")
    .endOfRun("W4", "B4", "R4");
}

/** 14 AWG solid pigtails in the springs, strands under a screw that is marked for them, 12 AWG on the screws. */
export const quickWiringRight = (): Project =>
  quickWiring("Push-in entries and strands where they may be")
    .pigtailed("B1", ["W1", "W2"], "R1.H1", "R1.N1", "14")
    .facts("R2", { acceptsStranded: true })
    .setEnd("W3.wh@B3", "condition", "good").project;

export const quickWiringWrong = (): Project =>
  quickWiring("Push-in entries and strands where they may not be")
    .throughScrews("B1", "W1", "W2", "R1")
    .facts("R4", { entryKind: "push-in" })
    .setEnd("W3.wh@B3", "condition", "brittle").project;

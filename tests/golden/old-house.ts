import type { Project } from "../../shared-model/model/project.ts";
import { roomId } from "../builders/ids.ts";
import { Job } from "./job.ts";

const OLD = { item: "nm-14-2" };
const NO_GROUND = "No Equipment Ground";

/** A bedroom on 14/2 of 1954: R1 at the door feeds R2, both in deep boxes with room to spare. */
function twoWire(title: string, first: string, second: string, [hot, neutral]: readonly [string, string]): Job {
  const job = Job.in(title)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(4, "Q4", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Bedroom", note: "door" })
    .boxAt(2, 0, "B2", "device-3-2-3-1-2", { room: "Bedroom", note: "window" })
    .device("R1", first, "B1")
    .device("R2", second, "B2")
    .cable("T1", "P", "B1", { ...OLD, ft: 32 })
    .cable("T2", "B1", "B2", { ...OLD, ft: 14 })
    .onto("T1", "P", "Q4.OUT", "P neutral.BAR")
    .directory({ Q4: "Bedroom" });
  return job.onto("T2", "B2", "R2.H1", "R2.N1").onto("T1", "B1", `R1.${hot}`, `R1.${neutral}`);
}

const oldPair = (title: string): Job =>
  twoWire(title, "receptacle-two-slot", "receptacle-two-slot", ["H1", "N1"]).onto("T2", "B1", "R1.H2", "R1.N2");

/** 406.4(D)(2)(a): two slots for two slots, behind an arc-fault breaker. */
export const twoSlotAgain = (): Project =>
  oldPair("Two-slot receptacle replaced by another")
    .boxFacts("P", { listedBreakers: ["breaker-1", "breaker-afci-1"] })
    .plan()
    .replace("Q4", "Q4b", "breaker-afci-1")
    .onto("T1", "P", "Q4b.OUT", "Q4b.LOAD_N")
    .directory({ Q4b: "Bedroom" })
    .replace("R1", "R1b", "receptacle-two-slot").project;

/** Three slots where no ground comes, and no protection of any kind. */
export const threeSlotsWithoutGround = (): Project =>
  oldPair("Two-slot receptacle replaced by three slots").plan().replace("R1", "R1b", "receptacle-tr-15").project;

/** 406.4(D)(2)(b) and (c): protected at R1, labelled at both. */
export const protectedAndLabelled = (): Project =>
  oldPair("Ground-fault protection in place of a ground")
    .plan()
    .replace("R1", "R1b", "dual-function-receptacle-15")
    .onto("T1", "B1", "R1b.LINE_H", "R1b.LINE_N")
    .onto("T2", "B1", "R1b.LOAD_H", "R1b.LOAD_N")
    .replace("R2", "R2b", "receptacle-tr-15")
    .plate("label-1", NO_GROUND, "R1b", "406.4(D)(2)")
    .plate("label-2", NO_GROUND, "R2b", "406.4(D)(2)")
    .plate("label-3", "GFCI Protected", "R2b", "406.4(D)(2)").project;

/** Somebody joined the ground screw to the neutral, so that a tester says all is well. */
export const bootlegGround = (): Project =>
  twoWire("Ground made out of the neutral", "receptacle-two-slot", "receptacle-15", ["H1", "N1"])
    .onto("T2", "B1", "R1.H2", "R1.N2")
    .jumper("boot", "B2", "R2.N2", "R2.G", { awg: "14", colour: "bare" }).project;

/** Protected at R1, but new cable took a ground wire on to R2, and the plate of R2 says nothing. */
export const groundOnward = (): Project =>
  Job.in("Ground wire onward from a receptacle without a ground")
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(4, "Q4", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "device-3-2-3-1-2", { room: "Bedroom", note: "door" })
    .boxAt(2, 0, "B2", "plastic-old-1", { room: "Bedroom", note: "window" })
    .device("R1", "gfci-receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("T1", "P", "B1", { ...OLD, ft: 32 })
    .cable("T2", "B1", "B2", { item: "nm-14-2-g", ft: 14 })
    .onto("T1", "P", "Q4.OUT", "P neutral.BAR")
    .onto("T1", "B1", "R1.LINE_H", "R1.LINE_N")
    .onto("T2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .land("T2.cu@B1", "R1.G")
    .endOfRun("T2", "B2", "R2")
    .plate("label-1", NO_GROUND, "R1", "406.4(D)(2)").project;

/** Knob-and-tube in a filled attic, and a plan that takes a bedroom receptacle from its junction. */
export const knobTubeExtended = (): Project =>
  Job.in("New receptacle from knob-and-tube wiring")
    .roomAt("above", "Attic", "attic")
    .set({ kind: "room", id: roomId("Attic") }, "insulatedCavity", true)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "octagon-4-2-1-8", { room: "Attic", note: "attic lamp" })
    .device("L1", "luminaire-led-9", "B1")
    .cable("N1", "P", "B1", { item: "knob-tube-14", ft: 34, means: "external-connector" })
    .cable("N2", "P", "B1", { item: "knob-tube-14", ft: 34, means: "external-connector" })
    .boxFacts("B1", { internalClamps: "none" })
    .land("N1.bk@P", "Q1.OUT")
    .land("N2.bk@P", "P neutral.BAR")
    .land("N1.bk@B1", "L1.H")
    .land("N2.bk@B1", "L1.N")
    .plan()
    .boxAt(2, 0, "B2", "plastic-old-1", { room: "Bedroom", note: "bed wall" })
    .device("R2", "receptacle-tr-15", "B2")
    .cable("X1", "B1", "B2", { item: "nm-14-2-g", ft: 12 })
    .joint("B1", "hot", ["N1.bk@B1", "X1.bk@B1"], { h: "L1.H" }, { awg: "14" })
    .joint("B1", "white", ["N2.bk@B1", "X1.wh@B1"], { w: "L1.N" }, { awg: "14", colour: "white" })
    .onto("X1", "B2", "R2.H1", "R2.N1").project;

/** Two aluminium circuits of 1970, 15 A: R1 is marked for aluminium, R2 hangs on copper pigtails in listed connectors. */
export const aluminiumRight = (): Project =>
  Job.in("Aluminium circuits, mended")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "hall" })
    .boxAt(1, 1, "B2", "plastic-new-1", { room: "Hall", note: "landing" })
    .device("R1", "receptacle-15", "B1", { set: { markedForAluminium: true } })
    .device("R2", "receptacle-15", "B2")
    .cable("C1", "P", "B1", { item: "al-12-2-g", ft: 30 })
    .cable("C2", "P", "B2", { item: "al-12-2-g", ft: 30 })
    .home("C1", "Q1")
    .endOfRun("C1", "B1", "R1")
    .home("C2", "Q3")
    .joint("B2", "hot", ["C2.bk@B2"], { h: "R2.H1" })
    .joint("B2", "white", ["C2.wh@B2"], { w: "R2.N1" }, { colour: "white" })
    .joint("B2", "ground", ["C2.cu@B2"], { g: "R2.G" }, { colour: "bare" })
    .connectors("B2", "al-cu-listed", "hot", "white", "ground").project;

/** R3 is not marked; R4 has copper pigtails under ordinary twist-on connectors, and a 20 A breaker. */
export const aluminiumWrong = (): Project =>
  Job.in("Aluminium circuits, not mended")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(5, "Q5", "P", { ratingA: 15 })
    .breakerIn(7, "Q7", "P", { ratingA: 20 })
    .boxAt(1, 0, "B3", "plastic-new-1", { room: "Hall", note: "hall" })
    .boxAt(1, 1, "B4", "plastic-new-1", { room: "Hall", note: "landing" })
    .device("R3", "receptacle-15", "B3")
    .device("R4", "receptacle-15", "B4")
    .cable("C3", "P", "B3", { item: "al-12-2-g", ft: 30 })
    .cable("C4", "P", "B4", { item: "al-12-2-g", ft: 30 })
    .home("C3", "Q5")
    .endOfRun("C3", "B3", "R3")
    .home("C4", "Q7")
    .joint("B4", "hot", ["C4.bk@B4"], { h: "R4.H1" })
    .joint("B4", "white", ["C4.wh@B4"], { w: "R4.N1" }, { colour: "white" })
    .joint("B4", "ground", ["C4.cu@B4"], { g: "R4.G" }, { colour: "bare" })
    .connectors("B4", "twist-medium", "hot", "white", "ground").project;

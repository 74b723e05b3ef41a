import type { Project } from "../../shared-model/model/project.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";
import { threeWayStair } from "../builders/samples/three-way-stair.ts";
import { Job } from "./job.ts";

const NM14 = { item: "nm-14-2-g" };
const THREE = { item: "nm-14-3-g" };

/** A new hall light on two three-way switches and a four-way between them. */
export function fourWayRight(): Project {
  return Job.in("New hall light on three switches", 2023)
    .roomAt("above", "Hall", "hallway")
    .plan()
    .breakerIn(10, "Q10", "P", { ratingA: 15, type: "breaker-afci-1" })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "door" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "middle" })
    .boxAt(3, 0, "B3", "plastic-new-1", { room: "Hall", note: "stairs" })
    .boxAt(4, 0, "B4", "plastic-ceiling", { room: "Hall", note: "ceiling" })
    .device("SA", "switch-3way", "B1")
    .device("SX", "switch-4way", "B2")
    .device("SB", "switch-3way", "B3")
    .device("L1", "luminaire-led-9", "B4")
    .cable("V1", "P", "B1", { ...NM14, ft: 24 })
    .cable("V2", "B1", "B2", { ...THREE, ft: 8 })
    .cable("V3", "B2", "B3", { ...THREE, ft: 8 })
    .cable("V4", "B3", "B4", { ...NM14, ft: 8 })
    .land("V1.bk@P", "Q10.OUT")
    .land("V1.wh@P", "Q10.LOAD_N")
    .land("V1.cu@P", "P ground.BAR")
    .land("V1.bk@B1", "SA.C")
    .land("V2.bk@B1", "SA.T1")
    .land("V2.rd@B1", "SA.T2")
    .joint("B1", "white 1", ["V1.wh@B1", "V2.wh@B1"])
    .grounds("B1", ["V1", "V2"], ["SA"], "14")
    .land("V2.bk@B2", "SX.A1")
    .land("V2.rd@B2", "SX.A2")
    .land("V3.bk@B2", "SX.B1")
    .land("V3.rd@B2", "SX.B2")
    .joint("B2", "white 2", ["V2.wh@B2", "V3.wh@B2"])
    .grounds("B2", ["V2", "V3"], ["SX"], "14")
    .land("V3.bk@B3", "SB.T1")
    .land("V3.rd@B3", "SB.T2")
    .land("V4.bk@B3", "SB.C")
    .joint("B3", "white 3", ["V3.wh@B3", "V4.wh@B3"])
    .grounds("B3", ["V3", "V4"], ["SB"], "14")
    .endOfRun("V4", "B4", "L1", ["H", "N"])
    .directory({ Q10: "Hall light" }).project;
}

/** The stair light after SB was exchanged: its common has a traveller, the light hangs on a traveller screw. */
export const threeWayMiswired = (): Project =>
  new SampleDrawing(threeWayStair(), "as-found")
    .land("V3.bk@B2", "capped")
    .land("V2.bk@B2", "SB.C")
    .land("V3.bk@B2", "SB.T1").project;

/** A bedroom light fed at the ceiling, its switch on a loop of two-wire cable, the white not marked. */
function loop(title: string): Job {
  return Job.in(title)
    .roomAt("above", "Bedroom", "bedroom")
    .breakerIn(4, "Q4", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "octagon-4-2-1-8", { room: "Bedroom", note: "ceiling" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Bedroom", note: "door" })
    .device("L1", "luminaire-60", "B1")
    .device("S1", "switch-single-pole", "B2")
    .cable("W1", "P", "B1", { ...NM14, ft: 30 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 14 })
    .home("W1", "Q4")
    .land("W1.wh@B1", "L1.N")
    .grounds("B1", ["W1", "W2"], ["L1"], "14")
    .land("W2.cu@B2", "S1.G");
}

export const loopUnmarked = (): Project =>
  loop("Old switch loop, white not marked")
    .joint("B1", "feed", ["W1.bk@B1", "W2.wh@B1"])
    .land("W2.bk@B1", "L1.H")
    .land("W2.wh@B2", "S1.C")
    .land("W2.bk@B2", "S1.L").project;

/** Black to the switch, the marked white back to the light. */
export const loopReversed = (): Project =>
  loop("Switch loop the wrong way about")
    .joint("B1", "feed", ["W1.bk@B1", "W2.bk@B1"])
    .land("W2.wh@B1", "L1.H")
    .land("W2.bk@B2", "S1.C")
    .land("W2.wh@B2", "S1.L")
    .setEnd("W2.wh@B1", "markedAs", "black")
    .setEnd("W2.wh@B2", "markedAs", "black").project;

/** Three bedrooms, three fans: on a fan box, on a box for luminaires, and one that is heavier than its box is marked for. */
export function ceilingFans(): Project {
  const job = Job.in("Three ceiling fans").breakerIn(6, "Q6", "P", { ratingA: 15 });
  for (const [index, [box, item]] of Object.entries({
    B1: "fan-rated",
    B2: "octagon-4-2-1-8",
    B3: "fan-rated",
  }).entries()) {
    const number = index + 1;
    const from = number === 1 ? "P" : `B${index}`;
    job
      .roomAt("above", `Bedroom ${number}`, "bedroom")
      .boxAt(number, 0, box, item, { room: `Bedroom ${number}`, note: "ceiling" })
      .boxFacts(box, { mountedOn: "ceiling" })
      .device(`F${number}`, "fan-light", box, { set: { weightLb: number === 3 ? 40 : 30 } })
      .cable(`W${number}`, from, box, { ...NM14, ft: number === 1 ? 25 : 9, means: "external-connector" });
  }
  return job
    .boxFacts("B1", { internalClamps: "none" })
    .boxFacts("B2", { internalClamps: "none", listedFor: ["luminaire"] })
    .boxFacts("B3", { internalClamps: "none", fanWeightLb: 35 })
    .home("W1", "Q6")
    .joint("B1", "hot 1", ["W1.bk@B1", "W2.bk@B1"], { a1: "F1.H_FAN", b1: "F1.H_LIGHT" }, { awg: "14" })
    .joint("B1", "white 1", ["W1.wh@B1", "W2.wh@B1"], { n1: "F1.N" }, { awg: "14", colour: "white" })
    .grounds("B1", ["W1", "W2"], ["F1"], "14")
    .joint("B2", "hot 2", ["W2.bk@B2", "W3.bk@B2"], { a2: "F2.H_FAN", b2: "F2.H_LIGHT" }, { awg: "14" })
    .joint("B2", "white 2", ["W2.wh@B2", "W3.wh@B2"], { n2: "F2.N" }, { awg: "14", colour: "white" })
    .grounds("B2", ["W2", "W3"], ["F2"], "14")
    .joint("B3", "hot 3", ["W3.bk@B3"], { a3: "F3.H_FAN", b3: "F3.H_LIGHT" }, { awg: "14" })
    .land("W3.wh@B3", "F3.N")
    .land("W3.cu@B3", "F3.G").project;
}

/** A dimmer of 600 W in the dining room; `watts` for each of its three luminaires. */
function dimmed(job: Job, loadW: number): Job {
  return job
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Dining room", note: "dimmer" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Dining room", note: "table" })
    .boxAt(3, 0, "B3", "plastic-ceiling", { room: "Dining room", note: "sideboard" })
    .device("D1", "dimmer", "B1", { set: { ratingW: 600 } })
    .device("L1", "luminaire-60", "B2", { set: { loadW } })
    .device("L2", "luminaire-60", "B3", { set: { loadW } })
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 10 })
    .cable("W3", "B2", "B3", { ...NM14, ft: 8 })
    .land("W1.cu@P", "P ground.BAR")
    .land("W1.bk@B1", "D1.C")
    .joint("B1", "white", ["W1.wh@B1", "W2.wh@B1"])
    .land("W2.bk@B1", "D1.L")
    .grounds("B1", ["W1", "W2"], ["D1"], "14")
    .pigtailed("B2", ["W2", "W3"], "L1.H", "L1.N", "14")
    .grounds("B2", ["W2", "W3"], ["L1"], "14");
}

/** New: two lamps of 100 W behind an arc-fault breaker. */
export function dimmerRight(): Project {
  const job = Job.in("New dining room light on a dimmer")
    .roomAt("above", "Dining room", "dining")
    .plan()
    .breakerIn(12, "Q12", "P", { ratingA: 15, type: "breaker-afci-1" });
  return dimmed(job, 100)
    .land("W1.bk@P", "Q12.OUT")
    .land("W1.wh@P", "Q12.LOAD_N")
    .endOfRun("W3", "B3", "L2", ["H", "N"]).project;
}

/** As found: 2 x 350 W on 600 W, and a receptacle on the dimmed leg. */
export function dimmerWrong(): Project {
  const job = Job.in("Dimmer with too much on it")
    .roomAt("above", "Dining room", "dining")
    .breakerIn(12, "Q12", "P", { ratingA: 15 });
  return dimmed(job, 350)
    .boxAt(4, 0, "B4", "plastic-new-1", { room: "Dining room", note: "sideboard receptacle" })
    .device("R1", "receptacle-15", "B4")
    .cable("W4", "B3", "B4", { ...NM14, ft: 6 })
    .land("W1.bk@P", "Q12.OUT")
    .land("W1.wh@P", "P neutral.BAR")
    .pigtailed("B3", ["W3", "W4"], "L2.H", "L2.N", "14")
    .grounds("B3", ["W3", "W4"], ["L2"], "14")
    .endOfRun("W4", "B4", "R1").project;
}

/** A living room whose only switched outlet is half of R1; the plan puts a dual-function receptacle in its place. */
export function halfSwitched(): Project {
  return Job.in("Half-switched receptacle replaced")
    .roomAt("at", "Living room", "living")
    .breakerIn(14, "Q14", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Living room", note: "door" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Living room", note: "sofa" })
    .device("S1", "switch-single-pole", "B1")
    .device("R1", "receptacle-15", "B2", { set: { hotTab: "removed" } })
    .cable("W1", "P", "B1", { ...NM14, ft: 28 })
    .cable("W2", "B1", "B2", { ...THREE, ft: 12 })
    .home("W1", "Q14")
    .joint("B1", "feed", ["W1.bk@B1", "W2.bk@B1"], { s: "S1.C" }, { awg: "14" })
    .joint("B1", "white", ["W1.wh@B1", "W2.wh@B1"])
    .land("W2.rd@B1", "S1.L")
    .grounds("B1", ["W1", "W2"], ["S1"], "14")
    .land("W2.bk@B2", "R1.H1")
    .land("W2.rd@B2", "R1.H2")
    .land("W2.wh@B2", "R1.N1")
    .land("W2.cu@B2", "R1.G")
    .plan()
    .replace("R1", "R1b", "dual-function-receptacle-15")
    .land("W2.rd@B2", "capped")
    .land("W2.bk@B2", "R1b.LINE_H")
    .land("W2.wh@B2", "R1b.LINE_N").project;
}

import type { ConductorKey } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { cableId } from "../builders/ids.ts";
import { Job } from "./job.ts";

/** A 240 V water heater, 4500 W, on 10/2; its white is the second hot. */
function waterHeater(title: string, ratingA: number): Job {
  return Job.in(title)
    .breakerIn(2, "Q2/4", "P", { ratingA, type: "breaker-2" })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Basement", note: "water heater" })
    .device("Water heater", "appliance-240", "B1", { set: { loadW: 4500 } })
    .cable("W1", "P", "B1", { item: "nm-10-2-g", ft: 20 })
    .land("W1.bk@P", "Q2/4.OUT1")
    .land("W1.wh@P", "Q2/4.OUT2")
    .land("W1.cu@P", "P ground.BAR")
    .onto("W1", "B1", "Water heater.L1", "Water heater.L2")
    .grounds("B1", ["W1"], ["Water heater"], "10")
    .directory({ "Q2/4": "Water heater" });
}

export const waterHeaterRight = (): Project =>
  waterHeater("Water heater", 30).setEnd("W1.wh@P", "markedAs", "red").setEnd("W1.wh@B1", "markedAs", "red").project;

/** A 40 A breaker, and the white not marked. */
export const waterHeaterWrong = (): Project => waterHeater("Water heater on a breaker too large", 40).project;

/** A second panel in a shed that belongs to the house, fed with four wires; one receptacle on it. */
function secondPanel(title: string, mainBond: "here" | "elsewhere", groundTo: string): Project {
  return Job.in(title)
    .roomAt("above", "Study", "den")
    .breakerIn(2, "Q2/4", "P", { ratingA: 30, type: "breaker-2" })
    .panel("P2", "panel-16", { at: { x: 1248, y: 0 } })
    .boxFacts("P2", { supply: "feeder", mainBond })
    .device("Lugs", "main-lugs", "P2")
    .cable("F1", "P", "P2", { item: "nm-10-3-g", ft: 25 })
    .land("F1.bk@P", "Q2/4.OUT1")
    .land("F1.rd@P", "Q2/4.OUT2")
    .land("F1.wh@P", "P neutral.BAR")
    .land("F1.cu@P", "P ground.BAR")
    .land("F1.bk@P2", "Lugs.L1")
    .land("F1.rd@P2", "Lugs.L2")
    .land("F1.wh@P2", "Lugs.N")
    .land("F1.cu@P2", "P2 ground.BAR")
    .breakerIn(1, "Q1", "P2", { ratingA: 15 })
    .boxAt(2, 0, "B1", "plastic-new-1", { room: "Study", note: "desk" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P2", "B1", { item: "nm-14-2-g", ft: 12 })
    .home("W1", "Q1", "P2")
    .land("W1.cu@P2", groundTo)
    .endOfRun("W1", "B1", "R1").project;
}

export const secondPanelRight = (): Project => secondPanel("Second panel", "elsewhere", "P2 ground.BAR");
export const secondPanelBonded = (): Project =>
  secondPanel("Second panel with its bonding screw left in", "here", "P2 ground.BAR");
export const groundOnNeutralBar = (): Project =>
  secondPanel("Second panel, a ground on its neutral bar", "elsewhere", "P2 neutral.BAR");

/** A new bedroom circuit: two receptacles and a smoke alarm. */
function bedroom(title: string, breaker: string, neutral: string): Project {
  return Job.in(title, 2023)
    .roomAt("above", "Bedroom", "bedroom")
    .plan()
    .breakerIn(6, "Q6", "P", { ratingA: 15, type: breaker })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Bedroom", note: "door" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Bedroom", note: "bed wall" })
    .boxAt(3, 0, "B3", "plastic-ceiling", { room: "Bedroom", note: "ceiling" })
    .device("R1", "receptacle-tr-15", "B1")
    .device("R2", "receptacle-tr-15", "B2")
    .device("A1", "smoke-alarm", "B3")
    .cable("W1", "P", "B1", { item: "nm-14-2-g", ft: 26 })
    .cable("W2", "B1", "B2", { item: "nm-14-2-g", ft: 12 })
    .cable("W3", "B2", "B3", { item: "nm-14-2-g", ft: 10 })
    .land("W1.bk@P", "Q6.OUT")
    .land("W1.wh@P", neutral)
    .land("W1.cu@P", "P ground.BAR")
    .pigtailed("B1", ["W1", "W2"], "R1.H1", "R1.N1", "14")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .pigtailed("B2", ["W2", "W3"], "R2.H1", "R2.N1", "14")
    .grounds("B2", ["W2", "W3"], ["R2"], "14")
    .onto("W3", "B3", "A1.H", "A1.N")
    .directory({ Q6: "Bedroom receptacles and smoke alarm" }).project;
}

export const arcFaultRight = (): Project =>
  bedroom("New bedroom on an arc-fault breaker", "breaker-afci-1", "Q6.LOAD_N");
export const arcFaultNeutralOnBar = (): Project =>
  bedroom("New bedroom on a dual-function breaker, white on the bar", "breaker-dual-1", "P neutral.BAR");

/** A junction of three cables in a metal box, as it should be. */
function junction(title: string): Job {
  return Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(9, "Q9", "P", { ratingA: 15 })
    .boxAt(1, 0, "JB", "square-4-1-1-2", { room: "Basement", note: "junction" })
    .boxAt(2, 0, "B1", "plastic-new-1", { room: "Hall", note: "hall" })
    .boxAt(2, 1, "B2", "plastic-new-1", { room: "Hall", note: "landing" })
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2")
    .cable("W1", "P", "JB", { item: "nm-14-2-g", ft: 14 })
    .cable("W2", "JB", "B1", { item: "nm-14-2-g", ft: 18 })
    .cable("W3", "JB", "B2", { item: "nm-14-2-g", ft: 20 })
    .home("W1", "Q9")
    .joint("JB", "hot", ["W1.bk@JB", "W2.bk@JB", "W3.bk@JB"])
    .joint("JB", "white", ["W1.wh@JB", "W2.wh@JB", "W3.wh@JB"])
    .endOfRun("W2", "B1", "R1")
    .endOfRun("W3", "B2", "R2");
}

export const metalJunctionRight = (): Project =>
  junction("Metal junction box").grounds("JB", ["W1", "W2", "W3"], [], "14").project;

/** No pigtail to the box, and the ground of W3 left out of the joint. */
export const metalJunctionWrong = (): Project =>
  junction("Metal junction box, a ground left out")
    .joint("JB", "ground", ["W1.cu@JB", "W2.cu@JB"])
    .land("W3.cu@JB", "loose").project;

/** A dryer at the end of 10/3 in a box of 10.0 in³; in the second drawing its conductors are of 4 AWG. */
function largeGauge(title: string, thick: boolean): Project {
  const job = Job.in(title)
    .breakerIn(2, "Q2/4", "P", { ratingA: 30, type: "breaker-2" })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Basement", note: "dryer" })
    .boxFacts("B1", { volume: { kind: "marked", volumeIn3: cubicInches(10) } })
    .device("Dryer", "appliance-240", "B1", { set: { loadW: 4800 } })
    .cable("W1", "P", "B1", { item: "nm-10-3-g", ft: 18 })
    .land("W1.bk@P", "Q2/4.OUT1")
    .land("W1.rd@P", "Q2/4.OUT2")
    .land("W1.wh@P", "P neutral.BAR")
    .land("W1.cu@P", "P ground.BAR")
    .land("W1.bk@B1", "Dryer.L1")
    .land("W1.rd@B1", "Dryer.L2")
    .land("W1.cu@B1", "Dryer.G")
    .spare("W1.wh@B1");
  if (!thick) return job.project;
  for (const key of ["bk", "rd", "wh"])
    job.set({ kind: "conductor", cable: cableId("W1"), id: key as ConductorKey }, "awg", "4");
  return job.project;
}

export const largeGaugeExactlyFull = (): Project => largeGauge("10 AWG in a box that it fills", false);
export const largeGaugeNotCounted = (): Project => largeGauge("4 AWG in a box", true);

/** Two circuits meet in one box at the counter of a bar; the duplex there is split between them. */
function twoCircuits(title: string, wrong: boolean): Project {
  const job = Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .breakerIn(3, "Q3", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-2", { room: "Hall", note: "hall" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { item: "nm-14-2-g", ft: 26 })
    .cable("W2", "P", "B1", { item: "nm-14-2-g", ft: 26 })
    .home("W1", "Q1")
    .home("W2", "Q3");
  if (!wrong)
    return job
      .device("R2", "receptacle-15", "B1")
      .onto("W1", "B1", "R1.H1", "R1.N1")
      .onto("W2", "B1", "R2.H1", "R2.N1")
      .grounds("B1", ["W1", "W2"], ["R1", "R2"], "14").project;
  return job
    .facts("R1", { hotTab: "removed" })
    .land("W1.bk@B1", "R1.H1")
    .land("W2.bk@B1", "R1.H2")
    .joint("B1", "white", ["W1.wh@B1", "W2.wh@B1"], { w: "R1.N1" }, { awg: "14", colour: "white" })
    .grounds("B1", ["W1", "W2"], ["R1"], "14").project;
}

export const twoCircuitsRight = (): Project => twoCircuits("Two circuits in one box", false);
export const twoCircuitsWrong = (): Project => twoCircuits("Two circuits on one duplex, whites joined", true);

/** A workshop circuit of 15 A: a fixed heater, a receptacle beside it; `loadW` of the heater. */
function workshop(title: string, loadW: number): Project {
  return Job.in(title)
    .roomAt("above", "Hobby room", "recreation")
    .breakerIn(11, "Q11", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hobby room", note: "bench" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hobby room", note: "heater" })
    .device("R1", "receptacle-15", "B1")
    .device("Heater", "appliance-120", "B2", { set: { loadW, continuous: true } })
    .cable("W1", "P", "B1", { item: "nm-14-2-g", ft: 24 })
    .cable("W2", "B1", "B2", { item: "nm-14-2-g", ft: 10 })
    .home("W1", "Q11")
    .pigtailed("B1", ["W1", "W2"], "R1.H1", "R1.N1", "14")
    .grounds("B1", ["W1", "W2"], ["R1"], "14")
    .endOfRun("W2", "B2", "Heater", ["H", "N"]).project;
}

/** 900 W is 7.5 A, exactly half of 15 A. */
export const fixedHeaterRight = (): Project => workshop("Fixed heater of 900 W", 900);
/** 1500 W is 12.5 A: more than half of 15 A, and more than 80 % of it for hours. */
export const fixedHeaterWrong = (): Project => workshop("Fixed heater of 1500 W", 1500);

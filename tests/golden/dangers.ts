import type { Project } from "../../shared-model/model/project.ts";
import { Job } from "./job.ts";

const NM14 = { item: "nm-14-2-g" };

/** Two receptacles in a row in the hall; how the home run is landed is told apart. */
function hall(title: string): Job {
  return Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "front" })
    .boxAt(2, 0, "B2", "plastic-new-1", { room: "Hall", note: "back" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .home("W1", "Q1")
    .pigtailed("B1", ["W1", "W2"], "R1.H1", "R1.N1", "14")
    .grounds("B1", ["W1", "W2"], ["R1"], "14");
}

/** Black on the bar and white on the breaker: every slot behind it is the wrong way round. */
export const polarityFromPanel = (): Project =>
  hall("Hot and neutral exchanged in the panel")
    .device("R2", "receptacle-15", "B2")
    .endOfRun("W2", "B2", "R2")
    .land("W1.bk@P", "capped")
    .land("W1.wh@P", "Q1.OUT")
    .land("W1.bk@P", "P neutral.BAR").project;

/** The last receptacle alone is landed the wrong way round. */
export const polarityAtOneFace = (): Project =>
  hall("Hot and neutral exchanged at one receptacle")
    .device("R2", "receptacle-15", "B2")
    .endOfRun("W2", "B2", "R2", ["N1", "H1"]).project;

/** A receptacle was taken out; what fed it was pushed back into the box as it was. */
export const receptacleTakenOutLoose = (): Project =>
  hall("Receptacle taken out, its wires left bare").land("W2.bk@B2", "loose").land("W2.wh@B2", "loose").project;

/** The same, capped and marked as spare. */
export const receptacleTakenOutCapped = (): Project =>
  hall("Receptacle taken out, its wires capped").spare("W2.bk@B2").spare("W2.wh@B2").project;

/** A ceiling lamp was taken down; S1 still works its black. */
export const lampTakenDown = (): Project =>
  Job.in("Lamp taken down, its wires left bare")
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Hall", note: "ceiling" })
    .device("S1", "switch-single-pole", "B1")
    .cable("W1", "P", "B1", { ...NM14, ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .home("W1", "Q1")
    .switched("B1", ["W1"], "S1", "W2", "14")
    .grounds("B1", ["W1", "W2"], ["S1"], "14")
    .land("W2.bk@B2", "loose")
    .land("W2.wh@B2", "loose").project;

/** Two basement lamps that are always on; the cable to the second is crossed where it leaves the first. */
export const shellBehindCrossing = (): Project =>
  Job.in("Lampholder behind crossed conductors")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-ceiling", { room: "Basement", note: "stairs" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Basement", note: "boiler" })
    .device("L1", "luminaire-60", "B1")
    .device("L2", "luminaire-60", "B2")
    .cable("W1", "P", "B1", { ...NM14, ft: 18 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 14 })
    .home("W1", "Q1")
    .joint("B1", "hot", ["W1.bk@B1", "W2.wh@B1"], { h: "L1.H" }, { awg: "14" })
    .joint("B1", "white", ["W1.wh@B1", "W2.bk@B1"], { n: "L1.N" }, { awg: "14", colour: "white" })
    .grounds("B1", ["W1", "W2"], ["L1"], "14")
    .endOfRun("W2", "B2", "L2", ["H", "N"]).project;

/** Hobby room receptacle at the end of 14 AWG on 15 A. */
function longRun(title: string, ft: number): Project {
  return Job.in(title)
    .roomAt("above", "Hobby room", "recreation")
    .breakerIn(1, "Q1", "P", { ratingA: 15 })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hobby room", note: "bench" })
    .device("R1", "receptacle-15", "B1")
    .cable("W1", "P", "B1", { ...NM14, ft })
    .home("W1", "Q1")
    .endOfRun("W1", "B1", "R1").project;
}

export const longRunWithin = (): Project => longRun("14 AWG over 59 ft", 59);
export const longRunPast = (): Project => longRun("14 AWG over 60 ft", 60);

/** Light of a 12 AWG circuit on 14 AWG from the switch on. */
function thinLeg(title: string, ratingA: number): Project {
  return Job.in(title)
    .roomAt("above", "Hall", "hallway")
    .breakerIn(1, "Q1", "P", { ratingA })
    .boxAt(1, 0, "B1", "plastic-new-1", { room: "Hall", note: "switch" })
    .boxAt(2, 0, "B2", "plastic-ceiling", { room: "Hall", note: "ceiling" })
    .device("S1", "switch-single-pole", "B1")
    .device("L1", "luminaire-led-9", "B2")
    .cable("W1", "P", "B1", { ft: 24 })
    .cable("W2", "B1", "B2", { ...NM14, ft: 12 })
    .home("W1", "Q1")
    .switched("B1", ["W1"], "S1", "W2")
    .grounds("B1", ["W1", "W2"], ["S1"])
    .endOfRun("W2", "B2", "L1", ["H", "N"]).project;
}

export const thinLegOnTwenty = (): Project => thinLeg("14 AWG switch leg behind 20 A", 20);
export const thinLegOnFifteen = (): Project => thinLeg("14 AWG switch leg behind 15 A", 15);

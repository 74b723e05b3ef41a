import { type Edition, emptyProject, type Project } from "../../shared-model/model/project.ts";
import { Drawing } from "./drawing-by-commands.ts";
import { boxId, cableId, deviceId, jumperId } from "./ids.ts";

export * from "./ids.ts";

/** An empty drawing, as found, edition 2020 unless told. */
export const drawing = (edition: Edition = 2020, title = "Test drawing"): Drawing =>
  new Drawing(emptyProject(title, edition), "as-found");

/**
 * The five-cable laundry box as found, edition 2020: breaker Q14 of panel P feeds box B1 by C1; five 12/2 cables, all
 * joined in splices X (hot), Y (neutral) and Z (ground), with receptacle R1 on pigtails p, q, r. Everything else hangs
 * on B1: R2 at the sink (C2), R3 on the porch behind it (C6), the freezer's R4 (C3), the stair switch S1 (C4) with
 * luminaire L1 (C7), and R5 in the hall (C5), whose protection is wished for.
 */
export const laundryAsFound = (): Project => laundryDrawing().project;

/** As `laundryAsFound`, ready to be drawn on. */
export function laundryDrawing(): Drawing {
  const house = drawing(2020, "Laundry circuit");
  rooms(house);
  enclosures(house);
  devices(house);
  cables(house);
  makeUpPanel(house);
  makeUpB1(house);
  makeUpRest(house);
  return house.load("Freezer", "freezer-180", "R4").wish("R5");
}

/** The laundry with cable C5 removed as found and kept in proposed, which had moved one of its ends: held back. */
export function heldBackDrawing(): Drawing {
  const plan = laundryDrawing().propose().land("C5.bk@B6", "capped");
  const remove = { kind: "cable", id: cableId("C5") } as const;
  return new Drawing(new Drawing(plan.project, "as-found").remove(remove).project, "proposed");
}

function rooms(house: Drawing): void {
  house
    .room("Laundry", "laundry", "basement-unfinished")
    .room("Porch", "outdoor")
    .room("Basement", "basement-unfinished")
    .room("Stair", "stair")
    .room("Hall", "hallway");
}

/** B1 is a 30.3 in³ box with internal clamps and a ring without a marking; the others as the job states their volumes. */
function enclosures(house: Drawing): void {
  house
    .panel("P", "panel-16", { at: { x: 0, y: 0 }, set: { mainBond: "here" } })
    .box("B1", "square-4-2-1-8", { room: "Laundry", note: "laundry", at: { x: 620, y: 0 } })
    .ring("B1")
    .box("B2", "device-3-2-3-1-2", { room: "Laundry", note: "sink", at: { x: 1300, y: -420 } })
    .box("B3", "weatherproof-fd", { room: "Porch", note: "porch", at: { x: 1900, y: -420 } })
    .box("B4", "device-3-2-3-1-2", { room: "Basement", note: "freezer", at: { x: 1300, y: 0 } })
    .box("B5", "device-3-2-3-1-2", { room: "Stair", note: "stair switch", at: { x: 1300, y: 420 } })
    .box("B6", "device-3-2-2-3-4", { room: "Hall", note: "hall", at: { x: 620, y: 620 } })
    .box("B7", "octagon-4-1-1-2", { room: "Stair", note: "stair light", at: { x: 1900, y: 420 } });
}

function devices(house: Drawing): void {
  house
    .breaker("Q14", "P", { ratingA: 20 })
    .set({ kind: "device", id: deviceId("Q14") }, "slot", 14)
    .device("R1", "receptacle-15", "B1")
    .device("R2", "receptacle-15", "B2", { zones: ["sink-zone"] })
    .device("R3", "receptacle-15", "B3")
    .device("R4", "receptacle-15", "B4")
    .device("R5", "receptacle-15", "B6")
    .device("S1", "switch-single-pole", "B5")
    .device("L1", "luminaire-60", "B7");
}

function cables(house: Drawing): void {
  house
    .cable("C1", "P", "B1", { ft: 55 })
    .cable("C2", "B1", "B2", { ft: 18 })
    .cable("C3", "B1", "B4", { ft: 30 })
    .cable("C4", "B1", "B5", { ft: 16 })
    .cable("C5", "B1", "B6", { ft: 25 })
    .cable("C6", "B2", "B3", { ft: 22 })
    .cable("C7", "B5", "B7", { ft: 12 });
}

function makeUpPanel(house: Drawing): void {
  house.land("C1.bk@P", "Q14.OUT").land("C1.wh@P", "P neutral.BAR").land("C1.cu@P", "P ground.BAR");
}

const B1_CABLES = ["C1", "C2", "C3", "C4", "C5"];

function makeUpB1(house: Drawing): void {
  const all = (conductor: string) => B1_CABLES.map((cable) => `${cable}.${conductor}@B1`);
  house
    .splice("X", "B1", "twist-large", ...all("bk"))
    .splice("Y", "B1", "twist-large", ...all("wh"))
    .splice("Z", "B1", "twist-large", ...all("cu"))
    .jumper("p", "B1", "splice X", "R1.H1")
    .jumper("q", "B1", "splice Y", "R1.N1", { colour: "white" })
    .jumper("r", "B1", "splice Z", "R1.G", { colour: "bare" })
    .jumper("t", "B1", "splice Z", "bond", { colour: "bare" });
}

function makeUpRest(house: Drawing): void {
  house
    .land("C2.bk@B2", "R2.H1")
    .land("C2.wh@B2", "R2.N1")
    .land("C6.bk@B2", "R2.H2")
    .land("C6.wh@B2", "R2.N2")
    .land("C6.bk@B3", "R3.H1")
    .land("C6.wh@B3", "R3.N1")
    .land("C3.bk@B4", "R4.H1")
    .land("C3.wh@B4", "R4.N1")
    .land("C4.bk@B5", "S1.C")
    .land("C7.bk@B5", "S1.L")
    .splice("B5n", "B5", "twist-medium", "C4.wh@B5", "C7.wh@B5")
    .land("C7.bk@B7", "L1.H")
    .land("C7.wh@B7", "L1.N")
    .land("C5.bk@B6", "R5.H1")
    .land("C5.wh@B6", "R5.N1");
  grounds(house, "B2", ["C2", "C6"], "R2");
  grounds(house, "B3", ["C6"], "R3");
  grounds(house, "B4", ["C3"], "R4");
  grounds(house, "B5", ["C4", "C7"], "S1");
  grounds(house, "B6", ["C5"], "R5");
  grounds(house, "B7", ["C7"], "L1");
}

/** All bare ends of a box with a pigtail to its device and one to the box, in the smallest connector that takes them. */
function grounds(house: Drawing, box: string, names: readonly string[], device: string): void {
  const splice = `E_${box}`;
  const ends = names.map((name) => `${name}.cu@${box}`);
  const connector = names.length + 2 > 3 ? "twist-large" : "twist-medium";
  house
    .run("add-jumper", {
      enclosure: boxId(box),
      jumper: jumperId(`${box}g0`),
      name: `${box}g0`,
      awg: "12",
      colour: "bare",
      from: { kind: "capped" },
      to: house.at(boxId(box), `${device}.G`),
    })
    .splice(splice, box, connector, ...ends, `${box}g0.a`)
    .jumper(`${box}bond`, box, `splice ${splice}`, "bond", { colour: "bare" });
}

import type { Project } from "../../../shared-model/model/project.ts";
import { deviceId, jumperId, outlet } from "../ids.ts";
import { SampleDrawing } from "./sample-drawing.ts";

/**
 * A bathroom on a 20 A circuit of its own: a ground-fault receptacle at the basin, a fan-light over the tub on two
 * switches by 12/3. As found the fan-light hangs on LINE; proposed, hot and neutral of its feed go to LOAD together.
 */
export function bathFanLight(): Project {
  const asFound = SampleDrawing.empty("Bathroom with fan-light on two switches", 2020)
    .notes(
      "As found: R1 protects its own face. The feed on to the switches leaves from LINE by pigtails, so the fan-light over the tub is not behind R1. No finding: the list asks for receptacles, not for a fan or a light.",
      "The instructions of most fans for a place over a tub ask for ground-fault protection: read those of this one. Proposed: black and white of W2 leave the LINE joints together and go on LOAD of R1. Moving only one of the two makes R1 trip as soon as the fan runs.",
      "Fan and light come back by one white, so both go behind R1 or neither: a trip leaves the room dark. The owner has agreed.",
      "S1 works the fan by the black of W3, S2 the light by its red. Everything was seen with covers off but the wiring inside the fan, which is assumed.",
    )
    .roomAt("below", "Basement", "utility", "basement-unfinished")
    .roomAt("above", "Bathroom", "bathroom");
  enclosures(asFound);
  wiring(asFound);
  asFound
    .directory({ Q8: "Bathroom receptacle, fan and light" })
    .knowAll("assumed")
    .know("seen", "P", "B1", "B2")
    .knowCables("seen", "W1", "W2", "W3");
  return asFound
    .proposing()
    .onto("W2", "B1", "R1.LOAD_H", "R1.LOAD_N")
    .onto("W1", "B1", "R1.LINE_H", "R1.LINE_N")
    .remove({ kind: "jumper", id: jumperId("B1p") }, { kind: "jumper", id: jumperId("B1q") })
    .run("set-outlet-wish", { outlet: outlet("FL", "upper"), wish: { wish: "protect" } })
    .run("set-outlet-wish", { outlet: outlet("FL", "lower"), wish: { wish: "protect" } }).project;
}

function enclosures(house: SampleDrawing): void {
  const bathroom = { room: "Bathroom" };
  house
    .panelAt(0, 0, "P", "panel-16", "Basement")
    .breakerIn(8, "Q8", "P", { ratingA: 20 })
    .boxAt(1, 0, "B1", "plastic-new-1", { ...bathroom, note: "basin" })
    .boxAt(2, 0, "B2", "plastic-new-2", { ...bathroom, note: "switches" })
    .boxAt(3, 0, "B3", "fan-rated", { ...bathroom, note: "over the tub" })
    .device("R1", "gfci-receptacle-15", "B1")
    .device("S1", "switch-single-pole", "B2")
    .device("S2", "switch-single-pole", "B2")
    .device("FL", "fan-light", "B3", { zones: ["tub-shower-zone"] })
    .set({ kind: "device", id: deviceId("S1") }, "notes", "Fan")
    .set({ kind: "device", id: deviceId("S2") }, "notes", "Light");
}

function wiring(house: SampleDrawing): void {
  house
    .cable("W1", "P", "B1", { ft: 36 })
    .cable("W2", "B1", "B2", { ft: 11 })
    .cable("W3", "B2", "B3", { item: "nm-12-3-g", ft: 13 })
    .home("W1", "Q8")
    .pigtailed("B1", ["W1", "W2"], "R1.LINE_H", "R1.LINE_N")
    .grounds("B1", ["W1", "W2"], ["R1"])
    .joint("B2", "B2h", ["W2.bk@B2"], { B2p: "S1.C", B2q: "S2.C" })
    .joint("B2", "B2n", ["W2.wh@B2", "W3.wh@B2"])
    .land("W3.bk@B2", "S1.L")
    .land("W3.rd@B2", "S2.L")
    .grounds("B2", ["W2", "W3"], ["S1", "S2"])
    .land("W3.bk@B3", "FL.H_FAN")
    .land("W3.rd@B3", "FL.H_LIGHT")
    .land("W3.wh@B3", "FL.N")
    .grounds("B3", ["W3"], ["FL"]);
}

import type { Project } from "../../shared-model/model/project.ts";
import { boxId, deviceId, jumperId, laundryDrawing, spliceId } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** The laundry circuit spread over the sheet as its boxes lie in the house: panel, freezer and stair west of B1, the rest east. */
const SPOTS = {
  P: { x: 0, y: 1000 },
  B1: { x: 2500, y: 1000 },
  B2: { x: 3750, y: 1000 },
  B3: { x: 5000, y: 2000 },
  B4: { x: 1250, y: 0 },
  B5: { x: 1250, y: 2000 },
  B6: { x: 3750, y: 0 },
  B7: { x: 0, y: 2000 },
} as const;

const moves = Object.entries(SPOTS).map(([name, to]) => ({ id: boxId(name), to }));

const spread = () =>
  laundryDrawing()
    .run("move-enclosures", { moves })
    .run("set-box-intent", { enclosure: boxId("B1"), intent: intent() });

const intent = () => ({
  supply: "cable-C1" as never,
  protect: { "cable-C2": true, "cable-C5": true, "cable-C3": false, "cable-C4": false },
});

export const laundryFound = (): Project => spread().project;

/** B1 remade: R1b protects C2 and C5 behind LOAD; C3 and C4 stay on LINE; two ground joints with a link. */
export function laundryProposed(): Project {
  return spread()
    .propose()
    .run("set-box-intent", { enclosure: boxId("B1"), intent: intent() })
    .remove(
      ...["p", "q", "r", "t"].map((name) => ({ kind: "jumper" as const, id: jumperId(name) })),
      { kind: "device", id: deviceId("R1") },
      ...["X", "Y", "Z"].map((name) => ({ kind: "splice" as const, id: spliceId(name) })),
    )
    .device("R1b", "gfci-receptacle-20", "B1")
    .splice("HL", "B1", "twist-large", "C1.bk@B1", "C3.bk@B1", "C4.bk@B1")
    .splice("NL", "B1", "twist-large", "C1.wh@B1", "C3.wh@B1", "C4.wh@B1")
    .splice("E1", "B1", "twist-large", "C1.cu@B1", "C2.cu@B1", "C3.cu@B1", "C4.cu@B1")
    .splice("HD", "B1", "twist-medium", "C2.bk@B1", "C5.bk@B1")
    .splice("ND", "B1", "twist-medium", "C2.wh@B1", "C5.wh@B1")
    .jumper("a", "B1", "splice HL", "R1b.LINE_H")
    .jumper("b", "B1", "splice NL", "R1b.LINE_N", { colour: "white" })
    .jumper("c", "B1", "splice HD", "R1b.LOAD_H")
    .jumper("d", "B1", "splice ND", "R1b.LOAD_N", { colour: "white" })
    .jumper("e", "B1", "capped", "R1b.G", { colour: "bare" })
    .splice("E2", "B1", "twist-large", "C5.cu@B1", "e.a")
    .jumper("f", "B1", "splice E2", "bond", { colour: "bare" })
    .jumper("g", "B1", "splice E1", "splice E2", { colour: "bare" }).project;
}

/** B1 as it is found before anything in it is joined: its five cables and its receptacle, every end under a cap. */
export function laundryEmpty(): Drawing {
  const house = spread().remove(
    ...["p", "q", "r", "t"].map((name) => ({ kind: "jumper" as const, id: jumperId(name) })),
    ...["X", "Y", "Z"].map((name) => ({ kind: "splice" as const, id: spliceId(name) })),
  );
  return house;
}

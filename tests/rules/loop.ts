import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import { Drawing } from "./drawing.ts";

/** The feed comes to the lamp in B1, and a two-wire loop LP goes down to the switch in B2 with its white as the feed. */
export function switchLoop(edition: ConstructorParameters<typeof Drawing>[0] = 2020): Drawing {
  return new Drawing(edition)
    .room("Bedroom", ["bedroom"])
    .panel("P")
    .breaker("Q1", 15)
    .box("B1", 21, { roomId: "Bedroom" as never })
    .box("B2", 18, { roomId: "Bedroom" as never })
    .cable("C1", "nm-14-2-g", "P", "B1")
    .cable("LP", "nm-14-2-g", "B1", "B2")
    .device("L1", "luminaire-60", "B1")
    .device("S1", "switch-single-pole", "B2")
    .splice("F", "B1", "twist-medium")
    .splice("E", "B1", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.cu@P": "P-GB.BAR" })
    .put({ "C1.bk@B1": "F", "LP.wh@B1": "F", "LP.bk@B1": "L1.H", "C1.wh@B1": "L1.N" })
    .put({ "C1.cu@B1": "E", "LP.cu@B1": "E", "LP.wh@B2": "S1.C", "LP.bk@B2": "S1.L", "LP.cu@B2": "S1.G" })
    .jumper("g", "B1", "E", "bond", { colour: "bare", awg: "14" })
    .jumper("h", "B1", "E", "L1.G", { colour: "bare", awg: "14" });
}

/** Re-identifies an end, "C1.wh@B1", as a colour. */
export function markEnd(drawing: Drawing, text: string, colour: Colour): Drawing {
  const [conductor = "", box = ""] = text.split("@");
  const { places } = drawing.at(box);
  for (const end of Object.keys(places) as EndKey[])
    if (end.startsWith(`${conductor}.`)) {
      const place = places[end];
      if (place !== undefined) places[end] = { ...place, markedAs: colour };
    }
  return drawing;
}

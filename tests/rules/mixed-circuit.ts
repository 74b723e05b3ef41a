import { asId } from "../../shared-model/model/ids.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { Drawing } from "./drawing.ts";
import { plan } from "./two-states.ts";

/** A device with the room that it stands in and what that is. */
export type Placed = readonly [name: string, type: string, room: string, ...kinds: RoomKind[]];

/** Devices in boxes of their own, box B and cable C with the name behind it, one after the other on breaker Q1. */
export function onOneCircuit(ratingA: number, placed: readonly Placed[], edition: Edition = 2020): Drawing {
  const drawing = new Drawing(edition).panel("P").breaker("Q1", ratingA);
  let before = "P";
  for (const [name, type, room, ...kinds] of placed) {
    const roomId = room.replaceAll(" ", "-");
    if (!(roomId in drawing.rooms)) drawing.room(roomId, kinds, { name: room });
    const [box, cable] = [`B${name}`, `C${name}`];
    drawing
      .box(box, 42, { roomId: asId(roomId) })
      .cable(cable, "nm-12-2-g", before, box)
      .device(name, type, box)
      .splice(`h${name}`, box, "twist-large")
      .splice(`n${name}`, box, "twist-large")
      .put({ [`${cable}.bk@${box}`]: `h${name}`, [`${cable}.wh@${box}`]: `n${name}` });
    const [hot, neutral] = type.startsWith("receptacle") ? ["H1", "N1"] : ["H", "N"];
    drawing
      .jumper(`jh${name}`, box, `h${name}`, `${name}.${hot}`)
      .jumper(`jn${name}`, box, `n${name}`, `${name}.${neutral}`, { colour: "white" });
    if (before === "P") drawing.put({ [`${cable}.bk@P`]: "Q1.OUT", [`${cable}.wh@P`]: "P-NB.BAR" });
    else
      drawing.put({
        [`${cable}.bk@${before}`]: `h${before.slice(1)}`,
        [`${cable}.wh@${before}`]: `n${before.slice(1)}`,
      });
    before = box;
  }
  return drawing;
}

/** The last of them, with its box and cable, comes by the work. */
export const lastIsNew = (ratingA: number, placed: readonly Placed[]) =>
  plan(onOneCircuit(ratingA, placed.slice(0, -1)), onOneCircuit(ratingA, placed));

/** All of them come by the work, with their breaker. */
export function allIsNew(ratingA: number, placed: readonly Placed[]) {
  const proposed = onOneCircuit(ratingA, placed);
  const asFound = new Drawing().panel("P");
  Object.assign(asFound.rooms, proposed.rooms);
  return plan(asFound, proposed);
}

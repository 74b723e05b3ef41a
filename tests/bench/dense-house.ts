import type { Cable } from "../../shared-model/model/cable.ts";
import type { Entry } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  cableEnd,
  type EnclosureId,
  type EndKey,
  type EntryId,
} from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { bigHouse } from "./big-house.ts";

const PER_CIRCUIT = 20;
/** Drawing units: from one circuit to the next, and what a circuit of twenty boxes and its panel take. */
const PITCH = 900;
const LONG = 28_000;

/** Circuits side by side in blocks, so that the whole is about as wide as it is high, as a sheet is. */
function folded({ x, y }: Point, circuits: number): Point {
  const blocks = Math.max(1, Math.round(Math.sqrt((circuits * PITCH) / LONG)));
  const high = Math.ceil(circuits / blocks) * PITCH;
  return { x: x + Math.floor(y / high) * LONG, y: y % high };
}

/**
 * The building of `bigHouse` with half as many cables again: from every second box one to the next but one of its
 * circuit, pulled in for later, all of its ends capped.
 */
export function denseHouse(boxes: number): Project {
  const project = bigHouse(boxes, PER_CIRCUIT);
  const enclosures = { ...project.asFound.enclosures };
  const cables = { ...project.asFound.cables };
  const like = Object.values(cables)[0];
  if (like === undefined) throw new Error("The building has no cables.");
  for (let number = 0; number < boxes; number += 2) {
    const last = Math.min(boxes, (Math.floor(number / PER_CIRCUIT) + 1) * PER_CIRCUIT) - 1;
    const below = Math.min(number + 2, last);
    const id = asId<CableId>(`x${number}`);
    const a = add(number, id, "a", "down");
    const b = add(below, id, "b", "up");
    if (a === undefined || b === undefined || below === number) continue;
    const cable: Cable = { ...like, id, name: `X${number + 1}`, sides: { a, b }, order: boxes + number };
    cables[id] = cable;
  }
  const positions = Object.fromEntries(
    Object.entries(project.layout.enclosures).map(([id, at]) => [id, folded(at, Math.ceil(boxes / PER_CIRCUIT))]),
  );
  return {
    ...project,
    asFound: { ...project.asFound, enclosures, cables },
    layout: { ...project.layout, enclosures: positions },
  };

  function add(number: number, cable: CableId, side: "a" | "b", name: string) {
    const id = asId<EnclosureId>(`b${number}`);
    const box = enclosures[id];
    if (box === undefined) return undefined;
    const key = asId<EntryId>(`${id}-${name}`);
    const entry: Entry = { id: key, means: "internal-clamp", order: Object.keys(box.entries).length };
    const places: Record<EndKey, Place> = { ...box.places };
    for (const conductor of ["bk", "rd", "wh", "cu"] as ConductorKey[])
      places[cableEnd(cable, conductor, side)] = { at: { kind: "capped" }, spare: true };
    enclosures[id] = { ...box, entries: { ...box.entries, [key]: entry }, places };
    return { enclosure: id, entry: key };
  }
}

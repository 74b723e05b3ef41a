import { findEnclosureItem } from "../catalog/enclosure-items.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Point, Project } from "../model/project.ts";
import type { Rect } from "./box-drawing.ts";

/**
 * Room that an enclosure is given on the sheet before it is drawn: a box with five cables and a device, a panel with a
 * dozen, their captions and the roads beside them included.
 */
const ROOM = { box: { width: 1100, height: 960 }, panel: { width: 1300, height: 1160 } } as const;
/** The place of an enclosure is its inner corner; its sheaths and its header lie before that. */
const BEFORE = { x: 160, y: 72 } as const;

/** The room that an enclosure at a place takes, as far as that is known without drawing it. */
export const roomOf = (kind: keyof typeof ROOM, at: Point): Rect => ({
  x: at.x - BEFORE.x,
  y: at.y - BEFORE.y,
  ...ROOM[kind],
});

/**
 * Where on the sheet a new enclosure of a catalogue item could go: the first free room from the upper left, row by row,
 * no further right than one room past what is there. An empty sheet starts at its origin.
 */
export function freePlace(project: Project, installation: Installation, item: string): Point {
  const room = ROOM[findEnclosureItem(item)?.make.kind ?? "box"];
  const taken: Rect[] = [];
  for (const enclosure of Object.values(installation.enclosures)) {
    const at = project.layout.enclosures[enclosure.id as EnclosureId];
    if (at !== undefined) taken.push(roomOf(enclosure.kind, at));
  }
  if (taken.length === 0) return { x: 0, y: 0 };
  const left = Math.min(...taken.map(({ x }) => x));
  const right = Math.max(...taken.map(({ x, width }) => x + width));
  const tops = [...new Set(taken.flatMap(({ y, height }) => [y, y + height]))].sort((a, b) => a - b);
  for (const y of tops) {
    const inRow = taken.filter((rect) => rect.y < y + room.height && y < rect.y + rect.height);
    inRow.sort((a, b) => a.x - b.x);
    let x = left;
    for (const rect of inRow) if (rect.x < x + room.width && x < rect.x + rect.width) x = rect.x + rect.width;
    if (x <= right) return { x: x + BEFORE.x, y: y + BEFORE.y };
  }
  throw new Error("The row under everything is free.");
}

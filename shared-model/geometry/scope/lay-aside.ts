import type { ScopeBox, ScopeChange } from "../../answers/scope.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, DeviceId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { BoxDrawing, Rect } from "../box-drawing.ts";
import { PITCH, WALL } from "../metrics.ts";
import { fitText, textWidth } from "../text-width.ts";
import type { Aside } from "./scope-drawing.ts";
import { grown, legArea, legsOf, overlaps, takenAreas } from "./taken-areas.ts";

/** Size of the shapes of what is laid aside, and of the line of its name above. */
const SIZES: Readonly<Record<Aside["kind"], { readonly width: number; readonly height: number }>> = {
  device: { width: 64, height: 116 },
  splice: { width: 22, height: 56 },
  jumper: { width: 72, height: 4 },
  cable: { width: 72, height: 12 },
  part: { width: 54, height: 20 },
};
const BREAKER = { width: 84, height: 26 } as const;
const NAME = { size: 13, weight: 650, height: 24, flag: 22, most: 150 } as const;
/** What is laid aside keeps this far from everything, and two crosses stand this far apart. */
const CLEAR = 9;
const CROSSES = 16;

interface Removed {
  readonly kind: Aside["kind"];
  readonly id: string;
  readonly name: string;
  readonly glyph?: string;
  readonly size: { readonly width: number; readonly height: number };
}

/**
 * What comes out of a box, each where the drawing leaves room for it, as near to a wall as there is; else in a row under
 * the box. The box itself does not grow: its own drawing stays as it is in proposed.
 * @param before The box as found.
 */
export function layAside(
  drawing: BoxDrawing,
  box: ScopeBox,
  before: Enclosure | undefined,
  cables: Readonly<Record<CableId, Cable>>,
): readonly Aside[] {
  const removed = removedFrom(box, before, cables);
  if (removed.length === 0) return [];
  const taken: Rect[] = [
    ...takenAreas(drawing).map((rect) => grown(rect, 3)),
    ...drawing.conductors.flatMap(({ points }) => legsOf(points).map((leg) => legArea(leg, 5))),
  ];
  const foot = footOf(drawing);
  let next = { ...foot };
  return removed.map((one) => {
    const room = roomFor(one);
    const inside = freeSpot(drawing, taken, room);
    const at = inside ?? next;
    if (inside === undefined) next = { x: next.x + room.width + 2 * CLEAR, y: next.y };
    const aside = put(one, at, room);
    taken.push(grown(aside.area, CLEAR));
    return aside;
  });
}

function removedFrom(
  { changes }: ScopeBox,
  before: Enclosure | undefined,
  cables: Readonly<Record<CableId, Cable>>,
): readonly Removed[] {
  const gone = new Map<string, Removed>();
  const add = (one: Removed): void => void gone.set(`${one.kind} ${one.id}`, one);
  for (const change of changes) {
    const { kind, item } = change;
    const out = kind === "removed" || kind === "replaced";
    if (!out) continue;
    if (item.kind === "device") addDevice(change, before, add);
    else if (item.kind === "splice" && kind === "removed") add(simple("splice", item.id, item.name));
    else if (item.kind === "jumper") add(simple("jumper", item.was ?? item.id, item.name));
    else if (item.kind === "part" && kind === "removed") add(simple("part", item.id, item.name));
    else if (item.kind === "ring" || item.kind === "entry") {
      if (kind === "removed") add(simple("part", item.id, item.name));
    } else if (item.kind === "end" && change.owner?.kind === "cable") {
      const id = change.owner.id as CableId;
      add(simple("cable", id, cables[id]?.name ?? item.name));
    }
  }
  return [...gone.values()];
}

const simple = (kind: Aside["kind"], id: string, name: string): Removed => ({ kind, id, name, size: SIZES[kind] });

function addDevice({ kind, item, was }: ScopeChange, before: Enclosure | undefined, add: (one: Removed) => void): void {
  const id = (item.was ?? item.id) as DeviceId;
  const device = before?.devices[id];
  // Of one that is made otherwise under the same id only the words are known.
  if (device === undefined && kind === "replaced" && was === undefined) return;
  const type = device && getDeviceType(device.type);
  const low = type?.family === "breaker" || type?.family === "fuse";
  add({
    kind: "device",
    id,
    name: device?.name ?? item.name,
    ...(type && { glyph: type.glyph }),
    size: low ? BREAKER : SIZES.device,
  });
}

/** Name and shape together. */
function roomFor({ name, size }: Removed): { readonly width: number; readonly height: number } {
  const words = Math.min(NAME.most, textWidth(name, NAME.size, NAME.weight));
  return { width: Math.max(size.width, NAME.flag + words), height: NAME.height + size.height };
}

function put({ kind, id, name, glyph, size }: Removed, at: Point, room: ReturnType<typeof roomFor>): Aside {
  const shape = { x: at.x + (room.width - size.width) / 2, y: at.y + NAME.height, ...size };
  const fitted = fitText(name, NAME.most, NAME.size);
  const left = at.x + (room.width - NAME.flag - textWidth(fitted, NAME.size, NAME.weight)) / 2;
  return {
    kind,
    id,
    name: fitted,
    area: { ...at, ...room },
    shape,
    crosses: crossesOn(kind, shape),
    flagAt: { x: left + 8, y: at.y + 9 },
    nameAt: { x: left + NAME.flag, y: at.y + 14 },
    ...(glyph !== undefined && { glyph }),
  };
}

/** Along the outline of a thing, along the middle of a line. */
function crossesOn(kind: Aside["kind"], { x, y, width, height }: Rect): readonly Point[] {
  if (kind === "jumper" || kind === "cable") return even(width).map((along) => ({ x: x + along, y: y + height / 2 }));
  return [
    ...even(width).flatMap((along) => [
      { x: x + along, y },
      { x: x + along, y: y + height },
    ]),
    ...even(height).flatMap((along) => [
      { x, y: y + along },
      { x: x + width, y: y + along },
    ]),
  ];
}

function even(length: number): readonly number[] {
  const count = Math.max(1, Math.round(length / CROSSES));
  return Array.from({ length: count }, (_, i) => ((i + 0.5) * length) / count);
}

/** Under the lower wall and what hangs from it. */
function footOf({ height, sheaths, bounds }: BoxDrawing): Point {
  const low = sheaths.some(({ wall }) => wall === "bottom");
  return { x: 0, y: low ? bounds.y + bounds.height + CLEAR : height + WALL + 2 * CLEAR };
}

/** The free place of a size that is nearest to a wall; of several the one farthest up and to the right. */
function freeSpot(
  { width, height }: BoxDrawing,
  taken: readonly Rect[],
  room: { readonly width: number; readonly height: number },
): Point | undefined {
  let best: { readonly at: Point; readonly away: number } | undefined;
  const [right, bottom] = [width - CLEAR - room.width, height - CLEAR - room.height];
  for (let y = CLEAR; y <= bottom; y += PITCH)
    for (let x = right; x >= CLEAR; x -= PITCH) {
      const area = { x, y, ...room };
      if (taken.some((rect) => overlaps(rect, area))) continue;
      const away = Math.min(x, y, right - x, bottom - y);
      if (best === undefined || away < best.away) best = { at: { x, y }, away };
    }
  return best?.at;
}

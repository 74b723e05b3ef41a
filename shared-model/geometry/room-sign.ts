import type { Room } from "../model/room.ts";
import type { Rect } from "./box-drawing.ts";
import { WALL } from "./metrics.ts";
import type { Road } from "./roads/road-map.ts";
import { type Margin, nameLeft, type RoomArea, type Upright } from "./room-areas.ts";
import { textWidth } from "./text-width.ts";

/** In pixels: over a box stands its name, under it how full it is; the name of the room comes above both. */
export const ROOM_MARGIN = {
  middle: { top: 54, side: 20, bottom: 34, named: 32, foot: 12, apart: 6 },
  far: { top: 22, side: 8, bottom: 8, named: 15, foot: 10, apart: 4 },
} as const;
/** Of the letters of a name. */
const LETTERS = 12;
/** How much wider letterspaced capitals run. */
const SPACED = 1.28;
const PAD = 8;
/** Of the name below the upper edge of its area: closer where the margin is scarce. */
const BASELINE = { roomy: 15, scarce: 12 } as const;
const ROOMY = 40;
/** Of a name that stands under the boxes, above the lower edge. */
const FOOT = 5;
/** Of a name, above the wall of a box and the dashed line around one that is opened. */
const OVER_WALL = 6;

/** Of a sign of a finding, in pixels: from its middle to its rim of paper. */
export const SIGN_HALF = 11;

/** The area of a room and its name as they are drawn. */
export interface RoomSign {
  readonly key: string;
  readonly room: Room | undefined;
  readonly rect: Rect;
  readonly name: string;
  /** Beginning and baseline of the name, and the size of its letters, in drawing units. */
  readonly x: number;
  readonly line: number;
  readonly size: number;
}

/** The area of a room with its name where there is room for it: clear of signs always, of cables where that can be. */
export function signOf(
  { rect, top, name: where, room: id }: RoomArea,
  room: Room | undefined,
  unit: number,
  uprights: readonly Upright[],
  signs: readonly Upright[],
  half: number,
): RoomSign {
  const { x, y, width, height } = rect;
  const size = LETTERS * unit;
  const baseline = top >= ROOMY * unit || top < ROOM_MARGIN.middle.named * unit ? BASELINE.roomy : BASELINE.scarce;
  // Over the wall of its first box.
  const line =
    where === "top" ? y + Math.min(baseline * unit, top - WALL - OVER_WALL * unit) : y + height - FOOT * unit;
  const band = { x: x + PAD * unit, y: line - size, width: width - 2 * PAD * unit, height: 14 * unit };
  const names = where === undefined ? [] : namesThatFit(capitals(room), band.width / SPACED, size);
  for (const name of names) {
    const long = textWidth(name, size) * SPACED;
    const clear = clearLeft(band, long, uprights, signs, half, unit);
    if (clear !== undefined) return { key: keyOf(id, rect), room, rect, name, x: clear, line, size };
  }
  // Without room beside the cables the name runs over them; under a sign, or along a cable, it could not be read.
  const [name = ""] = names;
  const long = textWidth(name, size) * SPACED;
  const along = uprights.filter(({ until }) => until !== undefined);
  const left = nameLeft(band, long, [...signs, ...along], SIGN_HALF * unit);
  return { key: keyOf(id, rect), room, rect, name: left === undefined ? "" : name, x: left ?? band.x, line, size };
}

/** How wide an area is at least where there is room, so that the name of its room can be read. */
export const roomNameWidth = (room: Room | undefined, unit: number): number =>
  textWidth(capitals(room), LETTERS * unit) * SPACED + 3 * PAD * unit;

const keyOf = (room: string, { x, y }: Rect): string => `${room} ${x} ${y}`;

/** Beside cables and signs, which take room of their own on either side. */
function clearLeft(
  band: Rect,
  long: number,
  uprights: readonly Upright[],
  signs: readonly Upright[],
  half: number,
  unit: number,
): number | undefined {
  let left = band.x;
  for (let turn = 0; turn < TURNS; turn++) {
    const from = { ...band, x: left, width: band.x + band.width - left };
    const beside = nameLeft(from, long, uprights, half);
    const clear =
      beside === undefined
        ? undefined
        : nameLeft({ ...from, x: beside, width: band.x + band.width - beside }, long, signs, SIGN_HALF * unit);
    if (clear === undefined || clear === left) return clear;
    left = clear;
  }
  return undefined;
}

/** More than signs and cables over one name. */
const TURNS = 12;

const capitals = (room: Room | undefined): string => room?.name.toUpperCase() ?? "";

/** A name whole, then what stands before its comma; half a word says nothing. */
const namesThatFit = (name: string, width: number, size: number): readonly string[] =>
  [...new Set([name, name.split(",", 1)[0] ?? ""])].filter((words) => words !== "" && textWidth(words, size) <= width);

export const inUnits = (margin: Margin, unit: number): Margin => ({
  top: margin.top * unit,
  side: margin.side * unit,
  bottom: margin.bottom * unit,
  named: margin.named * unit,
  foot: margin.foot * unit,
  apart: margin.apart * unit,
});

/** The legs of roads, as what a name keeps clear of. */
export const uprightsOf = (roads: readonly Road[]): readonly Upright[] =>
  roads.flatMap(({ points }) =>
    points.flatMap((b, i): readonly Upright[] => {
      const a = points[i - 1];
      if (a === undefined || (a.x !== b.x && a.y !== b.y)) return [];
      const [x, until] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
      return [{ x, from: Math.min(a.y, b.y), to: Math.max(a.y, b.y), ...(until > x && { until }) }];
    }),
  );

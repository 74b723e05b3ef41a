import { useMemo } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { Room } from "../../shared-model/model/room.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { levelOf, unitOf } from "./detail.ts";
import {
  areasOf,
  clustersOf,
  type Margin,
  nameLeft,
  type RoomArea,
  type StandingIn,
  type Upright,
} from "./room-areas.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import type { Road } from "./sheet-roads.ts";

/** In pixels: over a box stands its name, under it how full it is; the name of the room comes above both. */
const MARGIN = {
  middle: { top: 54, side: 20, bottom: 34, named: 32, foot: 12, apart: 6 },
  far: { top: 22, side: 8, bottom: 8, named: 15, foot: 10, apart: 4 },
} as const;
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

/**
 * Rooms from middle distance and from afar: a quiet area behind the boxes of each, with its name clear of cables and of
 * the signs of findings. Boxes on the move leave their area behind until they are dropped.
 * @param marked Whether a box shows the sign of a finding.
 * @param road How wide a cable is drawn.
 */
export function useRoomSigns(
  shown: SheetDrawings,
  step: number,
  roads: readonly Road[],
  road: number,
  marked: ReadonlySet<string>,
): readonly RoomSign[] {
  const { rooms } = shown.document.project;
  const level = levelOf(step);
  const unit = unitOf(step);
  const seen = level === "near" || shown.missing > 0 ? undefined : shown;
  const standing = useMemo(() => (seen === undefined ? [] : standingIn(seen)), [seen]);
  const clusters = useMemo(() => clustersOf(standing), [standing]);
  const areas = useMemo(() => {
    if (level === "near") return [];
    const loose = standing.flatMap(({ room, rect }) => (room === undefined ? [rect] : []));
    return areasOf(clusters, loose, inUnits(MARGIN[level], unit), (room) =>
      level === "far" ? 0 : textWidth(capitals(rooms[room]), LETTERS * unit) * SPACED + 3 * PAD * unit,
    );
  }, [clusters, standing, level, unit, rooms]);
  return useMemo(() => {
    if (areas.length === 0) return [];
    const uprights = uprightsOf(roads);
    const signs = seen === undefined ? [] : signsIn(seen, marked, unit);
    return areas.map((area) => signOf(area, rooms[area.room], unit, uprights, signs, road / 2 + 3 * unit));
  }, [areas, roads, seen, marked, rooms, unit, road]);
}

/** Of a sign of a finding, in pixels: from its middle to its rim of paper. */
const SIGN_HALF = 11;

/** Where signs stand, as uprights that a name keeps clear of. */
function signsIn({ document, drawings }: SheetDrawings, marked: ReadonlySet<string>, unit: number): readonly Upright[] {
  const places = placesOf(document);
  return [...drawings].flatMap(([id, { width }]): readonly Upright[] => {
    const at = places[id];
    if (at === undefined || !marked.has(id)) return [];
    return [{ x: at.x + width, from: at.y - SIGN_HALF * unit, to: at.y + SIGN_HALF * unit }];
  });
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
  const baseline = top >= ROOMY * unit || top < MARGIN.middle.named * unit ? BASELINE.roomy : BASELINE.scarce;
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
  // Without room beside the cables the name runs over them; under a sign it could not be read.
  const [name = ""] = names;
  const long = textWidth(name, size) * SPACED;
  const left = nameLeft(band, long, signs, SIGN_HALF * unit);
  return { key: keyOf(id, rect), room, rect, name: left === undefined ? "" : name, x: left ?? band.x, line, size };
}

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

const inUnits = (margin: Margin, unit: number): Margin => ({
  top: margin.top * unit,
  side: margin.side * unit,
  bottom: margin.bottom * unit,
  named: margin.named * unit,
  foot: margin.foot * unit,
  apart: margin.apart * unit,
});

const uprightsOf = (roads: readonly Road[]): readonly Upright[] =>
  roads.flatMap(({ points }) =>
    points.flatMap((b, i): readonly Upright[] => {
      const a = points[i - 1];
      return a === undefined || a.x !== b.x || a.y === b.y
        ? []
        : [{ x: a.x, from: Math.min(a.y, b.y), to: Math.max(a.y, b.y) }];
    }),
  );

function standingIn({ document, drawings }: SheetDrawings): readonly StandingIn[] {
  const places = placesOf(document);
  const { enclosures } = installationOf(document);
  return [...drawings].flatMap(([id, { width, height }]): readonly StandingIn[] => {
    const at = places[id];
    const rect: Rect | undefined = at && { x: at.x, y: at.y, width, height };
    const room = enclosures[id]?.roomId;
    return rect === undefined
      ? []
      : [{ room: room !== undefined && room in document.project.rooms ? room : undefined, rect }];
  });
}

import { useMemo } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { areasOf, clustersOf, type StandingIn, type Upright } from "../../shared-model/geometry/room-areas.ts";
import {
  inUnits,
  ROOM_MARGIN,
  type RoomSign,
  roomNameWidth,
  SIGN_HALF,
  signOf,
  uprightsOf,
} from "../../shared-model/geometry/room-sign.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { levelOf, unitOf } from "./detail.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import type { Road } from "./sheet-roads.ts";

export type { RoomSign };

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
    return areasOf(clusters, loose, inUnits(ROOM_MARGIN[level], unit), (room) =>
      level === "far" ? 0 : roomNameWidth(rooms[room], unit),
    );
  }, [clusters, standing, level, unit, rooms]);
  return useMemo(() => {
    if (areas.length === 0) return [];
    const uprights = uprightsOf(roads);
    const signs = seen === undefined ? [] : signsIn(seen, marked, unit);
    return areas.map((area) => signOf(area, rooms[area.room], unit, uprights, signs, road / 2 + 3 * unit));
  }, [areas, roads, seen, marked, rooms, unit, road]);
}

/** Where signs stand, as uprights that a name keeps clear of. */
function signsIn({ document, drawings }: SheetDrawings, marked: ReadonlySet<string>, unit: number): readonly Upright[] {
  const places = placesOf(document);
  return [...drawings].flatMap(([id, { width }]): readonly Upright[] => {
    const at = places[id];
    if (at === undefined || !marked.has(id)) return [];
    return [{ x: at.x + width, from: at.y - SIGN_HALF * unit, to: at.y + SIGN_HALF * unit }];
  });
}

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

import { memo, useMemo } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
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
  far: { top: 20, side: 8, bottom: 8, named: 15, foot: 10, apart: 4 },
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

/**
 * Rooms from middle distance and from afar: a quiet area behind the boxes of each, with its name, under the cables. Boxes
 * on the move leave their area behind until they are dropped.
 */
export const RoomsLayer = memo(function RoomsLayer({
  shown,
  step,
  roads,
  road,
}: {
  readonly shown: SheetDrawings;
  readonly step: number;
  readonly roads: readonly Road[];
  /** How wide a cable is drawn. */
  readonly road: number;
}) {
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
  const uprights = useMemo(() => (areas.length === 0 ? [] : uprightsOf(roads)), [areas.length, roads]);
  if (level === "near") return null;
  return areas.map((area) => (
    <Area
      key={`${area.room} ${area.rect.x} ${area.rect.y}`}
      area={area}
      room={rooms[area.room]}
      unit={unit}
      uprights={uprights}
      half={road / 2 + 3 * unit}
    />
  ));
});

const capitals = (room: Room | undefined): string => room?.name.toUpperCase() ?? "";

/** A name whole, else what stands before its comma; half a word says nothing. */
const nameThatFits = (name: string, width: number, size: number): string =>
  [name, name.split(",", 1)[0] ?? ""].find((words) => textWidth(words, size) <= width) ?? "";

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

function Area({
  area: { rect, top, name: where },
  room,
  unit,
  uprights,
  half,
}: {
  readonly area: RoomArea;
  readonly room: Room | undefined;
  readonly unit: number;
  readonly uprights: readonly Upright[];
  /** Half of the width of a cable, with what stays free beside it. */
  readonly half: number;
}) {
  const { x, y, width, height } = rect;
  const size = LETTERS * unit;
  const baseline = top >= ROOMY * unit || top < MARGIN.middle.named * unit ? BASELINE.roomy : BASELINE.scarce;
  const line = where === "top" ? y + baseline * unit : y + height - FOOT * unit;
  const band = { x: x + PAD * unit, y: line - size, width: width - 2 * PAD * unit, height: 14 * unit };
  const name = where === undefined ? "" : nameThatFits(capitals(room), band.width / SPACED, size);
  const clear = nameLeft(band, textWidth(name, size) * SPACED, uprights, half);
  return (
    <g>
      <rect
        className="sheet-room"
        x={x}
        y={y}
        width={width}
        height={height}
        rx={2 * unit}
        style={{ strokeWidth: unit }}
      />
      {name !== "" && (
        <text className="sheet-room-name" x={clear ?? band.x} y={line} fontSize={size}>
          {name}
        </text>
      )}
    </g>
  );
}

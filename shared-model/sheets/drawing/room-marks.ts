import type { Road } from "../../geometry/roads/road-map.ts";
import { areasOf, clustersOf, type Upright } from "../../geometry/room-areas.ts";
import { inUnits, ROOM_MARGIN, type RoomSign, roomNameWidth, signOf, uprightsOf } from "../../geometry/room-sign.ts";
import type { Mark } from "../display-list.ts";
import { rect, text } from "../marks.ts";
import { HAIR, SECOND_INK } from "../page/inks.ts";
import type { HouseScene, Standing } from "./house-scene.ts";

/** White between the capitals of a name, in em: as much as keeps it within the room that is planned for it. */
const TRACK = 0.1;

interface RoomLooks {
  /** Drawing units of a pixel. */
  readonly unit: number;
  /** How wide a cable is drawn. */
  readonly road: number;
  /** Where signs of findings stand, which a name keeps clear of. */
  readonly signs: readonly Upright[];
}

/** Rooms as quiet outlines behind the boxes of a page, with their names clear of cables, as on the screen. */
export function roomMarks(
  { input }: HouseScene,
  boxes: readonly Standing[],
  roads: readonly Road[],
  { unit, road, signs }: RoomLooks,
): readonly Mark[] {
  const { rooms } = input.project;
  const standing = boxes.map(({ enclosure: { roomId }, at, drawing: { width, height } }) => ({
    room: roomId !== undefined && roomId in rooms ? roomId : undefined,
    rect: { ...at, width, height },
  }));
  const loose = standing.flatMap(({ room, rect: each }) => (room === undefined ? [each] : []));
  const areas = areasOf(clustersOf(standing), loose, inUnits(ROOM_MARGIN.middle, unit), (room) =>
    roomNameWidth(rooms[room], unit),
  );
  const uprights = uprightsOf(roads);
  return areas.flatMap((area) =>
    signMarks(signOf(area, rooms[area.room], unit, uprights, signs, road / 2 + 3 * unit), unit),
  );
}

const signMarks = ({ rect: area, name, x, line, size }: RoomSign, unit: number): readonly Mark[] => [
  rect(area, { stroke: { ink: HAIR, width: 0.8 * unit } }, 2 * unit),
  ...(name === "" ? [] : [text(name, x, line, { size, ink: SECOND_INK, track: TRACK * size })]),
];

import type { CableId, EnclosureId, Side } from "../../model/ids.ts";
import type { Installation, Layout, Point } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import type { BoxDrawing, SheathDrawing } from "../box-drawing.ts";
import { tabsOf } from "../middle-box.ts";
import { roadEnd } from "./cable-ends.ts";
import { NEAR_ROADS, type RoadEnd, type RoadScale } from "./road.ts";

/** How far away a drawing is seen: every conductor, boxes with their devices, or symbols. */
export type Distance = "near" | "middle" | "far";

/** A cable between two boxes, with the way it takes on the sheet. */
export interface Road {
  readonly cable: CableId;
  readonly boxes: readonly [EnclosureId, EnclosureId];
  readonly a: RoadEnd;
  readonly b: RoadEnd;
  /** Whether it is laid from side b of the cable to side a. */
  readonly turned: boolean;
  /** Where a person has bent it, from end `a` of the road to end `b`. */
  readonly bends?: readonly Point[];
  readonly points: readonly Point[];
  readonly sheath: Pick<SheathDrawing, "name" | "sizeText" | "lengthText">;
}

export type RoadEntries = ReadonlyMap<string, RoadEnd>;

const sideKey = (cable: CableId, side: Side): string => `${cable}.${side}`;

/** Pixels: width of a road from middle distance, from the middle of one to the next, and past the words of a box. */
const MIDDLE = { road: 17, lane: 24, least: 5, past: 38 } as const;
const FAR = { road: 1.5, lane: 6, past: 9 } as const;

/**
 * Where roads leave a box on the sheet: at the end of a stub near, at a tab in the wall away.
 * @param unit Drawing units of a pixel.
 */
export function roadEntries(drawing: BoxDrawing, origin: Point, distance: Distance, unit: number): RoadEntries {
  if (distance === "near")
    return new Map(
      drawing.sheaths.map(({ cable, side, wall, outer }) => [sideKey(cable, side), roadEnd(origin, outer, wall)]),
    );
  const tabs = distance === "far" ? tabsOf(drawing, unit, FAR.lane) : tabsOf(drawing, unit);
  return new Map(tabs.map(({ cable, side, at, wall }) => [sideKey(cable, side), roadEnd(origin, at, wall)]));
}

/** Where the wall of a box has no room for roads of full width, all are as narrow as there. */
export function roadScaleAt(distance: Distance, unit: number, entries: Iterable<RoadEntries>): RoadScale {
  if (distance === "near") return NEAR_ROADS;
  if (distance === "far") return away(FAR.road * unit, FAR.lane * unit, FAR.past * unit);
  let lane = MIDDLE.lane * unit;
  for (const ends of entries) lane = Math.min(lane, closest([...ends.values()]));
  lane = Math.max(lane, MIDDLE.least * unit);
  return away(Math.min(MIDDLE.road * unit, lane * 0.72), lane, MIDDLE.past * unit);
}

const away = (road: number, lane: number, past: number): RoadScale => ({
  road,
  lane,
  stepOut: road / 2 + lane / 6,
  between: 240 + lane,
  around: 160 + 2 * lane,
  past,
});

/** Least distance of two on the same wall. */
function closest(ends: readonly RoadEnd[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [out, upright] of WALLS) {
    const along = ends.flatMap((end) =>
      end.out === out && end.upright === upright ? [upright ? end.at.x : end.at.y] : [],
    );
    along.sort((a, b) => a - b);
    for (let i = 1; i < along.length; i++) least = Math.min(least, (along[i] ?? 0) - (along[i - 1] ?? 0));
  }
  return least;
}

const WALLS = [
  [-1, undefined],
  [1, undefined],
  [-1, true],
  [1, true],
] as const;

/** Ends of all cables whose boxes are both drawn. */
export function roadsToLay(
  { cables }: Installation,
  layout: Layout,
  drawings: ReadonlyMap<EnclosureId, BoxDrawing>,
  entries: ReadonlyMap<EnclosureId, RoadEntries>,
): readonly Omit<Road, "points">[] {
  return Object.values(cables).flatMap((cable) => {
    const { a, b } = cable.sides;
    if (!("enclosure" in a) || !("enclosure" in b)) return [];
    const from = entries.get(a.enclosure)?.get(sideKey(cable.id, "a"));
    const to = entries.get(b.enclosure)?.get(sideKey(cable.id, "b"));
    const sheath = drawings.get(a.enclosure)?.sheaths.find((each) => each.cable === cable.id);
    if (from === undefined || to === undefined || sheath === undefined) return [];
    // The road is laid from the box with more cables, where lanes are scarce.
    const turn = cablesInto(cables, b.enclosure).length > cablesInto(cables, a.enclosure).length;
    const boxes = turn ? ([b.enclosure, a.enclosure] as const) : ([a.enclosure, b.enclosure] as const);
    const drawn = layout.cables[cable.id];
    const bends = turn ? drawn?.toReversed() : drawn;
    const ends = { a: turn ? to : from, b: turn ? from : to, ...(bends && { bends }) };
    return [{ cable: cable.id, boxes, turned: turn, ...ends, sheath }];
  });
}

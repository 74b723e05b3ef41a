import type { Rect, SheathDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { tabsOf } from "../../shared-model/geometry/middle-box.ts";
import { roadEnd } from "../../shared-model/geometry/roads/cable-ends.ts";
import { layRoads } from "../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS, type RoadEnd, type RoadScale } from "../../shared-model/geometry/roads/road.ts";
import type { CableId, EnclosureId, Side } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { levelOf, unitOf } from "./detail.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";

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

/** All roads as they are seen from one distance. */
export interface RoadMap {
  readonly roads: readonly Road[];
  readonly scale: RoadScale;
}

interface Laid {
  readonly step: number;
  readonly ends: readonly Omit<Road, "points">[];
  readonly standing: readonly Rect[];
  readonly map: RoadMap;
}

/** Both states, each before and after an edit, from two distances. */
const REMEMBERED = 8;
/** Of a large building fewer: all that are remembered have about so many roads. */
const REMEMBERED_ROADS = 6000;

/**
 * Roads depend on where boxes stand and on where their cables enter: where those are as before, so are the roads. The
 * last few are remembered, so that a switch of the state there and back lays nothing anew.
 */
export function createRoads(): (shown: SheetDrawings, step?: number) => RoadMap {
  let laid: readonly Laid[] = [];
  return (shown, step = 0) => {
    const entries = new Map([...shown.drawings.keys()].map((id) => [id, entriesOf(shown, id, step)]));
    const ends = allEnds(shown, entries);
    const standing = allBoxes(shown);
    const known = laid.find(
      (each) => each.step === step && sameEnds(each.ends, ends) && sameRects(each.standing, standing),
    );
    if (known !== undefined) return known.map;
    const scale = scaleOf(step, entries.values());
    const points = layRoads(ends, standing, scale);
    const map = { roads: ends.map((end, i) => ({ ...end, points: points[i] ?? [] })), scale };
    laid = [{ step, ends, standing, map }, ...laid].slice(
      0,
      Math.max(2, Math.min(REMEMBERED, REMEMBERED_ROADS / ends.length)),
    );
    return map;
  };
}

/** Pixels: width of a road from middle distance, from the middle of one to the next, and past the words of a box. */
const MIDDLE = { road: 17, lane: 24, least: 5, past: 38 } as const;
const FAR = { road: 1.5, lane: 6, past: 9 } as const;

/** Where the wall of a box has no room for roads of full width, all are as narrow as there. */
function scaleOf(step: number, entries: Iterable<ReadonlyMap<string, RoadEnd>>): RoadScale {
  const level = levelOf(step);
  if (level === "near") return NEAR_ROADS;
  const unit = unitOf(step);
  if (level === "far") return away(FAR.road * unit, FAR.lane * unit, FAR.past * unit);
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

const samePoint = (a: RoadEnd, b: RoadEnd): boolean =>
  a.at.x === b.at.x && a.at.y === b.at.y && a.out === b.out && a.upright === b.upright;

const sameEnds = (a: readonly Omit<Road, "points">[], b: readonly Omit<Road, "points">[]): boolean =>
  a.length === b.length &&
  a.every((end, i) => {
    const other = b[i];
    return (
      other !== undefined &&
      end.cable === other.cable &&
      samePoint(end.a, other.a) &&
      samePoint(end.b, other.b) &&
      sameBends(end.bends, other.bends) &&
      end.sheath.name === other.sheath.name &&
      end.sheath.sizeText === other.sheath.sizeText &&
      end.sheath.lengthText === other.sheath.lengthText
    );
  });

const sameBends = (a: readonly Point[] = [], b: readonly Point[] = []): boolean =>
  a.length === b.length && a.every(({ x, y }, i) => x === b[i]?.x && y === b[i]?.y);

const sameRects = (a: readonly Rect[], b: readonly Rect[]): boolean =>
  a.length === b.length &&
  a.every((rect, i) => {
    const other = b[i];
    return rect.x === other?.x && rect.y === other.y && rect.width === other.width && rect.height === other.height;
  });

function allBoxes({ document, drawings }: SheetDrawings): readonly Rect[] {
  const places = placesOf(document);
  return [...drawings].map(([id, { width, height }]) => ({ ...(places[id] ?? ORIGIN), width, height }));
}

const ORIGIN = { x: 0, y: 0 };

type Entries = ReadonlyMap<EnclosureId, ReadonlyMap<string, RoadEnd>>;

const sideKey = (cable: CableId, side: Side): string => `${cable}.${side}`;

/** Where roads leave a box on the sheet: at the end of a stub near, at a tab in the wall away. */
function entriesOf({ document, drawings }: SheetDrawings, id: EnclosureId, step: number): ReadonlyMap<string, RoadEnd> {
  const drawing = drawings.get(id);
  const origin = placesOf(document)[id];
  if (drawing === undefined || origin === undefined) return new Map();
  const level = levelOf(step);
  if (level === "near")
    return new Map(
      drawing.sheaths.map(({ cable, side, wall, outer }) => [sideKey(cable, side), roadEnd(origin, outer, wall)]),
    );
  const tabs = level === "far" ? tabsOf(drawing, unitOf(step), FAR.lane) : tabsOf(drawing, unitOf(step));
  return new Map(tabs.map(({ cable, side, at, wall }) => [sideKey(cable, side), roadEnd(origin, at, wall)]));
}

function allEnds(shown: SheetDrawings, entries: Entries): readonly Omit<Road, "points">[] {
  const { cables } = installationOf(shown.document);
  const { layout } = shown.document.project;
  return Object.values(cables).flatMap((cable) => {
    const { a, b } = cable.sides;
    if (!("enclosure" in a) || !("enclosure" in b)) return [];
    const from = entries.get(a.enclosure)?.get(sideKey(cable.id, "a"));
    const to = entries.get(b.enclosure)?.get(sideKey(cable.id, "b"));
    const sheath = shown.drawings.get(a.enclosure)?.sheaths.find((each) => each.cable === cable.id);
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

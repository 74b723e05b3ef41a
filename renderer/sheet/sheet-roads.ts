import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { layingRoads } from "../../shared-model/geometry/roads/lay-roads.ts";
import type { RoadEnd, RoadScale } from "../../shared-model/geometry/roads/road.ts";
import {
  type Road,
  type RoadEntries,
  roadEntries,
  roadScaleAt,
  roadsToLay,
} from "../../shared-model/geometry/roads/road-map.ts";
import { allAtOnce } from "../../shared-model/lib/in-slices.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { levelOf, unitOf } from "./detail.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";

export type { Road };

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

/** Boxes whose entries are looked up in one step. */
const ENTRIES_A_STEP = 50;

export interface Roads {
  (shown: SheetDrawings, step?: number): RoadMap;
  /** The same, to be left off between any two steps. */
  inSteps(shown: SheetDrawings, step: number): Generator<undefined, RoadMap, undefined>;
}

/**
 * Roads depend on where boxes stand and on where their cables enter: where those are as before, so are the roads. The
 * last few are remembered, so that a switch of the state there and back lays nothing anew.
 */
export function createRoads(): Roads {
  let laid: readonly Laid[] = [];
  const inSteps = function* (shown: SheetDrawings, step: number): Generator<undefined, RoadMap, undefined> {
    const entries = new Map<EnclosureId, RoadEntries>();
    for (const id of shown.drawings.keys()) {
      entries.set(id, entriesOf(shown, id, step));
      if (entries.size % ENTRIES_A_STEP === 0) yield;
    }
    const { document, drawings } = shown;
    const ends = roadsToLay(installationOf(document), document.project.layout, drawings, entries);
    const standing = allBoxes(shown);
    const known = laid.find(
      (each) => each.step === step && sameEnds(each.ends, ends) && sameRects(each.standing, standing),
    );
    if (known !== undefined) return known.map;
    yield;
    const scale = roadScaleAt(levelOf(step), unitOf(step), entries.values());
    const points = yield* layingRoads(ends, standing, scale);
    const map = { roads: ends.map((end, i) => ({ ...end, points: points[i] ?? [] })), scale };
    laid = [{ step, ends, standing, map }, ...laid].slice(
      0,
      Math.max(2, Math.min(REMEMBERED, REMEMBERED_ROADS / ends.length)),
    );
    return map;
  };
  const lay = (shown: SheetDrawings, step = 0): RoadMap => allAtOnce(inSteps(shown, step));
  return Object.assign(lay, { inSteps });
}

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

/** Where roads leave a box on the sheet. */
function entriesOf({ document, drawings }: SheetDrawings, id: EnclosureId, step: number): RoadEntries {
  const drawing = drawings.get(id);
  const origin = placesOf(document)[id];
  if (drawing === undefined || origin === undefined) return new Map();
  return roadEntries(drawing, origin, levelOf(step), unitOf(step));
}

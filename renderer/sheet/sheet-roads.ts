import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { installationOf } from "../state/document-store.ts";
import { placesOf } from "./places.ts";
import { layRoads, type RoadEnd } from "./road-path.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";

/** A cable between two boxes, with the way it takes on the sheet. */
export interface Road {
  readonly cable: CableId;
  readonly boxes: readonly [EnclosureId, EnclosureId];
  readonly a: RoadEnd;
  readonly b: RoadEnd;
  readonly points: readonly Point[];
}

interface Laid {
  readonly ends: readonly Omit<Road, "points">[];
  readonly standing: readonly Rect[];
  readonly roads: readonly Road[];
}

/** Both states, each before and after an edit. */
const REMEMBERED = 4;

/**
 * Roads depend on where boxes stand and on the stubs of their cables: where those are as before, so are the roads. The
 * last few are remembered, so that a switch of the state there and back lays nothing anew.
 */
export function createRoads(): (shown: SheetDrawings) => readonly Road[] {
  let laid: readonly Laid[] = [];
  return (shown) => {
    const ends = allEnds(shown);
    const standing = allBoxes(shown);
    const known = laid.find((each) => sameEnds(each.ends, ends) && sameRects(each.standing, standing));
    if (known !== undefined) return known.roads;
    const points = layRoads(ends, standing);
    const roads = ends.map((end, i) => ({ ...end, points: points[i] ?? [] }));
    laid = [{ ends, standing, roads }, ...laid].slice(0, REMEMBERED);
    return roads;
  };
}

const samePoint = (a: RoadEnd, b: RoadEnd): boolean => a.at.x === b.at.x && a.at.y === b.at.y && a.out === b.out;

const sameEnds = (a: readonly Omit<Road, "points">[], b: readonly Omit<Road, "points">[]): boolean =>
  a.length === b.length &&
  a.every((end, i) => {
    const other = b[i];
    return other !== undefined && end.cable === other.cable && samePoint(end.a, other.a) && samePoint(end.b, other.b);
  });

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

function allEnds(shown: SheetDrawings): readonly Omit<Road, "points">[] {
  const at = placesOf(shown.document);
  const { cables } = installationOf(shown.document);
  return Object.values(cables).flatMap((cable) => {
    const { a, b } = cable.sides;
    if (!("enclosure" in a) || !("enclosure" in b)) return [];
    const from = endOf(shown, cable.id, "a", a.enclosure, at[a.enclosure]);
    const to = endOf(shown, cable.id, "b", b.enclosure, at[b.enclosure]);
    if (from === undefined || to === undefined) return [];
    // The road is laid from the box with more cables, where lanes are scarce.
    const turn = cablesInto(cables, b.enclosure).length > cablesInto(cables, a.enclosure).length;
    const boxes = turn ? ([b.enclosure, a.enclosure] as const) : ([a.enclosure, b.enclosure] as const);
    return [{ cable: cable.id, boxes, a: turn ? to : from, b: turn ? from : to }];
  });
}

function endOf(
  { drawings }: SheetDrawings,
  cable: CableId,
  side: "a" | "b",
  enclosure: EnclosureId,
  origin: Point | undefined,
): RoadEnd | undefined {
  const sheath = drawings.get(enclosure)?.sheaths.find((each) => each.cable === cable && each.side === side);
  if (sheath === undefined || origin === undefined) return undefined;
  return {
    at: { x: origin.x + sheath.outer.x, y: origin.y + sheath.outer.y },
    out: sheath.outer.x < sheath.at.x ? -1 : 1,
  };
}

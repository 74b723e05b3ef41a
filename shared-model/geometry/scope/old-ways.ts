import type { ScopeBox, ScopeChange } from "../../answers/scope.ts";
import type { EndKey, SpliceId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import type { Point } from "../../model/project.ts";
import type { BoxDrawing, ConductorDrawing, Rect, SpliceDrawing } from "../box-drawing.ts";
import { PITCH, SPLICE_HALF } from "../metrics.ts";
import type { OldWay } from "./scope-drawing.ts";
import {
  clearLegs,
  grown,
  type Leg,
  legArea,
  legsOf,
  overlaps,
  takenAreas,
  thingAreas,
  wordAreas,
} from "./taken-areas.ts";
import { findWay, type Start } from "./way-grid.ts";

export interface OldWays {
  readonly ways: readonly OldWay[];
  readonly ports: readonly Point[];
  readonly capsules: readonly Rect[];
}

/** A place as found, where proposed still draws it: its open port and from where it is come to. */
interface OldPlace {
  readonly port: Point;
  readonly from: readonly Point[];
  /** Whether the port is drawn; a hole that is taken by another end now is not open. */
  readonly open: boolean;
}

/** How far from its port a way turns into it. */
const INTO = 2 * PITCH;
/** How far along its conductor an old way may part from it. */
const PARTING = 96;
const MOST_ROWS = 5;
/** Words may be drawn larger than they are. */
const WORDS = 7;

/**
 * The old ways of the ends that move, dashed from where their conductor comes in to the open place that they leave. There
 * is none where the place is no longer drawn: a device that is taken out, a joint that nothing stands for, the open air.
 * @param avoid Areas that are in the way besides the drawing.
 * @yields Before each way.
 */
export function* oldWays(
  drawing: BoxDrawing,
  box: ScopeBox,
  avoid: readonly Rect[],
): Generator<undefined, OldWays, undefined> {
  const rows = new OpenRows(drawing, box);
  const legs: Leg[] = drawing.conductors.flatMap(clearLegs);
  const blocked = [
    ...thingAreas(drawing).map((rect) => grown(rect, 1)),
    ...wordAreas(drawing).map((rect) => grown(rect, WORDS)),
    ...avoid,
  ];
  const area = { x: PITCH, y: PITCH / 2, width: drawing.width - 2 * PITCH, height: drawing.height - PITCH };
  const ways: OldWay[] = [];
  const ports: Point[] = [];
  for (const { end, was, conductor } of movesOf(drawing, box)) {
    const place = placeOf(drawing, rows, was);
    if (place === undefined) continue;
    yield undefined;
    const starts = startsOf(conductor, end, blocked);
    // Things keep ways off; the capsule that it leads to does not keep off its own.
    const way = findWay(starts, place.from, { area, blocked, legs: [...legs] });
    if (way === undefined) {
      rows.giveBack(place.port);
      continue;
    }
    const points = [...way, place.port];
    ways.push({ end, points });
    if (place.open) ports.push(place.port);
    legs.push(...legsOf(points));
  }
  return { ways, ports: distinct(ports), capsules: rows.capsules(ports) };
}

interface Move {
  readonly end: EndKey;
  readonly was: At;
  readonly conductor: ConductorDrawing;
}

/** Moved ends of which the other end of the conductor stays: its way begins there. */
function movesOf({ conductors }: BoxDrawing, { changes }: ScopeBox): readonly Move[] {
  const byEnd = new Map<string, ScopeChange>();
  for (const change of changes) if (change.item.kind === "end") byEnd.set(change.item.id, change);
  const isMoved = (end: EndKey): boolean => byEnd.get(end)?.kind === "moved";
  return conductors.flatMap((conductor) => {
    const { ends, kind } = conductor;
    const moved = ends.filter(isMoved);
    const [end] = moved;
    const was = end === undefined ? undefined : byEnd.get(end)?.was?.at;
    const stays = kind === "cable" || ends.some((one) => byEnd.get(one)?.kind === "kept");
    return end === undefined || was === undefined || moved.length !== 1 || !stays ? [] : [{ end, was, conductor }];
  });
}

function placeOf(drawing: BoxDrawing, rows: OpenRows, at: At): OldPlace | undefined {
  if (at.kind === "splice") return rows.take(at.splice);
  if (at.kind === "bond" && drawing.bond !== undefined) {
    const { x, y } = drawing.bond.at;
    return { port: { x, y }, from: [-1, 1].map((side) => ({ x: x + side * INTO, y })), open: false };
  }
  if (at.kind !== "terminal") return undefined;
  const terminal = drawing.devices
    .find(({ device }) => device === at.device)
    ?.terminals.find((one) => one.terminal === at.terminal);
  const hole = terminal?.holes.find((one) => one.hole === at.hole) ?? terminal?.holes[0];
  if (hole === undefined) return undefined;
  const { x, y } = hole.at;
  const [dx, dy] = TOWARDS[hole.from];
  return { port: hole.at, from: [{ x: x + dx * INTO, y: y + dy * INTO }], open: !hole.taken };
}

const TOWARDS = { left: [-1, 0], right: [1, 0], top: [0, -1], bottom: [0, 1] } as const;

/** Points along a conductor from its fixed end, where nothing lies over it. */
function startsOf(conductor: ConductorDrawing, end: EndKey, blocked: readonly Rect[]): readonly Start[] {
  const { points, fanPoints, kind, ends } = conductor;
  const ordered = kind === "cable" || ends[0] !== end ? points : [...points].reverse();
  const legs = legsOf(kind === "cable" ? ordered.slice(Math.max(0, fanPoints - 1)) : ordered);
  const starts: Start[] = [];
  let past = 0;
  for (const { from, to } of legs) {
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    for (let along = 0; along < length && past + along < PARTING; along += 4) {
      const at = {
        x: from.x + Math.sign(to.x - from.x) * along,
        y: from.y + Math.sign(to.y - from.y) * along,
      };
      const isClear = !blocked.some(
        (rect) => rect.x < at.x && at.x < rect.x + rect.width && rect.y < at.y && at.y < rect.y + rect.height,
      );
      if (isClear) starts.push({ at, cost: 0.3 * (past + along) });
    }
    past += length;
    if (past >= PARTING) break;
  }
  return starts;
}

/** Rows of the splices that are still there, for those that left them. */
class OpenRows {
  readonly #drawing: BoxDrawing;
  readonly #homes: ReadonlyMap<SpliceId, SpliceDrawing>;
  readonly #given = new Map<SpliceDrawing, Point[]>();
  readonly #lines: readonly Rect[];
  readonly #things: readonly Rect[];

  constructor(drawing: BoxDrawing, { homes }: ScopeBox) {
    this.#drawing = drawing;
    const drawn = new Map(drawing.splices.map((splice) => [splice.splice, splice]));
    this.#homes = new Map(
      homes.flatMap(({ splice, home }) => {
        const is = drawn.get(splice);
        return home === undefined || is === undefined ? [] : [[home.splice, is] as const];
      }),
    );
    this.#lines = drawing.conductors.flatMap(({ points }) => legsOf(points).map((leg) => legArea(leg, 4)));
    this.#things = takenAreas(drawing);
  }

  /** A further row of the splice that stands for one of as found; its last one again where there is no room. */
  take(old: SpliceId): OldPlace | undefined {
    const splice = this.#homes.get(old);
    if (splice === undefined) return undefined;
    const given = this.#given.get(splice) ?? [];
    const port = this.#nextRow(splice, given) ?? given[given.length - 1] ?? splice.freeRow;
    this.#given.set(splice, [...given, port]);
    const { x, y } = port;
    const isLast = !this.#drawing.conductors.some(({ grips }) => grips.some((grip) => grip.x === x && grip.y > y));
    const sides = [-1, 1].map((side) => ({ x: x + side * INTO, y }));
    return { port, from: isLast ? [...sides, { x, y: y + INTO }] : sides, open: true };
  }

  giveBack(port: Point): void {
    for (const [splice, given] of this.#given) {
      const at = given.lastIndexOf(port);
      if (at >= 0) this.#given.set(splice, given.toSpliced(at, 1));
    }
  }

  #nextRow({ x, rows }: SpliceDrawing, given: readonly Point[]): Point | undefined {
    const ys = rows.map((row) => row.y);
    const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
    const between: number[] = [];
    for (let y = top + PITCH; y < bottom; y += PITCH) between.push(y);
    const below = Array.from({ length: MOST_ROWS }, (_, i) => bottom + (i + 1) * PITCH);
    const taken = new Set([...ys, ...given.map(({ y }) => y)]);
    for (const y of [...below, ...between]) {
      if (taken.has(y)) continue;
      const row = { x: x - SPLICE_HALF, y: y - 6, width: 2 * SPLICE_HALF, height: 12 };
      if (this.#lines.some((line) => overlaps(line, row))) {
        if (y > bottom) break;
        continue;
      }
      const isOwn = y < bottom;
      if (!isOwn && this.#things.some((rect) => overlaps(rect, { ...row, y: y - 2, height: 8 }))) break;
      return { x, y };
    }
    return undefined;
  }

  /** Capsules that reach beyond their own rows, around the open ones that are drawn. */
  capsules(ports: readonly Point[]): readonly Rect[] {
    return [...this.#given].flatMap(([{ x, rows }, given]) => {
      const bottom = Math.max(...rows.map(({ y }) => y));
      const lowest = Math.max(...given.filter((port) => ports.includes(port)).map(({ y }) => y));
      return lowest > bottom
        ? [{ x: x - SPLICE_HALF, y: bottom, width: 2 * SPLICE_HALF, height: lowest - bottom + SPLICE_HALF }]
        : [];
    });
  }
}

const distinct = (points: readonly Point[]): readonly Point[] => [
  ...new Map(points.map((point) => [`${point.x} ${point.y}`, point])).values(),
];

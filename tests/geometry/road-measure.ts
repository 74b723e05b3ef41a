import type { BoxDrawing, Rect, Wall } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { tabsOf } from "../../shared-model/geometry/middle-box.ts";
import { layRoads } from "../../shared-model/geometry/roads/lay-roads.ts";
import { NEAR_ROADS, type RoadEnd, type RoadEnds, type RoadScale } from "../../shared-model/geometry/roads/road.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Point, Project } from "../../shared-model/model/project.ts";

/** Units of a pixel at the middle level, and roads there, as the sheet has them a few steps out. */
const UNIT = 4;
const MIDDLE: RoadScale = {
  road: 17 * UNIT * 0.5,
  lane: 12 * UNIT,
  stepOut: 42,
  between: 288,
  around: 256,
  past: 38 * UNIT,
};

export interface RoadMeasure {
  readonly cables: number;
  /** Places where two cables cross. */
  readonly crossings: number;
  /** Stretches of a cable that lie in a box. */
  readonly through: readonly string[];
  /** Stretches of two cables that lie on one another. */
  readonly shared: number;
  /** Two cables that run along one another with less than their own width between their middles, and for how long. */
  readonly alongside: readonly string[];
  /** Boxes whose drawings lie on one another. */
  readonly overlaps: readonly string[];
  /** Of everything that is drawn. */
  readonly area: Rect;
  readonly long: number;
}

interface Leg {
  readonly road: number;
  readonly a: Point;
  readonly b: Point;
}

/** The roads of a state as they are laid, with what stands in their way. */
function laidFor(project: Project, installation: Installation, level: "near" | "middle") {
  const ids = Object.keys(installation.enclosures) as EnclosureId[];
  const drawings = new Map(ids.map((id) => [id, boxDrawing(project, installation, id)]));
  const placeOf = (id: EnclosureId): Point => project.layout.enclosures[id] ?? { x: 0, y: 0 };
  const walls = ids.map((id) => rectAt(placeOf(id), { x: 0, y: 0, ...sizeOf(drawings.get(id)) }));
  const ends = new Map<string, RoadEnd>();
  for (const [id, drawing] of drawings)
    for (const { cable, side, wall, at } of placesOf(drawing, level))
      ends.set(`${cable}.${side}`, endAt(placeOf(id), at, wall));
  const named: string[] = [];
  const roads: RoadEnds[] = Object.values(installation.cables).flatMap(({ id, name, sides: { a, b } }) => {
    const [from, to] = [ends.get(`${id}.a`), ends.get(`${id}.b`)];
    if (!("enclosure" in a && "enclosure" in b) || from === undefined || to === undefined) return [];
    named.push(name);
    const bends = project.layout.cables[id];
    return [{ a: from, b: to, ...(bends && { bends }) }];
  });
  const laid = layRoads(roads, walls, level === "near" ? NEAR_ROADS : MIDDLE);
  return { ids, drawings, placeOf, walls, named, laid, cables: roads.length };
}

/** How the boxes of a state stand and how the cables between them run, counted from the drawing alone. */
export function measureSheet(project: Project, installation: Installation, level: "near" | "middle"): RoadMeasure {
  const { ids, drawings, placeOf, walls, named, laid, cables } = laidFor(project, installation, level);
  const legs = laid.flatMap((points, road) => points.slice(1).map((b, i): Leg => ({ road, a: points[i] ?? b, b })));
  const through = legs.flatMap((leg) =>
    walls.flatMap((wall, i) =>
      lies(rectOf(leg), wall, 1)
        ? [`${named[leg.road]} runs through ${installation.enclosures[ids[i] as EnclosureId]?.name}`]
        : [],
    ),
  );
  const drawn = ids.map((id) => rectAt(placeOf(id), drawings.get(id)?.bounds ?? { x: 0, y: 0, width: 0, height: 0 }));
  const overlaps = drawn.flatMap((one, i) =>
    drawn.slice(i + 1).flatMap((other, j) => (lies(one, other, 0) ? [`${ids[i]} on ${ids[i + 1 + j]}`] : [])),
  );
  const { crossings, shared } = meetings(legs);
  const all = [...drawn, ...legs.map(rectOf)];
  const [x, y] = [Math.min(...all.map((r) => r.x)), Math.min(...all.map((r) => r.y))];
  const area = {
    x,
    y,
    width: Math.max(...all.map((r) => r.x + r.width)) - x,
    height: Math.max(...all.map((r) => r.y + r.height)) - y,
  };
  const long = legs.reduce((sum, { a, b }) => sum + Math.abs(a.x - b.x) + Math.abs(a.y - b.y), 0);
  return {
    cables,
    crossings,
    through,
    shared,
    alongside: alongside(legs, level === "near" ? NEAR_ROADS : MIDDLE).map(
      ([p, q, long]) => `${named[p]} along ${named[q]} for ${Math.round(long)}`,
    ),
    overlaps,
    area,
    long,
  };
}

const sizeOf = (drawing: BoxDrawing | undefined) => ({ width: drawing?.width ?? 0, height: drawing?.height ?? 0 });

const rectAt = ({ x, y }: Point, rect: Rect): Rect => ({ ...rect, x: rect.x + x, y: rect.y + y });

function placesOf(drawing: BoxDrawing, level: "near" | "middle") {
  return level === "middle" ? tabsOf(drawing, UNIT) : drawing.sheaths.map((each) => ({ ...each, at: each.outer }));
}

const endAt = ({ x, y }: Point, at: Point, wall: Wall): RoadEnd => ({
  at: { x: x + at.x, y: y + at.y },
  out: wall === "left" || wall === "top" ? -1 : 1,
  ...((wall === "top" || wall === "bottom") && { upright: true }),
});

const rectOf = ({ a, b }: Leg): Rect => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
});

const lies = (p: Rect, q: Rect, by: number): boolean =>
  p.x < q.x + q.width - by &&
  q.x + by < p.x + p.width + 0.001 &&
  p.y < q.y + q.height - by &&
  q.y + by < p.y + p.height + 0.001;

/** Two roads that lie on one another, in part at least, for longer than three widths of a road. */
function alongside(legs: readonly Leg[], { road }: RoadScale): readonly (readonly [number, number, number])[] {
  return legs.flatMap((p, i) =>
    legs.slice(i + 1).flatMap((q): readonly (readonly [number, number, number])[] => {
      if (p.road === q.road) return [];
      const [one, other] = [rectOf(p), rectOf(q)];
      const across = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
      const down = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
      const [apart, long] = p.a.x === p.b.x && q.a.x === q.b.x ? [-across, down] : [-down, across];
      const areParallel = (p.a.x === p.b.x) === (q.a.x === q.b.x);
      return areParallel && apart < road - 1 && long > 3 * road ? [[p.road, q.road, long] as const] : [];
    }),
  );
}

/** Where the legs of two roads cross, and where they lie on one another. */
function meetings(legs: readonly Leg[]): { readonly crossings: number; readonly shared: number } {
  let crossings = 0;
  let shared = 0;
  const uprights = legs.filter(({ a, b }) => a.x === b.x);
  const levels = legs.filter(({ a, b }) => a.x !== b.x);
  for (const level of levels) {
    const one = rectOf(level);
    for (const upright of uprights) {
      if (level.road === upright.road) continue;
      const other = rectOf(upright);
      if (other.x > one.x && other.x < one.x + one.width && one.y > other.y && one.y < other.y + other.height)
        crossings += 1;
    }
  }
  const count = (same: readonly Leg[], key: "x" | "y"): void => {
    const along = key === "x" ? "y" : "x";
    const long = key === "x" ? "height" : "width";
    const sorted = [...same].sort((p, q) => p.a[key] - q.a[key]);
    sorted.forEach((p, i) => {
      for (const q of sorted.slice(i + 1)) {
        if (q.a[key] - p.a[key] > 3) break;
        if (p.road === q.road) continue;
        const [one, other] = [rectOf(p), rectOf(q)];
        if (Math.min(one[along] + one[long], other[along] + other[long]) - Math.max(one[along], other[along]) > 3)
          shared += 1;
      }
    });
  };
  count(uprights, "x");
  count(levels, "y");
  return { crossings, shared };
}

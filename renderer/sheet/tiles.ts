import { levelOf, stepAt } from "./detail.ts";
import type { Road } from "./sheet-roads.ts";

const TILE = 1200;

/** Tiles grow with the distance, so that about the same number is in view. */
const tileAt = (zoom: number): number => TILE / Math.min(1, zoom * 2);

/** What is in view, in coarse steps, so that panning a little renders nothing; empty from afar: all is drawn. */
export function tilesInView({
  transform: [x, y, zoom],
  width,
  height,
}: {
  readonly transform: readonly [number, number, number];
  readonly width: number;
  readonly height: number;
}): string {
  const step = stepAt(zoom);
  if (levelOf(step) === "far") return "";
  // The same tile within a step, so that zooming a little renders nothing either.
  const tile = tileAt(2 ** (-step / 3));
  const edges = [-x / zoom, -y / zoom, (width - x) / zoom, (height - y) / zoom].map((at) => Math.floor(at / tile));
  return [edges[0], edges[1], (edges[2] ?? 0) + 1, (edges[3] ?? 0) + 1].map((at) => (at ?? 0) * tile).join(" ");
}

const areas = new WeakMap<Road["points"], readonly [number, number, number, number]>();

/** Left, top, right, bottom of a road. */
function areaOf({ points }: Road): readonly [number, number, number, number] {
  const known = areas.get(points);
  if (known !== undefined) return known;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const area = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
  areas.set(points, area);
  return area;
}

/** The roads of which some may be in view. */
export function roadsIn(roads: readonly Road[], tiles: string): readonly Road[] {
  if (tiles === "") return roads;
  const [left = 0, top = 0, right = 0, bottom = 0] = tiles.split(" ").map(Number);
  return roads.filter((road) => {
    const area = areaOf(road);
    return area[2] >= left && area[0] <= right && area[3] >= top && area[1] <= bottom;
  });
}

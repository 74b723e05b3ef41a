import type { EnclosureId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import { PITCH } from "../metrics.ts";

/** A box to be placed, with what it feeds. */
export interface Branch {
  readonly id: EnclosureId;
  /** Everything drawn of it, relative to its place. */
  readonly rect: Rect;
  readonly children: readonly Branch[];
}

/** Room between boxes: under one stands its fill, over the next its name, beside them run cables. */
const GAP = { down: 300, across: 160, lane: 64, most: 480 } as const;

/**
 * Places of a tree of boxes, grown to one side in columns: a box stands before the middle of what it feeds, so that no
 * two cables of the tree cross. The root stands at 0, 0.
 * @param side 1: to the right.
 */
export function growTree(root: Branch, side: 1 | -1): ReadonlyMap<EnclosureId, Point> {
  const lefts = columnLefts(columnsOf(root), side);
  const heights = new Map<Branch, number>();
  measure(root, heights);
  const places = new Map<EnclosureId, Point>();
  const place = (branch: Branch, top: number, depth: number): void => {
    const { id, rect, children } = branch;
    const height = heights.get(branch) ?? 0;
    let line = top + (height - stacked(children, heights)) / 2;
    const middles: number[] = [];
    for (const child of children) {
      place(child, line, depth + 1);
      line += (heights.get(child) ?? 0) + GAP.down;
      middles.push((places.get(child.id)?.y ?? 0) + child.rect.y + child.rect.height / 2);
    }
    const wanted = ((middles[0] ?? top + height / 2) + (middles[middles.length - 1] ?? top + height / 2)) / 2;
    const own = Math.min(Math.max(wanted - rect.height / 2, top), top + height - rect.height);
    places.set(id, { x: (lefts[depth] ?? 0) - rect.x, y: own - rect.y });
  };
  place(root, 0, 0);
  const at = places.get(root.id) ?? { x: 0, y: 0 };
  return new Map([...places].map(([id, { x, y }]) => [id, { x: onPitch(x - at.x), y: onPitch(y - at.y) }]));
}

/** Boxes stand on the pitch of the drawing, so that stubs of boxes side by side meet straight. */
export const onPitch = (value: number): number => Math.round(value / PITCH) * PITCH;

/** Height of a box with all it feeds. */
function measure(branch: Branch, heights: Map<Branch, number>): number {
  for (const child of branch.children) measure(child, heights);
  const height = Math.max(branch.rect.height, stacked(branch.children, heights));
  heights.set(branch, height);
  return height;
}

const stacked = (branches: readonly Branch[], heights: ReadonlyMap<Branch, number>): number =>
  branches.reduce((sum, branch) => sum + (heights.get(branch) ?? 0), 0) + Math.max(0, branches.length - 1) * GAP.down;

interface Column {
  readonly width: number;
  /** Cables that leave one box of it, at most. */
  readonly fan: number;
}

function columnsOf(root: Branch): readonly Column[] {
  const columns: Column[] = [];
  const visit = ({ rect, children }: Branch, depth: number): void => {
    const before = columns[depth] ?? { width: 0, fan: 0 };
    columns[depth] = { width: Math.max(before.width, rect.width), fan: Math.max(before.fan, children.length) };
    for (const child of children) visit(child, depth + 1);
  };
  visit(root, 0);
  return columns;
}

/** Left edge of each column; the further it fans out, the more room for its cables. */
function columnLefts(columns: readonly Column[], side: 1 | -1): readonly number[] {
  let from = 0;
  return columns.map(({ width }, depth) => {
    const before = columns[depth - 1];
    if (before === undefined) return 0;
    const gap = Math.min(GAP.most, GAP.across + GAP.lane * before.fan);
    from += side > 0 ? before.width + gap : -gap - width;
    return from;
  });
}

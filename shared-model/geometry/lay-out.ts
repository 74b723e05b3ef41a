import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Point, Project } from "../model/project.ts";
import type { BoxMove } from "./arrange.ts";
import type { Rect } from "./box-drawing.ts";
import { type Sizes, treeFrom } from "./circuit/grow.ts";
import { circuitOf, inSheetOrder, joinedTo } from "./circuit/sections.ts";
import { type InSteps, type Places, settle } from "./circuit/settle.ts";
import { slideClear } from "./circuit/slide-clear.ts";
import { type Branch, growTree, onPitch } from "./circuit/tree.ts";
import { boxDrawing } from "./draw-box.ts";
import { hull } from "./free-group-place.ts";
import { roomOf } from "./free-place.ts";

/**
 * Moves that lay out the circuit of a box: its panel stays, what it feeds stands to the right of it, column by column,
 * clear of everything that is not part of it. A circuit without a panel is grown from its first box, which stays where
 * there is room. Where the boxes stood before has no say, so laying out twice moves nothing the second time.
 * @param project Its layout names a place for every box of the installation.
 * @param of A box of the circuit; a panel means all it feeds.
 */
export function* layOutCircuit(
  project: Project,
  installation: Installation,
  of: EnclosureId,
): InSteps<readonly BoxMove[]> {
  const { boxes, panels } = circuitOf(installation, of);
  const root = panels.includes(of) ? of : (panels[0] ?? boxes[0]);
  const at = root && project.layout.enclosures[root];
  if (root === undefined || at === undefined || boxes.length === 0) return [];
  const wanted = new Set(boxes);
  const taken = takenRects(project, installation, wanted, root, panels);
  const rooted = wanted.has(root) ? boxes : [root, ...boxes];
  const { places } = yield* settle(project, installation, rooted, (sizeOf) => {
    const grown = growTree(treeFrom(installation, root, wanted, sizeOf), 1);
    const standing = new Map([...grown].map(([id, { x, y }]) => [id, { x: at.x + x, y: at.y + y }]));
    if (!wanted.has(root)) standing.delete(root);
    const down = slideClear(rectsOf(standing, sizeOf), taken);
    return new Map([...standing].map(([id, { x, y }]) => [id, { x, y: y + down }]));
  });
  return movesTo(project, places);
}

/** Around every group of boxes that hang together. */
const APART = 400;
/** A panel whose boxes would stand this much higher than wide has them on both sides. */
const TOO_HIGH = 1.5;

/**
 * Moves that lay out the whole drawing, panels in the middle of what they feed; groups that no cable joins in rows.
 * Whether a panel has boxes on both sides is settled first, by what they measure on one side: deciding it anew with each
 * size would turn half of the drawing over and back again.
 */
export function* layOutEverything(project: Project, installation: Installation): InSteps<readonly BoxMove[]> {
  const all = Object.values(installation.enclosures).sort(inSheetOrder);
  const ids = all.map(({ id }) => id);
  const groups = groupsOf(installation);
  const placeBy = (place: (group: Group, sizeOf: Sizes) => Places) => (sizeOf: Sizes) =>
    inRows(
      groups.map((group) => place(group, sizeOf)),
      sizeOf,
    );
  const onOneSide = (group: Group, sizeOf: Sizes): Places => growTree(treeOf(installation, group, sizeOf), 1);
  const first = yield* settle(project, installation, ids, placeBy(onOneSide));
  const measured: Sizes = (id) => first.sizes.get(id) ?? NOTHING;
  const onBoth = new Set(groups.filter((group) => isTooHigh(treeOf(installation, group, measured), measured)));
  if (onBoth.size === 0) return movesTo(project, first.places);
  const { places } = yield* settle(
    project,
    installation,
    ids,
    placeBy((group, sizeOf) =>
      onBoth.has(group) ? growBothWays(treeOf(installation, group, sizeOf)) : onOneSide(group, sizeOf),
    ),
    first.sizes,
  );
  return movesTo(project, places);
}

const NOTHING: Rect = { x: 0, y: 0, width: 0, height: 0 };

interface Group {
  readonly root: EnclosureId;
  readonly members: ReadonlySet<EnclosureId>;
}

/** Groups that cables join, each with the panel that feeds it. */
function groupsOf(installation: Installation): readonly Group[] {
  const seen = new Set<EnclosureId>();
  return Object.values(installation.enclosures)
    .sort(inSheetOrder)
    .flatMap(({ id: start }) => {
      if (seen.has(start)) return [];
      const members = new Set([start]);
      for (const id of members) for (const far of joinedTo(installation, id)) members.add(far);
      for (const id of members) seen.add(id);
      const panels = [...members].flatMap((id) => installation.enclosures[id] ?? []).sort(inSheetOrder);
      const service = panels.find((each) => each.kind === "panel" && each.supply === "service");
      const root = service ?? panels.find(({ kind }) => kind === "panel");
      return [{ root: root?.id ?? start, members }];
    });
}

const treeOf = (installation: Installation, { root, members }: Group, sizeOf: Sizes): Branch =>
  treeFrom(installation, root, members, sizeOf);

function isTooHigh(tree: Branch, sizeOf: Sizes): boolean {
  const { width, height } = hull(rectsOf(growTree(tree, 1), sizeOf));
  return height > TOO_HIGH * width && tree.children.length > 1;
}

function growBothWays(tree: Branch): Places {
  const half = halfOf(tree.children);
  const one = growTree({ ...tree, children: tree.children.slice(0, half) }, 1);
  const other = growTree({ ...tree, children: tree.children.slice(half) }, -1);
  return new Map([...other, ...one]);
}

/** How many branches from the first come nearest to half of the height; at least one on either side. */
function halfOf(branches: readonly Branch[]): number {
  const counts = branches.map(leavesOf);
  const total = counts.reduce((sum, count) => sum + count, 0);
  let best = { index: 1, off: Number.POSITIVE_INFINITY };
  let sum = 0;
  counts.slice(0, -1).forEach((count, i) => {
    sum += count;
    const off = Math.abs(2 * sum - total);
    if (off < best.off) best = { index: i + 1, off };
  });
  return best.index;
}

/** Branches without further ones: they make its height. */
const leavesOf = ({ children }: Branch): number =>
  children.length === 0 ? 1 : children.reduce((sum, child) => sum + leavesOf(child), 0);

/** Groups from left to right, and rows under each other, no wider than the widest group. */
function inRows(groups: readonly Places[], sizeOf: Sizes): Places {
  const areas = groups.map((places) => hull(rectsOf(places, sizeOf)));
  const most = Math.max(0, ...areas.map(({ width }) => width));
  const places = new Map<EnclosureId, Point>();
  let [x, y, row] = [0, 0, 0];
  groups.forEach((group, index) => {
    const area = areas[index];
    if (area === undefined) return;
    if (x > 0 && x + area.width > most) [x, y, row] = [0, y + row + APART, 0];
    const [left, top] = [onPitch(x - area.x), onPitch(y - area.y)];
    for (const [id, at] of group) places.set(id, { x: at.x + left, y: at.y + top });
    x += area.width + APART;
    row = Math.max(row, area.height);
  });
  return places;
}

const rectsOf = (places: Places, sizeOf: Sizes): readonly Rect[] =>
  [...places].map(([id, at]) => shifted(sizeOf(id), at));

const shifted = (rect: Rect, at: Point): Rect => ({ ...rect, x: rect.x + at.x, y: rect.y + at.y });

/**
 * What stays, as it is drawn, in both states: they share the sheet. The panel in front of the circuit stands clear of it
 * by itself; the drawing of another panel changes with the circuit, so it counts with the room that a panel is given.
 */
function takenRects(
  project: Project,
  shown: Installation,
  moving: ReadonlySet<EnclosureId>,
  root: EnclosureId,
  panels: readonly EnclosureId[],
): readonly Rect[] {
  const rects: Rect[] = [];
  const done = new Set<EnclosureId>([...moving, root]);
  for (const installation of [shown, project.asFound, project.proposed]) {
    if (installation === undefined) continue;
    for (const { id, kind } of Object.values(installation.enclosures)) {
      const at = project.layout.enclosures[id];
      if (at === undefined || done.has(id)) continue;
      done.add(id);
      rects.push(panels.includes(id) ? roomOf(kind, at) : shifted(boxDrawing(project, installation, id).bounds, at));
    }
  }
  return rects;
}

const movesTo = ({ layout }: Project, places: Places): readonly BoxMove[] =>
  [...places].flatMap(([id, to]) => {
    const at = layout.enclosures[id];
    return at?.x === to.x && at.y === to.y ? [] : [{ id, to }];
  });

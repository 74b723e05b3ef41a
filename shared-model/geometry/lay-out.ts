import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Point, Project } from "../model/project.ts";
import type { BoxMove } from "./arrange.ts";
import type { Rect } from "./box-drawing.ts";
import { type Sizes, treeFrom } from "./circuit/grow.ts";
import { circuitOf } from "./circuit/sections.ts";
import { type InSteps, type Places, type Placing, settle } from "./circuit/settle.ts";
import { slideClear } from "./circuit/slide-clear.ts";
import { growTree } from "./circuit/tree.ts";
import { boxDrawing } from "./draw-box.ts";
import { roomOf } from "./free-place.ts";

/**
 * Moves that lay out the circuit of a box: its panel stays, what it feeds stands to the right of it, column by column,
 * clear of everything that is not part of it. Pinned boxes stay too. A circuit without a panel is grown from its first box, which stays where
 * there is room. Where the boxes stood before has no say, so laying out twice moves nothing the second time.
 * @param project Its layout names a place for every box of the installation.
 * @param of A box of the circuit; a panel means all it feeds.
 */
export function* layOutCircuit(
  project: Project,
  installation: Installation,
  of: EnclosureId,
): InSteps<readonly BoxMove[]> {
  const { boxes: all, panels } = circuitOf(installation, of);
  const boxes = all.filter((id) => project.layout.pinned?.[id] !== true);
  const root = panels.includes(of) ? of : (panels[0] ?? boxes[0]);
  const at = root && project.layout.enclosures[root];
  if (root === undefined || at === undefined || boxes.length === 0) return [];
  const wanted = new Set(boxes);
  const taken = takenRects(project, installation, wanted, root, panels);
  const rooted = wanted.has(root) ? boxes : [root, ...boxes];
  const { places } = yield* settle(project, installation, rooted, function* (sizeOf): Placing {
    const grown = growTree(treeFrom(installation, root, wanted, sizeOf), 1);
    const standing = new Map([...grown].map(([id, { x, y }]) => [id, { x: at.x + x, y: at.y + y }]));
    if (!wanted.has(root)) standing.delete(root);
    const down = slideClear(rectsOf(standing, sizeOf), taken);
    return new Map([...standing].map(([id, { x, y }]) => [id, { x, y: y + down }]));
  });
  return movesTo(project, places);
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

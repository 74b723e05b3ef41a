import type { EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";
import { joinedTo } from "./sections.ts";
import type { Branch } from "./tree.ts";

export type Sizes = (id: EnclosureId) => Rect;

/**
 * Boxes as a tree from a root outward, nearest first: what a box feeds hangs on it, in the order of its cables, the boxes
 * of one room one after the other.
 * @param wanted Boxes that may join; each joins once.
 */
export function treeFrom(
  installation: Installation,
  root: EnclosureId,
  wanted: ReadonlySet<EnclosureId>,
  sizeOf: Sizes,
): Branch {
  const children = new Map<EnclosureId, EnclosureId[]>([[root, []]]);
  const queue: EnclosureId[] = [root];
  for (const id of queue) {
    for (const far of byRoom(installation, joinedTo(installation, id))) {
      if (!wanted.has(far) || children.has(far)) continue;
      children.set(far, []);
      children.get(id)?.push(far);
      queue.push(far);
    }
  }
  const branchOf = (id: EnclosureId): Branch => ({
    id,
    rect: sizeOf(id),
    children: (children.get(id) ?? []).map(branchOf),
  });
  return branchOf(root);
}

/** Rooms in the order in which they come up; boxes without one by themselves. */
function byRoom({ enclosures }: Installation, ids: readonly EnclosureId[]): readonly EnclosureId[] {
  const keyOf = (id: EnclosureId): string => enclosures[id]?.roomId ?? id;
  const groups = new Map<string, EnclosureId[]>();
  for (const id of ids) {
    const group = groups.get(keyOf(id));
    if (group === undefined) groups.set(keyOf(id), [id]);
    else group.push(id);
  }
  return [...groups.values()].flat();
}

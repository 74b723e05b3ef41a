import type { EnclosureId, RoomId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { inSheetOrder, joinedTo } from "../circuit/sections.ts";

/** The boxes that are arranged together, and how cables join them, looked up once. */
export interface House {
  readonly installation: Installation;
  /** In the order of the drawing: from each panel outward along its circuits. */
  readonly ids: readonly EnclosureId[];
  /** Where a box comes in that order. */
  readonly place: ReadonlyMap<EnclosureId, number>;
  readonly isPanel: (id: EnclosureId) => boolean;
  /** What is at the other ends of its cables, in the order of the cables, the boxes of one room one after the other. */
  readonly joined: (id: EnclosureId) => readonly EnclosureId[];
  /** The room of a box, where the document has it. */
  readonly roomOf: (id: EnclosureId) => RoomId | undefined;
}

/** @param wanted The boxes that are arranged. */
export function houseOf(project: Project, installation: Installation, wanted: ReadonlySet<EnclosureId>): House {
  const { enclosures } = installation;
  const isPanel = (id: EnclosureId): boolean => enclosures[id]?.kind === "panel";
  const roomOf = (id: EnclosureId): RoomId | undefined => {
    const room = enclosures[id]?.roomId;
    return room !== undefined && room in project.rooms ? room : undefined;
  };
  const known = new Map<EnclosureId, readonly EnclosureId[]>();
  const joined = (id: EnclosureId): readonly EnclosureId[] => {
    const before = known.get(id);
    if (before !== undefined) return before;
    const found = byRoom(joinedTo(installation, id), roomOf);
    known.set(id, found);
    return found;
  };
  const order = outward(installation, joined);
  const ids = order.filter((id) => wanted.has(id));
  return { installation, ids, place: new Map(order.map((id, i) => [id, i])), isPanel, joined, roomOf };
}

function byRoom(ids: readonly EnclosureId[], roomOf: House["roomOf"]): readonly EnclosureId[] {
  const groups = new Map<string, EnclosureId[]>();
  for (const id of ids) {
    const key = roomOf(id) ?? id;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [id]);
    else group.push(id);
  }
  return [...groups.values()].flat();
}

/** Every box once: from the service panel outward, nearest first, then from what that does not reach. */
function outward(installation: Installation, joined: House["joined"]): readonly EnclosureId[] {
  const all = Object.values(installation.enclosures).sort(inSheetOrder);
  const rankOf = (id: EnclosureId): number => {
    const each = installation.enclosures[id];
    return each?.kind !== "panel" ? 2 : each.supply === "service" ? 0 : 1;
  };
  const starts = all.map(({ id }) => id).sort((a, b) => rankOf(a) - rankOf(b));
  const seen = new Set<EnclosureId>();
  for (const start of starts) {
    if (seen.has(start)) continue;
    const queue = [start];
    seen.add(start);
    for (const id of queue) {
      for (const far of joined(id)) {
        if (seen.has(far)) continue;
        seen.add(far);
        queue.push(far);
      }
    }
  }
  return [...seen];
}

/** Boxes among those that cables join, in groups; where `through` says no, a group ends. Each group is in drawing order. */
export function groupsAmong(
  { joined, place }: House,
  ids: readonly EnclosureId[],
  through: (id: EnclosureId) => boolean = () => true,
): readonly (readonly EnclosureId[])[] {
  const left = new Set(ids);
  const groups: EnclosureId[][] = [];
  for (const start of ids) {
    if (!left.delete(start)) continue;
    const group = [start];
    for (const id of group) if (through(id)) for (const far of joined(id)) if (left.delete(far)) group.push(far);
    groups.push(group.sort((a, b) => (place.get(a) ?? 0) - (place.get(b) ?? 0)));
  }
  return groups;
}

import type { Cable } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, EnclosureId, EntryId, Side } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";

/** One side of a cable that lies in an enclosure. */
export interface CableIn {
  readonly cable: Cable;
  readonly side: Side;
  readonly entry: EntryId;
}

type CableTable = Readonly<Record<CableId, Cable>>;

const cache = new WeakMap<CableTable, Map<EnclosureId, CableIn[]>>();
const NONE: readonly CableIn[] = [];

/** Cable sides that enter an enclosure, in cable order. A cable with both ends in one box appears twice. Cached by the cable table. */
export function cablesInto(cables: CableTable, enclosure: EnclosureId): readonly CableIn[] {
  let index = cache.get(cables);
  if (index === undefined) {
    index = buildIndex(cables);
    cache.set(cables, index);
  }
  return index.get(enclosure) ?? NONE;
}

/** What a side of a cable ends in; undefined where it leads out of the drawing. */
export function enclosureAtSide(
  { enclosures }: Pick<Installation, "enclosures">,
  { sides }: Cable,
  side: Side,
): Enclosure | undefined {
  const where = sides[side];
  return "enclosure" in where ? enclosures[where.enclosure] : undefined;
}

function buildIndex(cables: CableTable): Map<EnclosureId, CableIn[]> {
  const index = new Map<EnclosureId, CableIn[]>();
  for (const cable of Object.values(cables)) {
    for (const side of ["a", "b"] as const) {
      const where = cable.sides[side];
      if (!("enclosure" in where)) continue;
      const list = index.get(where.enclosure);
      const item: CableIn = { cable, side, entry: where.entry };
      if (list === undefined) index.set(where.enclosure, [item]);
      else list.push(item);
    }
  }
  for (const list of index.values())
    list.sort(
      (p, q) =>
        p.cable.order - q.cable.order ||
        (p.cable.id < q.cable.id ? -1 : p.cable.id > q.cable.id ? 1 : p.side < q.side ? -1 : 1),
    );
  return index;
}

import type { Enclosure } from "../model/enclosure.ts";
import { type CableId, type EnclosureId, otherSide } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { type CableIn, cablesInto } from "../queries/cables-into.ts";
import { outsideWords } from "../queries/far-side.ts";

/** What a cable of a box leads to, by where cables run and not by what is joined: boxes, nearest first. */
export interface Beyond {
  /** Name of what its other end is in, or the words of a side that leaves the drawing. */
  readonly leadsTo: string;
  readonly boxes: readonly Enclosure[];
  /** Name of the nearest panel there; absent where none is drawn. */
  readonly panel?: string;
}

/** Follows a cable away from a box, over all cables, up to panels and not back through the box. */
export function beyondCable({ enclosures, cables }: Installation, { cable, side }: CableIn): Beyond {
  const far = cable.sides[otherSide(side)];
  if (!("enclosure" in far)) return { leadsTo: outsideWords(far.outside), boxes: [] };
  const near = cable.sides[side];
  const seen = new Set<EnclosureId>("enclosure" in near ? [near.enclosure] : []);
  const used = new Set<CableId>([cable.id]);
  const boxes: Enclosure[] = [];
  let panel: string | undefined;
  const todo: EnclosureId[] = [far.enclosure];
  for (const id of todo) {
    const enclosure = seen.has(id) ? undefined : enclosures[id];
    seen.add(id);
    if (enclosure === undefined) continue;
    if (enclosure.kind === "panel") {
      panel ??= enclosure.name;
      continue;
    }
    boxes.push(enclosure);
    for (const one of cablesInto(cables, id)) {
      const next = one.cable.sides[otherSide(one.side)];
      if (used.has(one.cable.id) || !("enclosure" in next)) continue;
      used.add(one.cable.id);
      todo.push(next.enclosure);
    }
  }
  return { leadsTo: enclosures[far.enclosure]?.name ?? "", boxes, ...(panel !== undefined && { panel }) };
}

import type { Enclosure } from "../../model/enclosure.ts";
import { type EnclosureId, otherSide } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";

/** Boxes that cables join without passing through a panel, and the panels that they hang on. */
export interface CircuitBoxes {
  readonly boxes: readonly EnclosureId[];
  readonly panels: readonly EnclosureId[];
}

/** What is at the other ends of the cables of an enclosure, once each, in the order of the cables. */
export function joinedTo(installation: Installation, id: EnclosureId): readonly EnclosureId[] {
  const found = new Set<EnclosureId>();
  for (const { cable, side } of cablesInto(installation.cables, id)) {
    const far = cable.sides[otherSide(side)];
    if ("enclosure" in far && far.enclosure !== id && far.enclosure in installation.enclosures)
      found.add(far.enclosure);
  }
  return [...found];
}

export const inSheetOrder = (a: Enclosure, b: Enclosure): number => a.order - b.order || (a.id < b.id ? -1 : 1);

/**
 * The boxes that hang together with a box; for a panel, all that it feeds by cable up to the next panel. A box on two
 * breakers brings the boxes of both: they cannot be laid out apart.
 */
export function circuitOf(installation: Installation, start: EnclosureId): CircuitBoxes {
  const boxes = new Set<EnclosureId>();
  const panels = new Set<EnclosureId>();
  const isPanel = (id: EnclosureId): boolean => installation.enclosures[id]?.kind === "panel";
  const todo: EnclosureId[] = [];
  const reach = (id: EnclosureId): void => {
    if (isPanel(id)) panels.add(id);
    else if (!boxes.has(id)) {
      boxes.add(id);
      todo.push(id);
    }
  };
  reach(start);
  if (isPanel(start)) for (const far of joinedTo(installation, start)) if (!isPanel(far)) reach(far);
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) for (const far of joinedTo(installation, id)) reach(far);
  return { boxes: ordered(installation, boxes), panels: ordered(installation, panels) };
}

const ordered = ({ enclosures }: Installation, ids: ReadonlySet<EnclosureId>): readonly EnclosureId[] =>
  [...ids]
    .flatMap((id) => enclosures[id] ?? [])
    .sort(inSheetOrder)
    .map(({ id }) => id);

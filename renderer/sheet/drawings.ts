import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type EnclosureId, otherSide } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { type DocumentState, documentStore, installationOf } from "../state/document-store.ts";
import { useStore } from "../state/use-store.ts";

interface Kept {
  readonly from: readonly unknown[];
  readonly drawing: BoxDrawing;
}

const kept = new WeakMap<Enclosure, Kept>();

/**
 * The near drawing of a box of the shown wiring; undefined when there is no such box. Kept while nothing that shows in
 * it has changed: an edit elsewhere, or a move of a box that no cable joins to it, gives the same object.
 */
export function drawingOf(document: DocumentState, id: EnclosureId): BoxDrawing | undefined {
  const { project } = document;
  const installation = installationOf(document);
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) return undefined;
  const from = basisOf(project, installation, enclosure);
  const before = kept.get(enclosure);
  if (before !== undefined && isSame(before.from, from)) return before.drawing;
  const drawing = boxDrawing(project, installation, id);
  kept.set(enclosure, { from, drawing });
  return drawing;
}

/** What a drawing is made from besides its own box: its cables, where they go and what is named there, what was moved by hand. */
function basisOf({ layout }: Project, installation: Installation, enclosure: Enclosure): readonly unknown[] {
  const here = layout.enclosures[enclosure.id];
  const basis: unknown[] = [installation.intent.boxes[enclosure.id]];
  for (const splice of Object.keys(enclosure.splices))
    basis.push(layout.splices[splice as keyof typeof layout.splices]);
  for (const { cable, side } of cablesInto(installation.cables, enclosure.id)) {
    const far = cable.sides[otherSide(side)];
    basis.push(cable, side);
    if (!("enclosure" in far)) continue;
    const there = installation.enclosures[far.enclosure];
    const place = layout.enclosures[far.enclosure];
    // Only the direction to the other end counts, so that boxes that move together keep their drawings.
    basis.push(place && here ? place.x - here.x : 0, place && here ? place.y - here.y : 0);
    if (there?.kind === "panel") basis.push(there);
    else basis.push(there?.name, there?.note, there?.devices);
  }
  return basis;
}

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => Object.is(item, b[i]));

export const useDrawing = (id: EnclosureId): BoxDrawing | undefined =>
  useStore(documentStore, (document) => drawingOf(document, id));

import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { sameValue } from "../../shared-model/lib/same-value.ts";
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
 * The last drawing of each box, for another object that says the same: the states share no objects though most boxes are
 * the same in both, and undo brings a box back as a copy. So a switch of the state renders what differs and nothing else.
 */
const lastOf = new Map<EnclosureId, Kept & { readonly enclosure: Enclosure }>();
/** More boxes than a large building has: beyond, they are of documents that were closed. */
const MOST = 4000;

/**
 * The near drawing of a box of the shown wiring; undefined when there is no such box. Kept while nothing that shows in
 * it has changed: an edit elsewhere, or a move of a box that no cable joins to it, gives the same object.
 */
export function drawingOf(document: DocumentState, id: EnclosureId): BoxDrawing | undefined {
  const installation = installationOf(document);
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) return undefined;
  const from = basisOf(document.project, installation, enclosure);
  const known = knownFrom(enclosure, from);
  if (known !== undefined) return known;
  const drawing = boxDrawing(document.project, installation, id);
  remember(enclosure, from, drawing);
  return drawing;
}

/** As `drawingOf`, and undefined also where the box would have to be drawn first. */
export function knownDrawingOf(document: DocumentState, id: EnclosureId): BoxDrawing | undefined {
  const installation = installationOf(document);
  const enclosure = installation.enclosures[id];
  return enclosure && knownFrom(enclosure, basisOf(document.project, installation, enclosure));
}

function knownFrom(enclosure: Enclosure, from: readonly unknown[]): BoxDrawing | undefined {
  const before = kept.get(enclosure);
  if (before !== undefined && isSame(before.from, from)) return before.drawing;
  const last = lastOf.get(enclosure.id);
  if (last === undefined || !sameValue(last.from, from) || !sameValue(last.enclosure, enclosure)) return undefined;
  kept.set(enclosure, { from, drawing: last.drawing });
  return last.drawing;
}

function remember(enclosure: Enclosure, from: readonly unknown[], drawing: BoxDrawing): void {
  kept.set(enclosure, { from, drawing });
  if (lastOf.size >= MOST) lastOf.clear();
  lastOf.set(enclosure.id, { enclosure, from, drawing });
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

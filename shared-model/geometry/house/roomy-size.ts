import type { EnclosureId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import type { Rect } from "../box-drawing.ts";
import { roomOf } from "../free-place.ts";
import { PITCH } from "../metrics.ts";

/** A drawing grows a little when cables change their walls; in whole steps, so that small differences move nothing. */
const ROOMY = { step: 160, more: 96 } as const;
/** Stubs may come to stand on either side, and over a box stands its name. */
const BEFORE = { x: -144, y: -48 } as const;
/** What a panel takes besides its cables, and beside each conductor, measured on drawings of two to forty circuits. */
const PANEL = { width: 680, height: 1320, over: 112, conductor: 16.5 } as const;

/**
 * Room for a box wherever its cables may come to enter, without drawing it there.
 * @param known What was drawn of it, where it was drawn.
 */
export function roomySize(installation: Installation, id: EnclosureId, known: Rect | undefined): Rect {
  const kind = installation.enclosures[id]?.kind ?? "box";
  const { x, y, width, height } = known ?? roomOf(kind, { x: 0, y: 0 });
  const least = kind === "panel" ? panelSize(installation, id) : { width: 0, height: 0 };
  const [left, top] = [Math.min(x, BEFORE.x), Math.min(y, BEFORE.y)];
  const up = (value: number): number => Math.ceil((value + ROOMY.more) / ROOMY.step) * ROOMY.step;
  return {
    x: left,
    y: top,
    width: up(Math.max(width + x - left, least.width - 2 * BEFORE.x)),
    height: up(Math.max(height + y - top, least.height - BEFORE.y)),
  };
}

/** A panel changes most with where its circuits stand: all its cables may enter by one wall. */
function panelSize(installation: Installation, id: EnclosureId): { readonly width: number; readonly height: number } {
  const counts = cablesInto(installation.cables, id).map(({ cable }) => Object.keys(cable.conductors).length);
  const conductors = counts.reduce((sum, count) => sum + count, 0);
  // Two rows stay free between two sheaths.
  const rows = conductors + 2 * counts.length;
  return {
    width: PANEL.width + PANEL.conductor * conductors,
    height: Math.max(PANEL.height, PITCH * rows + PANEL.over),
  };
}

import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/** A larger drawing is nobody's first. */
const FIRST_BOXES = 3;

/**
 * What comes next in a drawing that was just begun: a cable for its boxes, or the first end that is landed. Undefined
 * before there is a box, and once anything is landed.
 */
export function nextStep({ enclosures, cables }: Installation): "cable" | "land" | undefined {
  const boxes = Object.values<Enclosure>(enclosures);
  if (boxes.length === 0 || boxes.length > FIRST_BOXES) return undefined;
  if (Object.keys(cables).length === 0) return "cable";
  // A panel that was drawn with the box has its ends landed already, and nobody is at it.
  const places = boxes.flatMap((box) => (box.kind === "panel" ? [] : Object.values(box.places)));
  return places.every(({ at }) => at.kind === "capped" || at.kind === "loose") ? "land" : undefined;
}

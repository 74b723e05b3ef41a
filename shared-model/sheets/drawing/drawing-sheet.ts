import type { SheetInput } from "../../answers/sheet-input.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import type { Page } from "../display-list.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { DRAWING } from "./drawing-words.ts";
import { houseScene } from "./house-scene.ts";
import { nearPages } from "./near-pages.ts";
import { wholePages } from "./whole-pages.ts";

/** @returns Why there is nothing to draw; undefined where there is. */
export const nothingDrawn = ({ project, state }: SheetInput): string | undefined =>
  Object.keys(getInstallation(project, state).enclosures).length > 0 ? undefined : DRAWING.nothing;

/**
 * The drawing: of one box near, with every conductor; of the whole as large as a page allows, and where that is too small
 * to be read, as a plan of symbols followed by its parts.
 */
export function drawingSheet(input: SheetInput): readonly Page[] {
  const scene = houseScene(input);
  if (input.box !== undefined) {
    const standing = scene.boxes.find(({ enclosure }) => enclosure.id === input.box);
    return standing === undefined ? [] : nearPages(scene, standing);
  }
  if (scene.boxes.length > 0) return wholePages(scene);
  const sheet = openListSheet(input, { kind: "drawing", title: DRAWING.title });
  sheet.flow.paragraph(DRAWING.nothing);
  return sheet.pages();
}

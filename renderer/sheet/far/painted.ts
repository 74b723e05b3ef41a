import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { toSheet, zoomNow } from "../sheet-view.ts";
import { boxUnder } from "./box-under.ts";
import type { FarItem } from "./far-scene.ts";
import { MOST_SHELLS } from "./shells.ts";

let painted: readonly FarItem[] = [];

/** Tells which boxes are painted only; none where each is an element of the page. */
export const setPainted = (items: readonly FarItem[]): void => {
  painted = items;
};

/** The box at a point of the window that is painted and has no element of its own. */
export function paintedBoxAt(client: { readonly clientX: number; readonly clientY: number }): EnclosureId | undefined {
  return painted.length <= MOST_SHELLS ? undefined : boxUnder(painted, toSheet(client), zoomNow());
}

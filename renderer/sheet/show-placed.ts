import { hull } from "../../shared-model/geometry/free-group-place.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { isWhollySeen, showWholeAgain } from "./sheet-view.ts";

/** Pixels around what is shown: its first cable sticks out there. */
const EDGE = 30;

/**
 * To be called before a box is placed; what is returned shows the new box whole, by the smallest pan or the least zooming
 * out, and with it all that was in view whole before.
 */
export function watchPlacing(): (placed: EnclosureId) => void {
  const seen = [...nodes()].filter((node) => isWhollySeen(node.getBoundingClientRect()));
  // What is drawn anew is in the page in the next frame, and measured in the one after.
  return (placed) => requestAnimationFrame(() => requestAnimationFrame(() => show(placed, seen)));
}

function show(placed: EnclosureId, seen: readonly Element[]): void {
  const node = [...nodes()].find((each) => each.dataset.id === placed);
  if (node === undefined || isWhollySeen(node.getBoundingClientRect())) return;
  const { x, y, width, height } = hull([node, ...seen].map((each) => each.getBoundingClientRect()));
  showWholeAgain({ left: x - EDGE, top: y - EDGE, right: x + width + EDGE, bottom: y + height + EDGE }, true);
}

const nodes = (): NodeListOf<HTMLElement> => document.querySelectorAll<HTMLElement>(".sheet-flow .react-flow__node");

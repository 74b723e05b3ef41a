import { fitAll } from "./sheet-view.ts";

/** Fits a drawing again that was just begun, and fitted before a line of the hand came over the foot of its boxes. */
export function clearOfHint(hint: Element): void {
  const line = hint.getBoundingClientRect();
  const isUnder = [...document.querySelectorAll(".sheet-flow .react-flow__node")].some((node) => {
    const { left, right, top, bottom } = node.getBoundingClientRect();
    return top < line.bottom && bottom > line.top && left < line.right && right > line.left;
  });
  if (isUnder) fitAll();
}

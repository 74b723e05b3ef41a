import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { sessionStore } from "../state/session-store.ts";
import { applyTool } from "./apply-tool.ts";
import { gestureStore } from "./gesture-store.ts";
import { SLACK, swallowClick } from "./pick-up.ts";
import { toSheet } from "./sheet-view.ts";

/** The box that an element of the page belongs to. */
export const nodeAt = (on: EventTarget | null): EnclosureId | undefined =>
  on instanceof Element
    ? (on.closest<HTMLElement>(".react-flow__node")?.dataset.id as EnclosureId | undefined)
    : undefined;

/**
 * With a cable in the hand, dragging from one box to another routes it, as pressing one and then the other does. Let go
 * over the empty sheet it leaves this drawing.
 */
export function beginCableDrag(pressed: PointerEvent): void {
  const { tool, routeFrom } = sessionStore.get();
  const start = nodeAt(pressed.target);
  if (tool?.kind !== "cable" || routeFrom !== undefined || start === undefined || pressed.button !== 0) return;
  let dragging = false;
  const use = (event: PointerEvent, enclosure: EnclosureId | undefined): boolean =>
    applyTool({ at: toSheet(event), enclosure, device: undefined });
  const move = (event: PointerEvent): void => {
    if (dragging || Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) <= SLACK) return;
    dragging = true;
    use(event, start);
  };
  const up = (event: PointerEvent): void => {
    stop();
    if (!dragging) return;
    swallowClick();
    const under = document.elementFromPoint(event.clientX, event.clientY);
    const end = nodeAt(under);
    if (end !== start && under?.closest(".sheet-flow") !== null) use(event, end);
    gestureStore.merge({ pointer: undefined });
  };
  const stop = (): void => {
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", stop);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", stop);
}

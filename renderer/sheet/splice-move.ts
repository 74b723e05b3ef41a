import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId, SpliceId } from "../../shared-model/model/ids.ts";
import { dispatch } from "../state/document-store.ts";
import { notify } from "../state/session-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { SLACK, swallowClick } from "./pick-up.ts";
import { toSheet } from "./sheet-view.ts";

interface SpliceInBox {
  readonly enclosure: EnclosureId;
  readonly id: SpliceId;
  readonly area: Rect;
  /** How many times larger than the sheet its box is drawn. */
  readonly scale: number;
}

/** Follows a press on a splice; dragged, it keeps the place where it is dropped, and the rest is routed around it. */
export function beginSpliceMove(pressed: PointerEvent, { enclosure, id: splice, area, scale }: SpliceInBox): void {
  const start = toSheet(pressed);
  let dragging = false;
  const placeAt = (event: PointerEvent) => {
    const now = toSheet(event);
    return { x: area.x + (now.x - start.x) / scale, y: area.y + (now.y - start.y) / scale };
  };
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (dragging)
      gestureStore.merge({ ghost: { enclosure, ...placeAt(event), width: area.width, height: area.height } });
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) return;
    swallowClick();
    const at = placeAt(event);
    // The document keeps the middle of the first row.
    const done = dispatch({ command: "move-splice", args: { splice, to: { x: at.x + 12, y: at.y + 12 } } });
    if (!done.ok) notify("problem", "The splice stays where it was", [done.refusal.message]);
  };
  const stop = (): void => {
    gestureStore.merge({ ghost: undefined });
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", stop);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", stop);
}

import { SLACK, swallowClick } from "../pick-up.ts";

/** What comes of a press that is dragged. */
export interface FollowedDrag {
  readonly move: (event: PointerEvent) => void;
  readonly drop: (event: PointerEvent) => void;
  /** After Escape, or where the press was taken away. */
  readonly leave: () => void;
}

/** Follows a press until it is let go; a press that does not wander is none of this. Escape takes the drag back. */
export function followDrag(pressed: PointerEvent, { move, drop, leave }: FollowedDrag): void {
  let dragging = false;
  const onMove = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (dragging) move(event);
  };
  const onUp = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) return;
    swallowClick();
    drop(event);
  };
  const onCancel = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (dragging) leave();
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || !dragging) return;
    event.preventDefault();
    event.stopPropagation();
    stop();
    swallowNextClick();
    leave();
  };
  const stop = (): void => {
    window.removeEventListener("pointermove", onMove);
    window.removeEventListener("pointerup", onUp);
    window.removeEventListener("pointercancel", onCancel);
    window.removeEventListener("keydown", onKey, true);
  };
  window.addEventListener("pointermove", onMove);
  window.addEventListener("pointerup", onUp);
  window.addEventListener("pointercancel", onCancel);
  window.addEventListener("keydown", onKey, true);
}

/** After Escape the button is still down: the click that follows when it comes up is none. */
function swallowNextClick(): void {
  window.addEventListener("pointerup", swallowClick, { capture: true, once: true });
}

import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { knownDrawingOf } from "./drawings.ts";
import { gestureStore, say } from "./gesture-store.ts";
import { heldThing } from "./hand.ts";
import { SLACK, swallowClick } from "./pick-up.ts";
import { toSheet } from "./sheet-view.ts";

let drawing = false;

/** Whether a frame is being drawn, so that the sheet does not pan under it. */
export const isFraming = (): boolean => drawing;

/**
 * Follows a press on the empty sheet with Shift, or while boxes are being chosen: the boxes that the frame touches join
 * the selection. Escape takes them out again.
 */
export function beginMarquee(pressed: PointerEvent): void {
  const on = pressed.target;
  const wanted = pressed.shiftKey || gestureStore.get().choosing;
  if (!wanted || pressed.button !== 0 || !(on instanceof Element) || !on.classList.contains("react-flow__pane")) return;
  if (sessionStore.get().tool !== undefined || heldThing() !== undefined) return;
  drawing = true;
  const start = toSheet(pressed);
  const { selection } = sessionStore.get();
  const before = selection.filter((each) => each.kind === "enclosure");
  let dragging = false;
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (!dragging) return;
    const now = toSheet(event);
    const marquee = {
      x: Math.min(start.x, now.x),
      y: Math.min(start.y, now.y),
      width: Math.abs(now.x - start.x),
      height: Math.abs(now.y - start.y),
    };
    gestureStore.merge({ marquee });
    pick(before, boxesIn(marquee));
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) return;
    swallowClick();
    const count = sessionStore.get().selection.length;
    say(count === 1 ? "1 box selected." : `${count} boxes selected.`);
  };
  const undo = (): void => {
    stop();
    sessionStore.merge({ selection });
  };
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId === pressed.pointerId) undo();
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    undo();
  };
  const stop = (): void => {
    drawing = false;
    gestureStore.merge({ marquee: undefined });
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", cancel);
    window.removeEventListener("keydown", key, true);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", cancel);
  window.addEventListener("keydown", key, true);
}

function pick(before: readonly Selected[], ids: readonly EnclosureId[]): void {
  const known = new Set(before.map(({ id }) => id));
  const added = ids.filter((id) => !known.has(id)).map((id): Selected => ({ kind: "enclosure", id }));
  sessionStore.merge({ selection: [...before, ...added] });
}

/** Boxes whose walls a frame touches. */
function boxesIn(frame: Rect): readonly EnclosureId[] {
  const document = documentStore.get();
  const places = placesOf(document);
  return (Object.keys(shownInstallation().enclosures) as EnclosureId[]).filter((id) => {
    const at = places[id];
    const box = knownDrawingOf(document, id);
    return (
      at !== undefined &&
      box !== undefined &&
      at.x < frame.x + frame.width &&
      frame.x < at.x + box.width &&
      at.y < frame.y + frame.height &&
      frame.y < at.y + box.height
    );
  });
}

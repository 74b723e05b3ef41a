import type { StandingBox } from "../../shared-model/geometry/arrange.ts";
import {
  afterFrame,
  boxesInFrame,
  type FrameReach,
  type FrameWay,
  frameBetween,
} from "../../shared-model/geometry/frame.ts";
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
import { wording } from "./words.ts";

let drawing = false;

/** Whether a frame is being drawn, so that the sheet does not pan under it. */
export const isFraming = (): boolean => drawing;

interface Modifiers {
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** Alt takes out what the frame touches, Control or Command means only boxes that are wholly in it. */
const wayOf = ({ altKey }: Modifiers): FrameWay => (altKey ? "take-out" : "add");
const reachOf = ({ ctrlKey, metaKey }: Modifiers): FrameReach =>
  ctrlKey || metaKey || gestureStore.get().wholeOnly ? "within" : "touched";

/**
 * Follows a press on the empty sheet with Shift, or while boxes are being chosen: boxes in the frame join the selection,
 * or leave it. Escape leaves the selection as it was.
 */
export function beginMarquee(pressed: PointerEvent): void {
  const on = pressed.target;
  const wanted = pressed.shiftKey || gestureStore.get().choosing;
  if (!wanted || pressed.button !== 0 || !(on instanceof Element) || !on.classList.contains("react-flow__pane")) return;
  if (sessionStore.get().tool !== undefined || heldThing() !== undefined) return;
  drawing = true;
  const start = toSheet(pressed);
  const boxes = standingBoxes();
  const { selection } = sessionStore.get();
  const before = selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : []));
  let dragging = false;
  let last = start;
  const show = (modifiers: Modifiers): void => {
    const marquee = frameBetween(start, last);
    const ids = afterFrame(before, boxesInFrame(marquee, boxes, reachOf(modifiers)), wayOf(modifiers));
    gestureStore.merge({ marquee });
    sessionStore.merge({ selection: ids.map((id): Selected => ({ kind: "enclosure", id })) });
  };
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (!dragging) return;
    last = toSheet(event);
    show(event);
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) return;
    swallowClick();
    const count = sessionStore.get().selection.length;
    say(count === 1 ? wording.n1BoxSelected : wording.boxesSelected2(count));
  };
  const undo = (): void => {
    stop();
    sessionStore.merge({ selection });
  };
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId === pressed.pointerId) undo();
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") {
      if (dragging) show(event);
      return;
    }
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
    window.removeEventListener("keyup", key, true);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", cancel);
  window.addEventListener("keydown", key, true);
  window.addEventListener("keyup", key, true);
}

/** The boxes that are drawn, by their walls. */
function standingBoxes(): readonly StandingBox[] {
  const document = documentStore.get();
  const places = placesOf(document);
  return (Object.keys(shownInstallation().enclosures) as EnclosureId[]).flatMap((id) => {
    const at = places[id];
    const box = knownDrawingOf(document, id);
    return at === undefined || box === undefined ? [] : [{ id, rect: { ...at, width: box.width, height: box.height } }];
  });
}

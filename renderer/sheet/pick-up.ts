import type { EnclosureId, EndKey } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { landingStore } from "../state/landing-store.ts";
import { notify } from "../state/session-store.ts";
import { gestureStore, say } from "./gesture-store.ts";
import { landOn, pickUp, putDown, startJumper } from "./hand.ts";
import { panAtEdge, toSheet } from "./sheet-view.ts";
import { wording } from "./words.ts";

/** Pixels that a press may wander before it is a drag. */
export const SLACK = 4;
/** Pixels around a target in which a dropped end still finds it; a finger covers more than the tip of a mouse. */
const CATCH = 16;
const CATCH_FINGER = 28;
const FRAME_MS = 16;

/**
 * Follows a press on a conductor end. Released where it was pressed, the end stays in the hand until a place is pressed;
 * dragged and released, it lands on the place under it, or goes back.
 */
export function beginPickUp(pressed: PointerEvent, enclosure: EnclosureId, end: EndKey): void {
  follow(pressed, {
    take: () => pickUp(enclosure, end),
    still: (event) => {
      pickUp(enclosure, end);
      gestureStore.merge({ pointer: toSheet(event) });
    },
    places: () => landingStore.get().choices,
    back: wording.putBackWhereItWas,
  });
}

/**
 * Follows a press on a terminal: dragged, a jumper begins there and ends where it is let go; over nothing there is none.
 * Released where it was pressed, it was a press on the device.
 */
export function beginJumperDrag(pressed: PointerEvent, enclosure: EnclosureId, from: At, places: Drag["places"]): void {
  follow(pressed, {
    take: () => startJumper(enclosure, from),
    still: () => {},
    places,
    back: wording.letGoOverNothingNoJumper,
    missed: () => notify("note", wording.letGoOverNothingNoJumper, [wording.jumperEndsOn]),
  });
}

interface Drag {
  readonly take: () => void;
  /** The button came up where it went down. */
  readonly still: (event: PointerEvent) => void;
  /** Where what is held may go. */
  readonly places: () => readonly (Parameters<typeof landOn>[0] & { readonly key: string })[];
  /** Said when it is let go over none of them. */
  readonly back: string;
  /** Tells the eye too, where nothing on the sheet shows that it was let go. */
  readonly missed?: () => void;
}

function follow(pressed: PointerEvent, { take, still, places, back, missed }: Drag): void {
  // A finger would keep telling only of where it went down: what it comes to is to answer.
  if (pressed.target instanceof Element && pressed.target.hasPointerCapture(pressed.pointerId))
    pressed.target.releasePointerCapture(pressed.pointerId);
  let dragging = false;
  let last = pressed;
  let shore: ReturnType<typeof setInterval> | undefined;
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    if (!dragging && Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK) {
      dragging = true;
      take();
    }
    if (!dragging) return;
    gestureStore.merge({ pointer: toSheet(event) });
    last = event;
    shore ??= setInterval(() => {
      if (panAtEdge(last)) gestureStore.merge({ pointer: toSheet(last) });
    }, FRAME_MS);
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) {
      still(event);
      return;
    }
    swallowClick();
    const key = targetAt(event);
    const choice = places().find((each) => each.key === key);
    if (choice === undefined) {
      putDown();
      say(back);
      missed?.();
    } else if (!landOn(choice)) putDown();
  };
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (dragging) putDown();
  };
  const stop = (): void => {
    clearInterval(shore);
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", cancel);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", cancel);
}

type Pressed = Pick<PointerEvent, "clientX" | "clientY"> & { readonly pointerType?: string };

/** Key of the target under or nearest to a point of the window, or of the splice that is under it. */
export function targetAt({ clientX, clientY, pointerType }: Pressed): string | undefined {
  let best: string | undefined;
  let least = pointerType === "touch" ? CATCH_FINGER : CATCH;
  for (const element of document.querySelectorAll<SVGElement>("[data-target]")) {
    const ring = (element.querySelector(".sheet-hit") ?? element).getBoundingClientRect();
    const distance = Math.hypot(ring.x + ring.width / 2 - clientX, ring.y + ring.height / 2 - clientY);
    if (distance < least) {
      least = distance;
      best = element.dataset.target;
    }
  }
  return best ?? spliceAt(clientX, clientY);
}

/** A splice is taken for its free row wherever it is hit. Its item, at rest while something is held, has the same key. */
function spliceAt(clientX: number, clientY: number): string | undefined {
  for (const { dataset } of document.querySelectorAll<SVGElement>('[data-target^="splice "]')) {
    const body = document.querySelector(`[data-item="${CSS.escape(dataset.target ?? "")}"] .sheet-hit`);
    const area = body?.getBoundingClientRect();
    if (area === undefined) continue;
    const isIn = clientX >= area.left && clientX <= area.right && clientY >= area.top && clientY <= area.bottom;
    if (isIn) return dataset.target;
  }
  return undefined;
}

/** The click that follows a drag is no press on what lies there. */
export function swallowClick(): void {
  const swallow = (event: Event): void => event.stopPropagation();
  window.addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => window.removeEventListener("click", swallow, { capture: true }));
}

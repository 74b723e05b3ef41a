import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId, SpliceId } from "../../shared-model/model/ids.ts";
import { dispatch } from "../state/document-store.ts";
import { notify } from "../state/session-store.ts";
import { gestureStore, say } from "./gesture-store.ts";
import { landOn, putDown, startJumper } from "./hand.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { SLACK, swallowClick, targetAt } from "./pick-up.ts";
import { toSheet } from "./sheet-view.ts";
import { wording } from "./words.ts";

interface SpliceInBox {
  readonly enclosure: EnclosureId;
  readonly id: SpliceId;
  readonly area: Rect;
  /** How many times larger than the sheet its box is drawn. */
  readonly scale: number;
  /** Whether the pointer is on a terminal of the box. */
  readonly isOnTerminal: (event: PointerEvent) => boolean;
  /** Where what is held may go, as the box shows it. */
  readonly targets: () => readonly LandingTarget[];
}

/**
 * Follows a press on a splice; dragged, it keeps the place where it is dropped, and the rest is routed around it. Nobody
 * puts a splice on a screw: over a terminal the drag is a pigtail from the splice, which lands where it is let go.
 */
export function beginSpliceMove(pressed: PointerEvent, splice: SpliceInBox): void {
  const { enclosure, id, area, scale, isOnTerminal, targets } = splice;
  const start = toSheet(pressed);
  let dragging = false;
  let pigtail = false;
  const placeAt = (event: PointerEvent) => {
    const now = toSheet(event);
    return { x: area.x + (now.x - start.x) / scale, y: area.y + (now.y - start.y) / scale };
  };
  const turnTo = (wanted: boolean): void => {
    if (wanted === pigtail) return;
    pigtail = wanted;
    if (wanted) startJumper(enclosure, { kind: "splice", splice: id });
    else putDown();
  };
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (!dragging) return;
    turnTo(isOnTerminal(event));
    if (pigtail) gestureStore.merge({ pointer: toSheet(event), ghost: undefined });
    else gestureStore.merge({ ghost: { enclosure, ...placeAt(event), width: area.width, height: area.height } });
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    const asPigtail = pigtail;
    stop();
    if (!dragging) return;
    swallowClick();
    if (asPigtail) land(event);
    else drop(event);
  };
  const land = (event: PointerEvent): void => {
    const key = targetAt(event);
    const target = targets().find((each) => each.key === key);
    if (target === undefined) say(wording.letGoOverNothingNoPigtail);
    if (target === undefined || !landOn(target)) putDown();
  };
  const drop = (event: PointerEvent): void => {
    const at = placeAt(event);
    // The document keeps the middle of the first row.
    const done = dispatch({ command: "move-splice", args: { splice: id, to: { x: at.x + 12, y: at.y + 12 } } });
    if (!done.ok) notify("problem", wording.theSpliceStaysWhereItWas, [done.refusal.message]);
  };
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (pigtail) putDown();
  };
  const stop = (): void => {
    gestureStore.merge({ ghost: undefined });
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", cancel);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", cancel);
}

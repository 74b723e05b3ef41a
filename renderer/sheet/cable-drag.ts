import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { sessionStore, takeTool } from "../state/session-store.ts";
import { applyTool } from "./apply-tool.ts";
import { startRoute } from "./cable-start.ts";
import { gestureStore } from "./gesture-store.ts";
import { SLACK, swallowClick } from "./pick-up.ts";
import { toSheet } from "./sheet-view.ts";

/** The box that an element of the page belongs to. */
export const nodeAt = (on: EventTarget | null): EnclosureId | undefined =>
  on instanceof Element
    ? (on.closest<HTMLElement>(".react-flow__node")?.dataset.id as EnclosureId | undefined)
    : undefined;

/** The box whose knob for drawing cables an element is. */
const knobAt = (on: EventTarget | null): EnclosureId | undefined =>
  on instanceof Element
    ? (on.closest<SVGElement>("[data-cable-knob]")?.dataset.cableKnob as EnclosureId | undefined)
    : undefined;

/**
 * With a cable in the hand, dragging from one box to another routes it, as pressing one and then the other does; dragging
 * from the knob of a selected box takes a cable in the hand. Let go over the empty sheet it leaves this drawing.
 */
export function beginCableDrag(pressed: PointerEvent): void {
  if (pressed.button !== 0) return;
  const knob = knobAt(pressed.target);
  const { tool, routeFrom } = sessionStore.get();
  const start = knob ?? nodeAt(pressed.target);
  if (start === undefined || (knob === undefined && (tool?.kind !== "cable" || routeFrom !== undefined))) return;
  let dragging = false;
  const use = (event: PointerEvent, enclosure: EnclosureId | undefined): boolean =>
    applyTool({ at: toSheet(event), enclosure, device: undefined });
  const begin = (): boolean => {
    if (knob === undefined) return applyTool({ at: toSheet(pressed), enclosure: start, device: undefined });
    startRoute(knob);
    return sessionStore.get().tool !== undefined;
  };
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    if (!dragging && Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK) {
      dragging = true;
      if (!begin()) stop();
    }
    if (dragging) gestureStore.merge({ pointer: toSheet(event) });
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (!dragging) {
      if (knob !== undefined) press(knob, event);
      return;
    }
    swallowClick();
    // Escape has taken the cable out of the hand.
    if (sessionStore.get().routeFrom === undefined) return;
    const under = document.elementFromPoint(event.clientX, event.clientY);
    const end = nodeAt(under);
    if (end !== start && under?.closest(".sheet-flow") != null) use(event, end);
    else if (knob !== undefined) takeTool(undefined);
    gestureStore.merge({ pointer: undefined });
  };
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    if (dragging) takeTool(undefined);
    gestureStore.merge({ pointer: undefined });
  };
  const stop = (): void => {
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", cancel);
  };
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", cancel);
}

/** A press on the knob takes the cable in the hand; the next press says where it ends. */
function press(knob: EnclosureId, event: PointerEvent): void {
  swallowClick();
  startRoute(knob);
  gestureStore.merge({ pointer: toSheet(event) });
}

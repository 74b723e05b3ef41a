import type { DeviceId, EnclosureId } from "../../../shared-model/model/ids.ts";
import { sessionStore } from "../../state/session-store.ts";
import { applyTool } from "../apply-tool.ts";
import { nodeAt } from "../cable-drag.ts";
import { paintedBoxAt } from "../far/painted.ts";
import { SLACK, swallowClick } from "../pick-up.ts";
import { toSheet } from "../sheet-view.ts";
import { aimAt, aimNow, dropAim } from "./aim.ts";

interface On {
  readonly enclosure: EnclosureId | undefined;
  readonly device: DeviceId | undefined;
}

/** The box and device that an element of the page belongs to. */
export function thingAt(on: EventTarget | null): On {
  const item = on instanceof Element ? on.closest<SVGElement>("[data-item]")?.dataset.item : undefined;
  const device = item?.startsWith("device ") === true ? (item.slice("device ".length) as DeviceId) : undefined;
  return { enclosure: nodeAt(on), device };
}

const isOnSheet = (on: EventTarget | null): on is Element =>
  on instanceof Element && on.closest(".sheet-flow") !== null;

/** What is in the hand is aimed at what the pointer is over, a drag from the stock included. */
export function followPointer(event: MouseEvent): void {
  if (sessionStore.get().tool === undefined) return;
  const on = event.target;
  if (!isOnSheet(on)) return;
  const under = thingAt(on);
  const enclosure = under.enclosure ?? paintedBoxAt(event);
  aimAt({ at: toSheet(event), enclosure, device: under.device, by: "pointer" });
}

/** What a person walks to with keys is aimed at, too; a box of the stock has a place of its own. */
export function followFocus({ target }: FocusEvent): void {
  const { tool } = sessionStore.get();
  if (tool === undefined || tool.kind === "enclosure" || !(target instanceof Element)) return;
  if (!target.matches(":focus-visible")) return;
  const { enclosure, device } = thingAt(target);
  if (enclosure === undefined) return;
  const { left, top, width, height } = target.getBoundingClientRect();
  const at = toSheet({ clientX: left + width / 2, clientY: top + height / 2 });
  aimAt({ at, enclosure, device, by: "keys" });
}

/** The pointer has left the sheet: it aims at nothing there. */
export function leaveAim(): void {
  if (aimNow()?.by === "pointer") dropAim();
}

/**
 * A finger or pen with something of the stock in the hand leads it over the sheet and puts it down where it is lifted; a
 * tap puts it down at once. Cables are drawn by a drag of their own.
 */
export function beginPlaceDrag(pressed: PointerEvent): void {
  const { tool } = sessionStore.get();
  if (pressed.pointerType === "mouse" || tool === undefined || tool.kind === "cable" || !isOnSheet(pressed.target))
    return;
  let dragging = false;
  const aim = (event: PointerEvent): void => {
    const under = document.elementFromPoint(event.clientX, event.clientY);
    if (!isOnSheet(under)) {
      dropAim();
      return;
    }
    const { enclosure = paintedBoxAt(event), device } = thingAt(under);
    aimAt({ at: toSheet(event), enclosure, device, by: "pointer" });
  };
  const move = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    dragging ||= Math.hypot(event.clientX - pressed.clientX, event.clientY - pressed.clientY) > SLACK;
    if (dragging) aim(event);
  };
  const up = (event: PointerEvent): void => {
    if (event.pointerId !== pressed.pointerId) return;
    stop();
    const now = aimNow();
    if (!dragging || now === undefined) return;
    swallowClick();
    applyTool(now);
  };
  const stop = (): void => {
    window.removeEventListener("pointermove", move);
    window.removeEventListener("pointerup", up);
    window.removeEventListener("pointercancel", stop);
  };
  aim(pressed);
  window.addEventListener("pointermove", move);
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", stop);
}

import {
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  useEffect,
  useMemo,
  useRef,
} from "react";
import type { CableId, DeviceId, EnclosureId, Side } from "../../shared-model/model/ids.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { isLooking } from "../state/looking.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { applyTool } from "./apply-tool.ts";
import { intoBox } from "./box-frame.ts";
import { choose, chooseItem, focusOn, type Hit, hit, type InBox, showFinding } from "./box-hit.ts";
import type { BoxItem } from "./box-items.ts";
import { boxItemKey } from "./box-keys.ts";
import { isLeadInHand, pressLit } from "./energise/lit-hands.ts";
import { gestureStore, openMenu } from "./gesture-store.ts";
import { landOn } from "./hand.ts";
import { laterParts } from "./later.ts";
import { anyTerminalUnder, glow, lineUnder, menuOfLine, noGlow, subjectOfLine, terminalUnder } from "./line-events.ts";
import { closeBox, isOpen } from "./open-boxes.ts";
import { beginJumperDrag, beginPickUp, targetAt } from "./pick-up.ts";
import type { Subject } from "./sheet-subject.ts";
import { toSheet, zoomNow } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { beginSpliceMove } from "./splice-move.ts";
import { nearGrip } from "./touch/near-grip.ts";

/** Presses and keys inside a box, answered in one place for all of its things. */
export function useBoxEvents(box: InBox) {
  const latest = useRef(box);
  useEffect(() => {
    latest.current = box;
  });
  return useMemo(() => {
    const found = (event: { readonly target: EventTarget }) => hit(latest.current, event.target);
    return {
      onPointerMove: (event: PointerEvent<SVGSVGElement>) => glow(latest.current, event),
      onPointerLeave: () => noGlow(),
      onPointerDown: (event: PointerEvent<SVGSVGElement>) => press(latest, found(event), event),
      onClick: (event: MouseEvent<SVGSVGElement>) => {
        if (click(latest.current, found(event), event)) event.stopPropagation();
      },
      onKeyDown: (event: KeyboardEvent<SVGSVGElement>) => {
        if (!boxItemKey(latest.current, found(event), event)) return;
        event.preventDefault();
        event.stopPropagation();
      },
      onContextMenu: (event: MouseEvent<SVGSVGElement>) => {
        event.preventDefault();
        event.stopPropagation();
        const { item } = found(event);
        const box = latest.current;
        const line = item === undefined ? lineUnder(box, event) : undefined;
        const subject: Subject = item?.subject ??
          (line && menuOfLine(box.id, line)) ?? { kind: "box", enclosure: box.id };
        choose(subject, false);
        openMenu({ subject, x: event.clientX, y: event.clientY });
      },
      onFocus: (event: FocusEvent<SVGSVGElement>) => {
        const { item, target } = found(event);
        const focused = item?.key ?? target?.key;
        if (focused !== undefined) latest.current.setFocused(focused);
      },
    };
  }, []);
}

/**
 * A finger whose press takes an end: the click that follows is the end of that press. It comes to what lies there by then,
 * which is no longer the end.
 */
let taking: number | undefined;

function press(latest: { readonly current: InBox }, { item: hit }: Hit, event: PointerEvent): void {
  const box = latest.current;
  taking = undefined;
  const item = event.pointerType === "touch" ? underFinger(box, hit, event) : hit;
  if (event.pointerType === "touch" && item?.subject.kind === "end" && box.held === undefined) taking = event.pointerId;
  const { tool } = sessionStore.get();
  if (event.button !== 0 || item === undefined || box.held !== undefined || tool !== undefined) return;
  if (isLooking() || isLeadInHand()) return;
  if (item.subject.kind === "end" && !addsTo(event)) beginPickUp(event.nativeEvent, box.id, item.subject.id);
  else if (item.subject.kind === "cable" && !addsTo(event)) {
    const side = sideHere(item.subject.id, box.id);
    if (side !== undefined) laterParts()?.beginEndDrag(event.nativeEvent, item.subject.id, side);
  } else if (item.subject.kind === "splice")
    beginSpliceMove(event.nativeEvent, {
      enclosure: box.id,
      id: item.subject.id,
      area: item.area,
      scale: box.scale,
      isOnTerminal: (at) => anyTerminalUnder(latest.current, at),
      targets: () => latest.current.targets,
    });
  else if (item.subject.kind === "device" && !addsTo(event)) {
    const from = terminalUnder(box, item.subject.id, event);
    if (from !== undefined) beginJumperDrag(event.nativeEvent, box.id, from, () => latest.current.targets);
  }
}

/** The side of a cable that ends in a box; undefined where it only runs through. */
function sideHere(id: CableId, box: EnclosureId): Side | undefined {
  const sides = shownInstallation().cables[id]?.sides;
  return (["a", "b"] as const).find((side) => {
    const where = sides?.[side];
    return where !== undefined && "enclosure" in where && where.enclosure === box;
  });
}

/** What a finger on the box means: an end beside it where it lies on nothing small. */
function underFinger(box: InBox, hit: BoxItem | undefined, event: PointerEvent): BoxItem | undefined {
  const origin = placesOf(documentStore.get())[box.id];
  if (box.drawing === undefined || origin === undefined) return hit;
  const at = intoBox(toSheet(event), origin, box.drawing, box.scale);
  return nearGrip(hit, box.items, at, 1 / (zoomNow() * box.scale));
}

/** @returns True when the click was for something in the box, so that it is not a press on the box itself. */
function click(box: InBox, { item, target: on, mark }: Hit, event: MouseEvent): boolean {
  if (taking !== undefined && event.nativeEvent instanceof PointerEvent && event.nativeEvent.pointerId === taking) {
    taking = undefined;
    return true;
  }
  // What is held goes where a drag would drop it: the screw beside the hole and the body of a splice are meant too. Things
  // rest meanwhile: a click on one is the end of the press that picked it up.
  const near = box.held === undefined || item !== undefined ? undefined : targetAt(pressedAt(event));
  const target = on ?? box.targets.find(({ key }) => key === near);
  if (target !== undefined) {
    landOn(target);
    return true;
  }
  if (event.target instanceof Element && event.target.closest("[data-open]") !== null) {
    if (isOpen(box.id)) closeBox(box.id);
    else showOpened(box.id);
    return true;
  }
  if (sessionStore.get().tool !== undefined) {
    const device = item?.subject.kind === "device" ? (item.subject.id as DeviceId) : undefined;
    return applyTool({ at: toSheet(event), enclosure: box.id, device });
  }
  if (mark !== undefined) {
    showFinding(mark);
    return true;
  }
  if (item === undefined) return chooseLine(box, event);
  const onDevice = item.subject.kind === "device" ? item.subject.id : undefined;
  if (pressLit(item, onDevice && terminalUnder(box, onDevice, event))) return true;
  // A press on an end picked it up when the button came up.
  if (item.subject.kind !== "end" || addsTo(event) || isLooking()) choose(item.subject, addsTo(event));
  return true;
}

/**
 * A press on the line of a conductor selects it: a jumper whole, a conductor of a cable by its end in this box. The focus
 * goes to that end, from where a key takes it in the hand.
 */
function chooseLine(box: InBox, event: MouseEvent): boolean {
  const line = lineUnder(box, event);
  const subject = line && subjectOfLine(box.id, line);
  if (line === undefined || subject === undefined) return false;
  const { jumper } = line.conductor;
  const more = addsTo(event);
  if (jumper === undefined) choose(subject, more);
  else chooseItem({ kind: "jumper", id: jumper }, more);
  if (subject.kind === "end") focusOn(box, `end ${subject.id}`);
  return true;
}

/** A click knows what pressed, though its type does not say so. */
const pressedAt = ({ clientX, clientY, nativeEvent }: MouseEvent) => ({
  clientX,
  clientY,
  ...(nativeEvent instanceof PointerEvent && { pointerType: nativeEvent.pointerType }),
});

/** Whether a press adds to what is selected: with a key held, or while several are chosen. */
const addsTo = ({ shiftKey, ctrlKey, metaKey }: MouseEvent): boolean =>
  shiftKey || ctrlKey || metaKey || gestureStore.get().choosing;

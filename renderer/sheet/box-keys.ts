import type { KeyboardEvent } from "react";
import { documentStore } from "../state/document-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { removeSelected } from "./action.ts";
import { applyTool } from "./apply-tool.ts";
import { choose, focusOn, type Hit, type InBox, STILL, showFinding } from "./box-hit.ts";
import { type BoxItem, type Direction, neighbour } from "./box-items.ts";
import { pressLit } from "./energise/lit-hands.ts";
import { openMenu } from "./gesture-store.ts";
import { landOn, pickUp, putDown } from "./hand.ts";
import type { LandingTarget } from "./landing-targets.ts";
import { closeBox, isOpen } from "./open-boxes.ts";

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
};

/** Keys while a thing or a place of a box has the focus. @returns True when the key meant something here. */
export function boxItemKey(box: InBox, { item, target, mark }: Hit, event: KeyboardEvent): boolean {
  const direction = ARROWS[event.key];
  const from = target ?? item;
  if (box.held !== undefined && target === undefined && (direction !== undefined || event.key === "Enter")) {
    focusFirstTarget(box);
    return true;
  }
  if (direction !== undefined && from !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
    const next = target
      ? neighbour(box.targets, target.at, direction)
      : item && neighbour(box.items, item.at, direction);
    if (next !== undefined) focusOn(box, next.key);
    return true;
  }
  if (event.key === "Escape") return letGo(box) || shut(box) || (item !== undefined && goOut(box));
  if ((event.key === "Home" || event.key === "End") && from !== undefined) {
    const all: readonly { readonly key: string }[] = target ? box.targets : box.items;
    const rim = event.key === "Home" ? all[0] : all.at(-1);
    if (rim !== undefined) focusOn(box, rim.key);
    return true;
  }
  if (event.key === "Enter" || event.key === " ") {
    if (target !== undefined) return land(box, target);
    if (mark !== undefined) showFinding(mark);
    else if (item !== undefined) act(box, item);
    return mark !== undefined || item !== undefined;
  }
  if (item === undefined) return false;
  if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) {
    const around = box.root.current?.querySelector(`[data-item="${CSS.escape(item.key)}"]`)?.getBoundingClientRect();
    choose(item.subject, false);
    openMenu({ subject: item.subject, x: around?.right ?? 0, y: around?.bottom ?? 0 });
    return true;
  }
  if (event.key === "Delete" || event.key === "Backspace") {
    choose(item.subject, false);
    removeSelected();
    return true;
  }
  return false;
}

/** Enter: an end is picked up and the first place gets the focus; another thing is selected. */
function act(box: InBox, item: BoxItem): void {
  const { subject } = item;
  const { tool } = sessionStore.get();
  if (tool === undefined && pressLit(item, undefined)) return;
  if (tool !== undefined) {
    const device = subject.kind === "device" ? subject.id : undefined;
    applyTool({ at: { x: 0, y: 0 }, enclosure: box.id, device });
  } else if (subject.kind === "end" && !documentStore.get().readOnly) {
    pickUp(box.id, subject.id);
    afterRender(() => focusFirstTarget(box));
  } else choose(subject, false);
}

function land(box: InBox, target: LandingTarget): boolean {
  const back = box.held?.kind === "end" ? `end ${box.held.end}` : undefined;
  if (landOn(target) && back !== undefined) afterRender(() => focusOn(box, back));
  return true;
}

function letGo(box: InBox): boolean {
  if (box.held === undefined) return false;
  const back = box.held.kind === "end" ? `end ${box.held.end}` : undefined;
  putDown();
  if (back !== undefined) afterRender(() => focusOn(box, back));
  return true;
}

/** Escape in an opened box closes it, and leaves the focus on the box. */
function shut(box: InBox): boolean {
  if (!isOpen(box.id)) return false;
  box.root.current?.closest<HTMLElement>(".react-flow__node")?.focus(STILL);
  closeBox(box.id);
  return true;
}

/** Escape in a box leads out of it, to the box as a whole. */
function goOut(box: InBox): boolean {
  box.root.current?.closest<HTMLElement>(".react-flow__node")?.focus(STILL);
  return true;
}

const focusFirstTarget = (box: InBox): void =>
  box.root.current?.querySelector<SVGElement>("[data-target]")?.focus(STILL);

/** Stores tell React at once, React paints at the end of the event: what a gesture brings up can be focused after that. */
const afterRender = (then: () => void): void => void requestAnimationFrame(then);

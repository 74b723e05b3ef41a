import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { nudge, selectedBoxes } from "../state/arranging.ts";
import { documentStore } from "../state/document-store.ts";
import { cancelLayOut } from "../state/laying-out.ts";
import { selectAllBoxes } from "../state/menu-lines/arrange-lines.ts";
import { select, sessionStore, takeTool, toggleSelected } from "../state/session-store.ts";
import { removeSelected } from "./action.ts";
import { applyTool } from "./apply-tool.ts";
import { nodeAt } from "./cable-drag.ts";
import { startRoute, typeKind } from "./cable-start.ts";
import { setChoosing } from "./choosing.ts";
import { stepAt } from "./detail.ts";
import { escapeLit } from "./energise/lit-hands.ts";
import { gestureStore, openMenu } from "./gesture-store.ts";
import { heldThing, putDown } from "./hand.ts";
import { laterParts } from "./later.ts";
import { closeBox, isOpen } from "./open-boxes.ts";
import { fitAll, zoomBy, zoomNow, zoomToFull } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { isSelectAll } from "./under-pointer.ts";
import { abandonMoves } from "./use-box-moves.ts";
import { walkKey } from "./walk/walk-keys.ts";

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Escape opens the hand, wherever the focus is, unless something nearer has used it. */
export function onEscape(event: KeyboardEvent): void {
  // A press on the sheet leaves the focus nowhere; what is typed then is still meant for what is in the hand.
  if (event.target === document.body && !event.ctrlKey && !event.metaKey && typeKind(event.key)) event.preventDefault();
  if (isSelectAll(event)) {
    event.preventDefault();
    selectAllBoxes();
    return;
  }
  if (event.key !== "Escape" || event.defaultPrevented || cancelLayOut()) return;
  if (gestureStore.get().moving.size > 0) abandonMoves();
  else if (heldThing() !== undefined) putDown();
  else if (sessionStore.get().tool !== undefined) takeTool(undefined);
  else if (gestureStore.get().choosing) setChoosing(false);
  else if (escapeLit(event)) event.preventDefault();
  else if (event.target instanceof Element && event.target.closest(".sheet") !== null) select();
}

export function onKey(event: KeyboardEvent): void {
  const on = event.target;
  if (event.defaultPrevented || !(on instanceof Element) || on.closest("button,input,[role=menu]") !== null) return;
  if (event.ctrlKey || event.metaKey) return;
  if ((!event.altKey && typeKind(event.key)) || laterParts()?.placeKey(event) === true || walkKey(on, event)) {
    event.preventDefault();
    return;
  }
  const box = on.classList.contains("react-flow__node") ? nodeAt(on) : undefined;
  if (event.altKey && (box === undefined || ARROWS[event.key] === undefined)) return;
  if ((box !== undefined && boxKey(box, on, event)) || sheetKey(event)) event.preventDefault();
}

/** Keys while a box as a whole has the focus. */
function boxKey(box: EnclosureId, element: Element, event: KeyboardEvent): boolean {
  const arrow = ARROWS[event.key];
  if (arrow !== undefined) {
    const step = event.shiftKey ? 5 : 1;
    if (!documentStore.get().readOnly) nudge(boxesWith(box), arrow[0] * step, arrow[1] * step);
    return true;
  }
  switch (event.key) {
    case "Enter": {
      if (applyTool({ at: { x: 0, y: 0 }, enclosure: box, device: undefined })) return true;
      select({ kind: "enclosure", id: box });
      enter(box, element);
      return true;
    }
    case "Escape":
      // What is in the hand goes back first.
      if (heldThing() !== undefined || !isOpen(box)) return false;
      closeBox(box);
      return true;
    case "c":
      startRoute(box);
      return true;
    case " ":
      toggleSelected({ kind: "enclosure", id: box });
      return true;
    case "Delete":
    case "Backspace":
      if (!boxesWith(box).includes(box) || !isSelected(box)) select({ kind: "enclosure", id: box });
      removeSelected();
      return true;
    case "ContextMenu":
      menuOf(box, element);
      return true;
    case "F10":
      if (event.shiftKey) menuOf(box, element);
      return event.shiftKey;
    default:
      return false;
  }
}

/** Goes from a box to the first thing in it; away, nothing in it is drawn, so the box is opened first. */
function enter(box: EnclosureId, element: Element): void {
  const focusFirst = (within: Element): void =>
    within.querySelector<SVGElement>("[data-item][data-active]")?.focus({ preventScroll: true });
  if (stepAt(zoomNow()) === 0 || isOpen(box)) focusFirst(element);
  else showOpened(box, focusFirst);
}

const isSelected = (box: EnclosureId): boolean => selectedBoxes().includes(box);

/** The selected boxes where this one is among them, else this one. */
const boxesWith = (box: EnclosureId): readonly EnclosureId[] => (isSelected(box) ? selectedBoxes() : [box]);

function menuOf(box: EnclosureId, element: Element): void {
  const { left, top } = element.getBoundingClientRect();
  openMenu({ subject: { kind: "box", enclosure: box }, x: left + 40, y: top + 60 });
}

/** Keys that mean the same wherever the focus is on the sheet. */
function sheetKey(event: KeyboardEvent): boolean {
  switch (event.key) {
    case "+":
    case "=":
      zoomBy(1.25);
      return true;
    case "-":
      zoomBy(1 / 1.25);
      return true;
    case "0":
      zoomToFull();
      return true;
    case "1":
      fitAll();
      return true;
    case "Delete":
    case "Backspace":
      if (sessionStore.get().selection.length === 0) return false;
      removeSelected();
      return true;
    default:
      return false;
  }
}

import type { DragEvent, MouseEvent } from "react";
import type { CableId, DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import { nudge, selectedBoxes } from "../state/arranging.ts";
import { selectAllBoxes } from "../state/commands/arrange-lines.ts";
import { documentStore } from "../state/document-store.ts";
import { cancelLayOut } from "../state/laying-out.ts";
import { offerPasteSpot } from "../state/paste-spot.ts";
import { attachPhotos, picturesAmong } from "../state/photos/photos.ts";
import { select, sessionStore, takeTool, toggleSelected } from "../state/session-store.ts";
import { removeSelected } from "./action.ts";
import { applyTool } from "./apply-tool.ts";
import { beginCableDrag, nodeAt } from "./cable-drag.ts";
import { startRoute, typeKind } from "./cable-start.ts";
import { setChoosing } from "./choosing.ts";
import { stepAt } from "./detail.ts";
import { escapeLit } from "./energise/lit-events.ts";
import { paintedBoxAt } from "./far/painted.ts";
import { pointAt } from "./far/shells.ts";
import { gestureStore, openMenu } from "./gesture-store.ts";
import { heldThing, putDown } from "./hand.ts";
import { watchAlt } from "./held-keys.ts";
import { beginMarquee, isFraming } from "./marquee.ts";
import { closeBox, isOpen } from "./open-boxes.ts";
import { fitAll, toSheet, zoomBy, zoomNow, zoomToFull } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { showTip } from "./target-tip.tsx";
import type { BoxFlowNode } from "./to-flow.ts";
import { watchTouch } from "./touch/watch-touch.ts";
import { followMouse, isSelectAll, pointerOnSheet, renameUnder, roomUnder } from "./under-pointer.ts";
import { abandonMoves } from "./use-box-moves.ts";
import { fitRing } from "./walk/ring.ts";
import { watchFocus } from "./walk/sheet-stop.ts";
import { walkKey } from "./walk/walk-keys.ts";

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Presses on the sheet and on boxes as a whole, what is dropped from the stock, and keys. */
export const sheetEvents = {
  /** Handlers of the flow; constant, so that it never renders for them. */
  flow: {
    onPaneClick(event: MouseEvent): void {
      const painted = paintedBoxAt(event);
      if (applyTool({ at: toSheet(event), enclosure: painted, device: undefined })) return;
      putDown();
      const adds = event.shiftKey || event.ctrlKey || event.metaKey || gestureStore.get().choosing;
      if (painted !== undefined) (adds ? toggleSelected : select)({ kind: "enclosure", id: painted });
      else if (!event.shiftKey && !gestureStore.get().choosing) select();
    },
    onNodeClick(event: MouseEvent, node: BoxFlowNode): void {
      if (applyTool({ at: toSheet(event), enclosure: node.data.enclosure, device: undefined })) return;
      if (heldThing() !== undefined) putDown();
      // Dragged, all that is selected moves; pressed, one of them is meant.
      const isPlain = !event.shiftKey && !event.ctrlKey && !event.metaKey && !gestureStore.get().choosing;
      if (isPlain && sessionStore.get().selection.length > 1) select({ kind: "enclosure", id: node.data.enclosure });
    },
    onNodeDoubleClick(event: MouseEvent, node: BoxFlowNode): void {
      if (sessionStore.get().tool !== undefined || heldThing() !== undefined) return;
      if (renameUnder(event.target, node.data.enclosure)) return;
      const within =
        event.target instanceof Element && event.target.closest("[data-item],[data-mark],[data-open],[data-lines]");
      if (within !== null) return;
      const { enclosure } = node.data;
      if (isOpen(enclosure)) closeBox(enclosure);
      else if (stepAt(zoomNow()) > 0) showOpened(enclosure);
    },
    onPaneContextMenu(event: MouseEvent | globalThis.MouseEvent): void {
      event.preventDefault();
      const painted = paintedBoxAt(event);
      if (painted !== undefined) {
        select({ kind: "enclosure", id: painted });
        openMenu({ subject: { kind: "box", enclosure: painted }, x: event.clientX, y: event.clientY });
        return;
      }
      openMenu({
        subject: { kind: "sheet", at: toSheet(event), room: roomUnder(event) },
        x: event.clientX,
        y: event.clientY,
      });
    },
    /** The ring of what has the focus keeps its width. */
    onMoveEnd(): void {
      if (document.activeElement?.closest(".sheet-flow") != null) fitRing(document.activeElement);
    },
    onClick(event: MouseEvent): void {
      const cable = roadAt(event.target);
      if (cable === undefined) return;
      if (event.shiftKey || event.ctrlKey || event.metaKey) toggleSelected({ kind: "cable", id: cable });
      else select({ kind: "cable", id: cable });
    },
    onContextMenu(event: MouseEvent): void {
      const cable = roadAt(event.target);
      if (cable === undefined) return;
      event.preventDefault();
      select({ kind: "cable", id: cable });
      openMenu({ subject: { kind: "cable", enclosure: undefined, id: cable }, x: event.clientX, y: event.clientY });
    },
    onDragOver(event: DragEvent): void {
      if (sessionStore.get().tool === undefined) return;
      event.preventDefault();
      event.dataTransfer.dropEffect = "copy";
    },
    onDrop(event: DragEvent): void {
      const box = nodeAt(event.target);
      const pictures = picturesAmong(event.dataTransfer.files);
      if (box !== undefined && pictures.length > 0) {
        event.preventDefault();
        event.stopPropagation();
        select({ kind: "enclosure", id: box });
        void attachPhotos(box, pictures);
        return;
      }
      if (sessionStore.get().tool === undefined) return;
      event.preventDefault();
      applyTool({ at: toSheet(event), ...thingAt(event.target) });
    },
  },

  /** Listens for keys and for the pointer that leads what is held, until the returned function is called. */
  attach(host: HTMLElement | null): () => void {
    if (host === null) return () => {};
    const lead = (event: PointerEvent): void => {
      followMouse(event);
      if (heldThing() !== undefined || sessionStore.get().routeFrom !== undefined)
        gestureStore.merge({ pointer: toSheet(event) });
      if (event.buttons === 0) pointAt(paintedBoxAt(event));
    };
    // The sheet would pan under a frame that is drawn.
    const stay = (event: Event): void => {
      const drawsCable = event.type === "touchstart" && sessionStore.get().tool?.kind === "cable";
      if (isFraming() || drawsCable) event.stopPropagation();
    };
    const stopWatching = watchAlt();
    const stopOffering = offerPasteSpot(pointerOnSheet);
    const stopWatchingFocus = watchFocus(host);
    const stopWatchingTouch = watchTouch(host);
    // The sheet is moved by its own view alone: a browser that scrolls a clipped part to show the focus shifts it for good.
    const hold = ({ target }: Event): void => {
      if (target instanceof Element && target.closest("[role=menu]") === null) target.scrollTo(0, 0);
    };
    const tell = ({ target }: Event): void => showTip(target);
    host.addEventListener("pointerover", tell);
    host.addEventListener("focusin", tell);
    host.addEventListener("scroll", hold, true);
    host.addEventListener("pointerdown", beginCableDrag, true);
    host.addEventListener("pointerdown", beginMarquee, true);
    host.addEventListener("mousedown", stay, true);
    host.addEventListener("touchstart", stay, true);
    host.addEventListener("pointermove", lead);
    host.addEventListener("keydown", onKey);
    window.addEventListener("keydown", onEscape);
    return () => {
      stopWatching();
      stopOffering();
      stopWatchingFocus();
      stopWatchingTouch();
      host.removeEventListener("pointerover", tell);
      host.removeEventListener("focusin", tell);
      host.removeEventListener("pointerdown", beginMarquee, true);
      host.removeEventListener("mousedown", stay, true);
      host.removeEventListener("touchstart", stay, true);
      host.removeEventListener("scroll", hold, true);
      host.removeEventListener("pointerdown", beginCableDrag, true);
      host.removeEventListener("pointermove", lead);
      host.removeEventListener("keydown", onKey);
      window.removeEventListener("keydown", onEscape);
    };
  },
};

const roadAt = (on: EventTarget): CableId | undefined =>
  on instanceof Element ? (on.closest<SVGElement>("[data-road]")?.dataset.road as CableId | undefined) : undefined;

/** The box and device that something is dropped on. */
function thingAt(on: EventTarget): { enclosure: EnclosureId | undefined; device: DeviceId | undefined } {
  const element = on instanceof Element ? on : undefined;
  const item = element?.closest<SVGElement>("[data-item]")?.dataset.item;
  const device = item?.startsWith("device ") === true ? (item.slice("device ".length) as DeviceId) : undefined;
  return { enclosure: nodeAt(on), device };
}

/** Escape opens the hand, wherever the focus is, unless something nearer has used it. */
function onEscape(event: KeyboardEvent): void {
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

function onKey(event: KeyboardEvent): void {
  const on = event.target;
  if (event.defaultPrevented || !(on instanceof Element) || on.closest("button,input,[role=menu]") !== null) return;
  if (event.ctrlKey || event.metaKey) return;
  if ((!event.altKey && typeKind(event.key)) || walkKey(on, event)) {
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

import type { DragEvent, MouseEvent } from "react";
import type { CableId } from "../../shared-model/model/ids.ts";
import { offerPasteSpot } from "../state/paste-spot.ts";
import { attachPhotos, picturesAmong } from "../state/photos/photos.ts";
import { select, sessionStore, toggleSelected } from "../state/session-store.ts";
import { applyTool } from "./apply-tool.ts";
import { beginCableDrag, nodeAt } from "./cable-drag.ts";
import { stepAt } from "./detail.ts";
import { isLeadInHand } from "./energise/lit-hands.ts";
import { paintedBoxAt } from "./far/painted.ts";
import { pointAt } from "./far/shells.ts";
import { gestureStore, openMenu } from "./gesture-store.ts";
import { heldThing, putDown } from "./hand.ts";
import { watchAlt } from "./held-keys.ts";
import { beginMarquee, isFraming } from "./marquee.ts";
import { closeBox, isOpen } from "./open-boxes.ts";
import { beginPlaceDrag, followFocus, followPointer, leaveAim, thingAt } from "./placing/follow-aim.ts";
import { onEscape, onKey } from "./sheet-keys.ts";
import { toSheet, zoomNow } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { showTip } from "./show-tip.ts";
import type { BoxFlowNode } from "./to-flow.ts";
import { watchTouch } from "./touch/watch-touch.ts";
import { followMouse, pointerOnSheet, renameUnder, roomUnder } from "./under-pointer.ts";
import { tellViewRests } from "./view-rest.ts";
import { fitRing } from "./walk/ring.ts";
import { watchFocus } from "./walk/sheet-stop.ts";

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
      // A lead goes on what is inside.
      if (isLeadInHand() && stepAt(zoomNow()) > 0 && !isOpen(node.data.enclosure)) showOpened(node.data.enclosure);
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
      tellViewRests();
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
      followPointer(event.nativeEvent);
    },
    onDrop(event: DragEvent): void {
      const box = nodeAt(event.target) ?? paintedBoxAt(event);
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
      // No pointer moved while it was dragged.
      gestureStore.merge({ pointer: toSheet(event) });
      applyTool({ at: toSheet(event), ...thingAt(event.target) });
    },
  },

  /** Listens for keys and for the pointer that leads what is held, until the returned function is called. */
  attach(host: HTMLElement | null): () => void {
    if (host === null) return () => {};
    const lead = (event: PointerEvent): void => {
      followMouse(event);
      if (event.buttons === 0) followPointer(event);
      if (heldThing() !== undefined || sessionStore.get().routeFrom !== undefined)
        gestureStore.merge({ pointer: toSheet(event) });
      if (event.buttons === 0) pointAt(paintedBoxAt(event));
    };
    // The sheet would pan under a frame that is drawn.
    const stay = (event: Event): void => {
      const leads = event.type === "touchstart" && sessionStore.get().tool !== undefined;
      if (isFraming() || leads) event.stopPropagation();
    };
    // The region around it has the focus when a drawing was just begun.
    const heard = host.closest("main") ?? host;
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
    host.addEventListener("focusin", followFocus);
    host.addEventListener("pointerleave", leaveAim);
    host.addEventListener("pointerdown", beginPlaceDrag, true);
    host.addEventListener("scroll", hold, true);
    host.addEventListener("pointerdown", beginCableDrag, true);
    host.addEventListener("pointerdown", beginMarquee, true);
    host.addEventListener("mousedown", stay, true);
    host.addEventListener("touchstart", stay, true);
    host.addEventListener("pointermove", lead);
    heard.addEventListener("keydown", onKey);
    window.addEventListener("keydown", onEscape);
    return () => {
      stopWatching();
      stopOffering();
      stopWatchingFocus();
      stopWatchingTouch();
      host.removeEventListener("pointerover", tell);
      host.removeEventListener("focusin", tell);
      host.removeEventListener("focusin", followFocus);
      host.removeEventListener("pointerleave", leaveAim);
      host.removeEventListener("pointerdown", beginPlaceDrag, true);
      host.removeEventListener("pointerdown", beginMarquee, true);
      host.removeEventListener("mousedown", stay, true);
      host.removeEventListener("touchstart", stay, true);
      host.removeEventListener("scroll", hold, true);
      host.removeEventListener("pointerdown", beginCableDrag, true);
      host.removeEventListener("pointermove", lead);
      heard.removeEventListener("keydown", onKey);
      window.removeEventListener("keydown", onEscape);
    };
  },
};

const roadAt = (on: EventTarget): CableId | undefined =>
  on instanceof Element ? (on.closest<SVGElement>("[data-road]")?.dataset.road as CableId | undefined) : undefined;

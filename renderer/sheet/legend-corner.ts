import { type PointerEvent, type RefObject, useLayoutEffect, useRef, useState } from "react";
import { documentStore } from "../state/document-store.ts";
import { type LegendCorner, preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { freestCorner, nearestCorner } from "./legend-place.ts";
import { currentView, sheetArea } from "./sheet-view.ts";
import { areasOfAll } from "./whole-of.ts";

export const putInto = (legendCorner: LegendCorner): void => preferencesStore.merge({ legendCorner });
/** The corner that it was put into, else the one in which it covers least of the drawing as it is seen now. */
export function useCorner(root: RefObject<HTMLElement | null>, width: number, height: number): LegendCorner {
  const chosen = useStore(preferencesStore, ({ legendCorner }) => legendCorner);
  const [free, setFree] = useState<LegendCorner>("bottom-right");
  useLayoutEffect(() => {
    const [own, view, now] = [root.current?.getBoundingClientRect(), sheetArea(), currentView()];
    if (own === undefined || view === undefined || now === undefined) return;
    // A tall one scrolls.
    const size = { width: Math.min(own.width, width + RIM), height: Math.min(own.height, height + HEAD) };
    setFree(freestCorner(size, view, view.foot, areasOfAll(documentStore.get()), now));
  }, [root, width, height]);
  return chosen ?? free;
}

/** What it has around its lines, in pixels. */
const RIM = 20;
const HEAD = 60;

interface Shift {
  readonly x: number;
  readonly y: number;
}

/** By its head it is dragged into another corner. */
export function useDrag(root: RefObject<HTMLElement | null>) {
  const [at, setAt] = useState<Shift>();
  const from = useRef<Shift>(undefined);
  const events = {
    onPointerDown: ({ target, currentTarget, clientX: x, clientY: y, pointerId, button }: PointerEvent) => {
      if (button !== 0 || (target instanceof Element && target.closest("button") !== null)) return;
      from.current = { x, y };
      currentTarget.setPointerCapture(pointerId);
    },
    onPointerMove: ({ clientX, clientY }: PointerEvent) => {
      if (from.current !== undefined) setAt({ x: clientX - from.current.x, y: clientY - from.current.y });
    },
    onPointerUp: () => {
      const [own, view] = [root.current?.getBoundingClientRect(), sheetArea()];
      if (at !== undefined && own !== undefined && view !== undefined) {
        const middle = { x: own.left + own.width / 2 - view.left, y: own.top + own.height / 2 - view.top };
        putInto(nearestCorner(middle, view));
      }
      from.current = undefined;
      setAt(undefined);
    },
    onPointerCancel: () => {
      from.current = undefined;
      setAt(undefined);
    },
  };
  return { at, events };
}

import { type PointerEvent, type RefObject, useCallback, useLayoutEffect, useRef, useState } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { documentStore } from "../state/document-store.ts";
import { LEGEND_CORNERS, type LegendCorner, preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { levelOf, stepAt } from "./detail.ts";
import { freestCorner, nearestCorner, type Standing } from "./legend-place.ts";
import { currentView, sheetArea } from "./sheet-view.ts";
import type { Viewport } from "./view-fit.ts";
import { whenViewRests } from "./view-rest.ts";
import { areasOfAll } from "./whole-of.ts";

export const putInto = (legendCorner: LegendCorner): void => preferencesStore.merge({ legendCorner });

/** `free` is undefined before it was looked at. */
interface MaybeStanding {
  readonly corner: LegendCorner;
  readonly free: boolean | undefined;
}

/**
 * Where the legend stands: in the corner that it was put into, else the one in which it covers least of the drawing as it
 * is seen now; and whether it covers nothing there. Where it would, only its head is shown, in the corner that is best for
 * that. Looked at again whenever the view comes to rest.
 */
export function useCorner(root: RefObject<HTMLElement | null>, width: number, height: number): MaybeStanding {
  const chosen = useStore(preferencesStore, ({ legendCorner }) => legendCorner);
  const [standing, setStanding] = useState<Standing>();
  const look = useCallback(() => {
    const [view, now] = [sheetArea(), currentView()];
    if (root.current === null || view === undefined || now === undefined) return;
    const among = chosen === undefined ? LEGEND_CORNERS : [chosen];
    const best = (size: { readonly width: number; readonly height: number }): Standing =>
      freestCorner(size, view, view.foot, areasWithWords(now), now, among, overviewIn(view));
    const whole = best({ width: width + RIM, height: Math.min(height + HEAD, view.height - TALLEST) });
    const next = whole.free ? whole : { corner: best({ width: SLIM, height: HEAD / 2 }).corner, free: false };
    setStanding((before) => (before?.corner === next.corner && before.free === next.free ? before : next));
  }, [root, width, height, chosen]);
  useLayoutEffect(() => {
    look();
    return whenViewRests(look);
  }, [look]);
  return { corner: standing?.corner ?? chosen ?? "bottom-right", free: standing?.free };
}

/** What boxes cover as they are seen now: from middle distance their words over and under them keep their size. */
function areasWithWords({ zoom }: Viewport): readonly Rect[] {
  const areas = areasOfAll(documentStore.get());
  if (levelOf(stepAt(zoom)) !== "middle") return areas;
  const [over, under] = [WORDS.over / zoom, WORDS.under / zoom];
  return areas.map(({ x, y, width, height }) => ({ x, y: y - over, width, height: height + over + under }));
}

/** In pixels. */
const WORDS = { over: 24, under: 26 } as const;

/** Where the overview stands, in pixels from the corner of the view. */
function overviewIn(view: { readonly left: number; readonly top: number }): readonly Rect[] {
  const area = document.querySelector(".sheet-overview")?.getBoundingClientRect();
  if (area === undefined) return [];
  return [{ x: area.left - view.left, y: area.top - view.top, width: area.width, height: area.height }];
}

/** What it has around its lines, in pixels; one that is too tall scrolls. */
const RIM = 20;
const HEAD = 60;
const TALLEST = 84;
/** Width of its head alone. */
const SLIM = 200;

interface Shift {
  readonly x: number;
  readonly y: number;
}

/** By its head it is dragged into another corner. */
export function useDrag(root: RefObject<HTMLElement | null>, onPut: (corner: LegendCorner) => void) {
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
        onPut(nearestCorner(middle, view));
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

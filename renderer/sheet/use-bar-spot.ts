import { type RefObject, useCallback, useLayoutEffect, useState } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { type BarSpot, barSpot } from "./bar-place.ts";
import { openStore } from "./open-boxes.ts";
import { sheetArea } from "./sheet-view.ts";
import { whenViewRests } from "./view-rest.ts";

/** What is read and pressed of a box that is seen near. */
const NEAR_PARTS = ".sheet-box-header text, .sheet-item, .sheet-fill";
/** Else all that is drawn of it, its words above and below included. */
const AWAY_PARTS = ".sheet-wall-outer, text";
/** What else stands at the edges of the sheet. */
const BESIDE = ".sheet-hint, .sheet-symbols, .sheet-overview, .notice";

/**
 * Where the bar of what is chosen stands: looked at anew when something else is chosen or opened, and whenever the view
 * comes to rest, never while it moves.
 * @param chosen Ids of the chosen boxes, with a space between.
 * @param mark Width of the word of the state.
 */
export function useBarSpot(root: RefObject<HTMLElement | null>, chosen: string, mark: number): BarSpot {
  const [spot, setSpot] = useState<BarSpot>("head");
  const look = useCallback(() => {
    const bar = root.current?.getBoundingClientRect();
    const view = sheetArea();
    if (bar === undefined || view === undefined) return;
    setSpot(barSpot(bar, view, mark, view.foot, chosen === "" ? [] : takenIn(view, chosen.split(" "))));
  }, [root, chosen, mark]);
  useLayoutEffect(() => {
    let frame = 0;
    // What is opened is drawn a frame later.
    const lookLater = (): void => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => {
        frame = requestAnimationFrame(look);
      });
    };
    look();
    lookLater();
    const stops = [openStore.subscribe(lookLater), whenViewRests(look)];
    return () => {
      for (const stop of stops) stop();
      cancelAnimationFrame(frame);
    };
  }, [look]);
  return spot;
}

function takenIn(view: { readonly left: number; readonly top: number }, ids: readonly string[]): readonly Rect[] {
  const nodes = ids.flatMap((id) => [...document.querySelectorAll(`.react-flow__node[data-id="${CSS.escape(id)}"]`)]);
  const parts = nodes.flatMap((node) => {
    const isNear = node.querySelector(".sheet-box-header") !== null;
    const within = [...node.querySelectorAll(isNear ? NEAR_PARTS : AWAY_PARTS)];
    return within.length === 0 ? [node] : within;
  });
  return [...parts, ...document.querySelectorAll(BESIDE)].map((each) => {
    const { left, top, width, height } = each.getBoundingClientRect();
    return { x: left - view.left, y: top - view.top, width, height };
  });
}

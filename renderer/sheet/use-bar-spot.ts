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
const BESIDE = ".sheet-hint, .sheet-symbols, .sheet-overview, .scope-legend, .sheet-legend, .notice";
/** What stands at the foot and comes when an answer does, when nothing else about the bar has changed. */
const KEYS = ".scope-legend, .sheet-legend";

export interface BarStand {
  readonly spot: BarSpot;
  /** Height of what stands at the foot of the view, in pixels. */
  readonly foot: number;
}

/**
 * Where the bar of what is chosen stands: looked at anew when something else is chosen or opened, and whenever the view
 * comes to rest or a key of lines comes or goes, never while it moves.
 * @param chosen Ids of the chosen boxes, with a space between.
 * @param mark Width of the word of the state.
 */
export function useBarSpot(root: RefObject<HTMLElement | null>, chosen: string, mark: number): BarStand {
  const [stand, setStand] = useState<BarStand>({ spot: "head", foot: 0 });
  const look = useCallback(() => {
    const bar = root.current?.getBoundingClientRect();
    const view = sheetArea();
    if (bar === undefined || view === undefined) return;
    const { foot } = view;
    const spot = barSpot(bar, view, mark, foot, chosen === "" ? [] : takenIn(view, chosen.split(" ")));
    setStand((now) => (now.spot === spot && now.foot === foot ? now : { spot, foot }));
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
    const stops = [openStore.subscribe(lookLater), whenViewRests(look), whenKeysChange(lookLater)];
    return () => {
      for (const stop of stops) stop();
      cancelAnimationFrame(frame);
    };
  }, [look]);
  return stand;
}

/** @returns Stops it. */
function whenKeysChange(tell: () => void): () => void {
  const sheet = document.querySelector(".sheet");
  if (sheet === null) return () => {};
  const isKey = (node: Node): boolean => node instanceof Element && node.matches(KEYS);
  const watch = new MutationObserver((changes) => {
    if (changes.some(({ addedNodes, removedNodes }) => [...addedNodes, ...removedNodes].some(isKey))) tell();
  });
  watch.observe(sheet, { childList: true });
  return () => watch.disconnect();
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

import { useLayoutEffect } from "react";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { type InTheWay, noticeSpot } from "./notice-spot.ts";
import { whenViewRests } from "./view-rest.ts";

type Weighed = readonly (readonly [selector: string, weight: number])[];

/** What a notice is to leave free of the drawing, and how much each matters: what a hand may go for before what is read. */
const DRAWN: Weighed = [
  [".sheet-targets .sheet-hit", 6],
  [".sheet-box-header text, .sheet-fill", 5],
  [".sheet-item, .sheet-terminal", 4],
  [".react-flow__node", 4],
];
const TITLE_BLOCK = ".sheet-title-block";
/** What stands on the sheet and does not move with it. */
const STANDING: Weighed = [
  [".sheet-bar, .sheet-hint", 4],
  [`${TITLE_BLOCK}, .sheet-overview, .sheet-legend, .scope-legend, .sheet-symbols`, 3],
];

/**
 * Keeps a notice off the boxes that it may tell of and off what the hand may go for next: looked at anew for each notice,
 * whenever something else is held, and when the view comes to rest.
 * @param held What is in the hand.
 */
export function useNoticeSpot(held: unknown): void {
  const notice = useStore(sessionStore, (session) => session.notice);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at anew for each thing that is taken up.
  useLayoutEffect(() => {
    if (notice === undefined) return undefined;
    placeNotice();
    // What has just changed in a box, and the places for what is held, are drawn a frame later.
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(placeNotice);
    });
    const stop = whenViewRests(placeNotice);
    return () => {
      stop();
      cancelAnimationFrame(frame);
    };
  }, [notice, held]);
}

function placeNotice(): void {
  const place = document.querySelector<HTMLElement>(".sheet-region > .notice-place");
  const view = place?.parentElement?.getBoundingClientRect();
  const notice = place?.firstElementChild?.getBoundingClientRect();
  if (!place || !view || !notice) return;
  const { side, top } = noticeSpot(notice, view, inTheWay(view));
  place.style.justifyContent = side;
  place.style.top = `${top}px`;
}

function inTheWay(view: DOMRect): readonly InTheWay[] {
  // A title block from side to side hides what is drawn under it.
  const block = document.querySelector(TITLE_BLOCK)?.getBoundingClientRect();
  const end = block !== undefined && block.width > 0.8 * view.width ? block.top : view.bottom;
  const areasOf = (things: Weighed, lowest: number): readonly InTheWay[] =>
    things.flatMap(([selector, weight]) =>
      [...document.querySelectorAll(selector)].map((each) => {
        const { left, top, width, bottom } = each.getBoundingClientRect();
        const height = Math.max(0, Math.min(bottom, lowest) - top);
        return { area: { x: left - view.left, y: top - view.top, width, height }, weight };
      }),
    );
  return [...areasOf(DRAWN, end), ...areasOf(STANDING, view.bottom)];
}

import { useEffect, useState } from "react";
import { type LayingOutState, layingOutStore } from "../state/laying-out.ts";
import { useStore } from "../state/use-store.ts";
import { fitBoxes } from "./sheet-view.ts";

const movedOf = ({ moved }: LayingOutState) => moved;

/** More boxes than this are at their places at once: nobody follows so many, and a slow machine would stutter. */
const FOLLOWED = 150;
/** As long as boxes are on their way; see `.sheet-arranged`. */
const ON_THE_WAY_MS = 450;

/** Shows boxes that were arranged. @returns Whether they are on their way to their places. */
export function useArranged(): boolean {
  const moved = useStore(layingOutStore, movedOf);
  const [seen, setSeen] = useState(moved);
  useEffect(() => {
    if (moved.ids.length === 0) return;
    // What was moved is in the page in the next frame.
    const frame = requestAnimationFrame(() => {
      if (moved.shows) fitBoxes(moved.ids);
    });
    const timer = setTimeout(() => setSeen(moved), ON_THE_WAY_MS);
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [moved]);
  return seen !== moved && moved.ids.length <= FOLLOWED;
}

import { useLayoutEffect, useRef } from "react";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { useHeld } from "./hand.ts";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

const tipOf = ({ tip }: ReturnType<typeof gestureStore.get>) => tip;
/** Pixels between a place and its words, and from the edge of the window. */
const AWAY = 14;
const EDGE = 6;

/** What is known of the place under the pointer or the focus: over the drawing at a size that is read at any zoom. */
export function TargetTip() {
  const tip = useStore(gestureStore, tipOf);
  const held = useHeld();
  const root = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = root.current;
    if (element === null || tip === undefined) return;
    const { width, height } = element.getBoundingClientRect();
    const left = Math.min(Math.max(tip.x - width / 2, EDGE), window.innerWidth - width - EDGE);
    const above = tip.y - AWAY - height;
    element.style.left = `${Math.max(EDGE, left)}px`;
    element.style.top = `${above >= EDGE ? above : tip.y + AWAY}px`;
  }, [tip]);
  if (tip === undefined || held === undefined) return null;
  const [place, verdict = ""] = parted(tip.words);
  return (
    <div ref={root} className="sheet-tip" {...FOR_EYES_ONLY}>
      <strong>{place}</strong>
      {verdict}
    </div>
  );
}

/** "R1 LINE H: not possible. Why" before and after the first colon. */
function parted(words: string): readonly string[] {
  const at = words.indexOf(": ");
  return at < 0 ? [words] : [words.slice(0, at), words.slice(at + 2)];
}

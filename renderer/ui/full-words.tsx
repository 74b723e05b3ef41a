import "./full-words.css";
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { createPortal } from "react-dom";
import { type Box, cutWordsAt } from "./cut-words.ts";

interface Shown {
  readonly words: string;
  readonly near: Box;
}

/** A pointer that only passes asks nothing. */
const WAIT_MS = 350;
/** Pixels from what it tells, and from the edge of the window. */
const AWAY = 6;
const EDGE = 6;

/**
 * Tells in full what stands shortened where the pointer or the focus is, in a list or on the sheet; Escape, a press or a
 * turn of the wheel takes it away. Nothing is added for people who hear the window: they have the whole words.
 */
export function FullWords() {
  const [shown, setShown] = useState<Shown>();
  const root = useRef<HTMLDivElement>(null);
  useEffect(() => watch(setShown), []);
  useLayoutEffect(() => {
    const element = root.current;
    if (element === null || shown === undefined) return;
    const { width, height } = element.getBoundingClientRect();
    const { left, top, bottom } = shown.near;
    const below = bottom + AWAY;
    element.style.left = `${Math.max(EDGE, Math.min(left, window.innerWidth - width - EDGE))}px`;
    element.style.top = `${below + height <= window.innerHeight - EDGE ? below : Math.max(EDGE, top - AWAY - height)}px`;
  }, [shown]);
  if (shown === undefined) return null;
  return createPortal(
    <div ref={root} className="full-words" aria-hidden="true">
      {shown.words}
    </div>,
    document.body,
  );
}

function watch(show: (shown: Shown | undefined) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const hide = (): void => {
    clearTimeout(timer);
    show(undefined);
  };
  const ask = (find: () => Shown | undefined): void => {
    clearTimeout(timer);
    timer = setTimeout(() => show(find()), WAIT_MS);
  };
  const over = ({ target, pointerType, clientX: x, clientY: y }: PointerEvent): void => {
    if (pointerType === "touch" || !(target instanceof Element)) return;
    // What it says may be pointed at, too.
    if (target.closest(".full-words") !== null) clearTimeout(timer);
    else ask(() => cutWordsAt(target, { x, y }));
  };
  const focus = (): void => {
    const now = document.activeElement;
    if (now === null || !now.matches(":focus-visible")) return;
    const row = now.getAttribute("aria-activedescendant");
    const at = (row === null ? null : document.getElementById(row)) ?? now;
    ask(() => cutWordsAt(at));
  };
  const keyUp = ({ key }: KeyboardEvent): void => (key === "Escape" ? hide() : focus());
  const events = { pointerover: over, focusin: focus, keyup: keyUp, pointerdown: hide, wheel: hide, scroll: hide };
  const all = Object.entries(events) as [string, EventListener][];
  for (const [name, listener] of all) addEventListener(name, listener, { capture: true, passive: true });
  return () => {
    hide();
    for (const [name, listener] of all) removeEventListener(name, listener, { capture: true });
  };
}

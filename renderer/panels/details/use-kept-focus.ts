import { type RefObject, useLayoutEffect, useRef } from "react";

/**
 * A press in the details often shows the details of something else, and the button that had the focus is gone. The
 * focus then goes to the details as a whole, not to the top of the window.
 * @param shown Changes when something else is shown.
 */
export function useKeptFocus(shown: string): RefObject<HTMLDivElement | null> {
  const root = useRef<HTMLDivElement>(null);
  const before = useRef(shown);
  const wasInside = useRef(false);

  useLayoutEffect(() => {
    const note = ({ target }: Event): void => {
      wasInside.current = target instanceof Node && root.current?.contains(target) === true;
    };
    // A press on the bare sheet takes the focus from here without giving it to anything.
    addEventListener("focusin", note);
    addEventListener("pointerdown", note);
    return () => {
      removeEventListener("focusin", note);
      removeEventListener("pointerdown", note);
    };
  }, []);

  useLayoutEffect(() => {
    if (before.current === shown) return;
    before.current = shown;
    if (wasInside.current && document.activeElement === document.body) root.current?.focus({ preventScroll: false });
  }, [shown]);
  return root;
}

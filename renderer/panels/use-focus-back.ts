import { type RefObject, useEffect, useRef } from "react";

/** For a button that begins something: what had the focus is gone when it ends, and the focus comes back to the button. */
export function useFocusBack(on: boolean): RefObject<HTMLButtonElement | null> {
  const own = useRef<HTMLButtonElement>(null);
  const was = useRef(on);
  useEffect(() => {
    if (was.current && !on && document.activeElement === document.body) own.current?.focus({ preventScroll: true });
    was.current = on;
  }, [on]);
  return own;
}

import { type RefObject, useEffect, useLayoutEffect, useState } from "react";

interface Options {
  readonly count: number;
  /** Height of one row in pixels. */
  readonly size: number;
  /** Index of a row that is scrolled into view when it changes; -1 for none. */
  readonly keepInView: number;
}

/** Rows rendered beyond what is seen, on each side, so that scrolling does not show gaps. */
const SPARE = 8;

/** Which of many equal rows of a scrolling element are near enough to be seen: those from `first` up to `last`, not included. */
export function useWindowing(
  root: RefObject<HTMLElement | null>,
  { count, size, keepInView }: Options,
): { readonly first: number; readonly last: number; readonly page: number } {
  const [view, setView] = useState({ top: 0, height: 600 });

  useEffect(() => {
    const element = root.current;
    if (element === null) return undefined;
    const look = (): void => {
      const { scrollTop: top, clientHeight: height } = element;
      // Renders again only when another row comes near.
      setView((before) =>
        Math.floor(before.top / size) === Math.floor(top / size) && before.height === height ? before : { top, height },
      );
    };
    look();
    const sizes = new ResizeObserver(look);
    sizes.observe(element);
    element.addEventListener("scroll", look, { passive: true });
    return () => {
      sizes.disconnect();
      element.removeEventListener("scroll", look);
    };
  }, [root, size]);

  useLayoutEffect(() => {
    const element = root.current;
    if (element === null || keepInView < 0) return;
    const top = keepInView * size;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (top + size > element.scrollTop + element.clientHeight)
      element.scrollTop = top + size - element.clientHeight;
    const { scrollTop, clientHeight } = element;
    setView((before) => (before.top === scrollTop ? before : { top: scrollTop, height: clientHeight }));
  }, [root, keepInView, size]);

  const first = Math.max(0, Math.floor(view.top / size) - SPARE);
  const last = Math.min(count, Math.ceil((view.top + view.height) / size) + SPARE);
  return { first, last, page: Math.max(1, Math.floor(view.height / size) - 1) };
}

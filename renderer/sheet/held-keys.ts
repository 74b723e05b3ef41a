let alt = false;

/** Whether Alt is held: boxes that are dragged then go where the pointer goes, on no line and no pitch. */
export const altIsDown = (): boolean => alt;

const note = (event: Event): void => {
  alt = (event instanceof KeyboardEvent || event instanceof MouseEvent) && event.altKey;
};

const KINDS = ["keydown", "keyup", "pointermove", "pointerdown"] as const;

/** Follows Alt until the returned function is called; the flow tells of a drag before it tells of the keys. */
export function watchAlt(): () => void {
  for (const kind of KINDS) window.addEventListener(kind, note, true);
  return () => {
    for (const kind of KINDS) window.removeEventListener(kind, note, true);
  };
}

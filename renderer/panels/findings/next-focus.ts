/**
 * Where the focus goes when a row is about to leave: to the row after it, else the one before it, else the list itself.
 * To be asked while the row is still there.
 * @returns Moves the focus, unless the person has moved it elsewhere meanwhile.
 */
export function nextFocusAfter(inside: HTMLElement): () => void {
  const list = inside.closest<HTMLElement>(".findings");
  const rows = [...(list?.querySelectorAll<HTMLElement>(".finding") ?? [])];
  const own = rows.findIndex((row) => row.contains(inside));
  const next = rows[own + 1] ?? rows[own - 1];
  return () => {
    const { activeElement } = document;
    const elsewhere = activeElement !== document.body && rows[own]?.contains(activeElement) === false;
    if (!elsewhere) (next?.querySelector<HTMLElement>("button, summary") ?? list)?.focus();
  };
}

/** Marks a control as the entry of a line in one column. */
export const ENTRY = "data-record-entry";

/**
 * Enter on the entry of a line takes the focus to the next line of the same column, past lines that have none there. A
 * button is pressed by Enter, and what was refused keeps the focus.
 */
export function focusNextLine(body: HTMLElement, event: React.KeyboardEvent, isRefused: boolean): void {
  const { target } = event;
  if (!(target instanceof HTMLElement) || target instanceof HTMLButtonElement || event.defaultPrevented) return;
  const cell = target.closest(`[${ENTRY}]`);
  if (cell === null) return;
  event.preventDefault();
  if (!isRefused) focusAfter(body, cell);
}

/** The control of the next line in the column of a cell. */
export function focusAfter(body: HTMLElement, cell: Element): void {
  const column = [...body.querySelectorAll(`[${ENTRY}="${cell.getAttribute(ENTRY)}"]`)];
  for (const next of column.slice(column.indexOf(cell) + 1)) {
    const control = next.querySelector<HTMLElement>("input, select, button");
    if (control === null) continue;
    control.focus();
    if (control instanceof HTMLInputElement) control.select();
    control.scrollIntoView({ block: "nearest" });
    return;
  }
}

/** What was pressed while there was nothing yet that it could act on: a key by its name, or what was typed. */
export type Ahead = { readonly key: string } | { readonly text: string };

/** The place that an arrow leads to among so many. */
export const moved = (at: number, key: string, count: number): number =>
  count === 0 ? at : (at + (key === "ArrowDown" ? 1 : -1) + count) % count;

/** The last letter that was typed ahead, not an Enter before it. */
export function takeBack(pressed: Ahead[]): void {
  const last = pressed.at(-1);
  if (last === undefined || !("text" in last)) return;
  pressed.pop();
  if (last.text.length > 1) pressed.push({ text: last.text.slice(0, -1) });
}

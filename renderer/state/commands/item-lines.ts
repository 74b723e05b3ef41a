import { itemActions } from "../item-actions/item-actions.ts";
import type { ItemAction } from "../item-actions/subject.ts";
import { goToLeftTab } from "../left-pane-store.ts";
import type { Selected } from "../selection.ts";
import type { CommandLine } from "./entry.ts";

const line = ({ title, run, keys }: ItemAction, note: string): CommandLine => ({
  key: `action ${title}`,
  title,
  note,
  group: "Commands",
  run,
  ...(keys !== undefined && { shortcut: keys }),
});

/** What the outline offers for the one thing that is selected, and for the drawing. */
export function itemLines(selection: readonly Selected[]): readonly CommandLine[] {
  const item = selection.at(-1);
  const own = item === undefined ? [] : itemActions(item).map((action) => line(action, "what is selected"));
  return [
    ...own,
    ...itemActions({ kind: "drawing" }).map((action) => line(action, "draw")),
    line({ title: "Show the outline", run: () => goToLeftTab("outline") }, "window"),
    line({ title: "Show the stock", run: () => goToLeftTab("stock") }, "window"),
  ];
}

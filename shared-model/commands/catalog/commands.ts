import { catalogue } from "../../lib/catalogue.ts";
import type { CommandId } from "../command-args.ts";

export type CommandGroup =
  | "draw"
  | "conductors"
  | "facts"
  | "rooms"
  | "proposed"
  | "document"
  | "edit"
  | "file"
  | "window"
  | "help";

/** What the window does itself, outside the document. */
export type WindowCommandId =
  | "undo"
  | "redo"
  | "cut"
  | "copy"
  | "paste"
  | "duplicate"
  | "copy-picture"
  | "new-document"
  | "open-document"
  | "save-document"
  | "save-document-as"
  | "print-export"
  | "start-page"
  | "energise"
  | "add-seen-box"
  | "find-anything"
  | "other-state"
  | "show-scope"
  | "overview"
  | "fold-left"
  | "fold-right"
  | "show-keys"
  | "show-signs"
  | "show-rules"
  | "show-cautions"
  | "take-tour";

export interface CommandEntry<I extends string = CommandId | WindowCommandId> {
  readonly id: I;
  /** Words of the menu and the command field. */
  readonly title: string;
  readonly group: CommandGroup;
  /** Keys joined by "+"; "Mod" is Command on a Mac and Control elsewhere. Only what every platform uses anyway. */
  readonly shortcut?: string;
  /** The platform answers its keys by an event of its own, which brings the clipboard along. */
  readonly byPlatform?: true;
}

/** An entry, without keys where none are given. */
export const commandEntry = <I extends string>(
  id: I,
  title: string,
  group: CommandGroup,
  shortcut?: string,
): CommandEntry<I> => ({
  id,
  title,
  group,
  ...(shortcut !== undefined && { shortcut }),
});

const titles = catalogue({
  "new-document": "New drawing",
  "open-document": "Open…",
  "save-document": "Save",
  "save-document-as": "Save as…",
  "print-export": "Print and export…",
  "start-page": "Start page",
  energise: "Energise",
  "add-seen-box": "New from what I see…",
  undo: "Undo",
  redo: "Redo",
  cut: "Cut",
  copy: "Copy",
  paste: "Paste",
  duplicate: "Duplicate",
  "copy-picture": "Picture for other programs",
  "find-anything": "Find anything…",
  "other-state": "The other of as found and proposed",
  "show-scope": "Show scope",
  overview: "Overview",
  "fold-left": "Fold or show stock and outline",
  "fold-right": "Fold or show details and findings",
  "take-tour": "Tour of the window",
  "show-keys": "Keys…",
  "show-signs": "Signs and letters…",
  "show-rules": "Rule book…",
  "show-cautions": "General cautions…",
});

const entry = (id: WindowCommandId, group: CommandGroup, shortcut?: string): CommandEntry<WindowCommandId> =>
  commandEntry(id, titles[id], group, shortcut);

/** Commands of the window, with the keys that people try first. */
export const windowCommands: readonly CommandEntry<WindowCommandId>[] = [
  entry("new-document", "file", "Mod+N"),
  entry("open-document", "file", "Mod+O"),
  entry("save-document", "file", "Mod+S"),
  entry("save-document-as", "file", "Mod+Shift+S"),
  entry("print-export", "file", "Mod+P"),
  entry("start-page", "file"),
  entry("energise", "document", "F9"),
  entry("add-seen-box", "edit"),
  entry("undo", "edit", "Mod+Z"),
  entry("redo", "edit", "Mod+Shift+Z"),
  { ...entry("cut", "edit", "Mod+X"), byPlatform: true },
  { ...entry("copy", "edit", "Mod+C"), byPlatform: true },
  { ...entry("paste", "edit", "Mod+V"), byPlatform: true },
  entry("duplicate", "edit", "Mod+D"),
  entry("copy-picture", "edit"),
  entry("find-anything", "edit", "Mod+K"),
  entry("other-state", "proposed", "F8"),
  entry("show-scope", "proposed", "Shift+F8"),
  entry("overview", "window", "F7"),
  entry("fold-left", "window", "F4"),
  entry("fold-right", "window", "Shift+F4"),
  entry("take-tour", "help"),
  entry("show-keys", "help"),
  entry("show-signs", "help"),
  entry("show-rules", "help"),
  entry("show-cautions", "help"),
];

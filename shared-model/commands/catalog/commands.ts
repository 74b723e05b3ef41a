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

const entry = <I extends string>(id: I, title: string, group: CommandGroup, shortcut?: string): CommandEntry<I> => ({
  id,
  title,
  group,
  ...(shortcut !== undefined && { shortcut }),
});

/** Commands that edit the document, in menu order. */
export const documentCommands: readonly CommandEntry<CommandId>[] = [
  entry("place-enclosure", "Place a box or panel", "draw"),
  entry("place-device", "Place a device", "draw"),
  entry("route-cable", "Route a cable", "draw"),
  entry("place-load", "Plug in a load", "draw"),
  entry("add-ring", "Add a ring or extension", "draw"),
  entry("remove-ring", "Remove a ring or extension", "draw"),
  entry("add-label", "Add a label", "draw"),
  entry("move-enclosures", "Move boxes", "draw"),
  entry("pin-enclosures", "Pin boxes where they are", "draw"),
  entry("move-device", "Move a device", "draw"),
  entry("replace-device", "Replace a device", "draw"),
  entry("paste-items", "Put in a copy of wiring", "draw"),
  entry("move-load", "Plug a load in elsewhere", "draw"),
  entry("move-cable-side", "Move a cable end to another box", "draw"),
  entry("bend-cable", "Bend a cable on the sheet", "draw"),
  entry("move-splice", "Place a splice by hand", "draw"),
  entry("rename-item", "Rename", "edit", "F2"),
  entry("remove-items", "Remove", "edit", "Delete"),
  entry("land-end", "Land a conductor", "conductors"),
  entry("lift-end", "Lift a conductor", "conductors"),
  entry("cap-end", "Cap a conductor", "conductors"),
  entry("mark-spare", "Mark a capped conductor as spare", "conductors"),
  entry("splice-ends", "Splice conductors", "conductors"),
  entry("join-splice", "Join a conductor to a splice", "conductors"),
  entry("leave-splice", "Take a conductor out of its splice", "conductors"),
  entry("change-connector", "Change the connector of a splice", "conductors"),
  entry("add-jumper", "Add a jumper", "conductors"),
  entry("pigtail-terminal", "Pigtail a terminal", "conductors"),
  entry("add-pass-through", "Run a cable through a box unbroken", "conductors"),
  entry("remove-pass-through", "Stop running a cable through a box", "conductors"),
  entry("set-property", "Change a fact", "facts"),
  entry("mark-evidence", "Say how a fact is known", "facts"),
  entry("add-reading", "Record a reading", "facts"),
  entry("change-reading", "Correct a reading", "facts"),
  entry("remove-reading", "Remove a reading", "facts"),
  entry("attach-photo", "Attach a photo to a box", "facts"),
  entry("describe-photo", "Describe a photo", "facts"),
  entry("remove-photo", "Remove a photo", "facts"),
  entry("set-directory-line", "Write the panel directory", "facts"),
  entry("set-box-intent", "Say what a box is meant to do", "facts"),
  entry("set-outlet-wish", "Wish protection for an outlet", "facts"),
  entry("add-room", "Add a room", "rooms"),
  entry("assign-room", "Put boxes in a room", "rooms"),
  entry("start-proposed", "Start proposed", "proposed"),
  entry("reset-proposed", "Reset proposed to as found", "proposed"),
  entry("discard-proposed", "Discard proposed", "proposed"),
  entry("settle-held-back", "Settle an edit that was not carried over", "proposed"),
  entry("acknowledge-finding", "Acknowledge a finding", "document"),
  entry("withdraw-acknowledgement", "Withdraw an acknowledgement", "document"),
  entry("set-edition", "Choose the code edition", "document"),
  entry("set-amendment", "Make a local amendment", "document"),
  entry("remove-amendment", "Take back a local amendment", "document"),
  entry("run-together", "Run several commands as one step", "document"),
];

/** Commands of the window, with the keys that people try first. */
export const windowCommands: readonly CommandEntry<WindowCommandId>[] = [
  entry("new-document", "New drawing", "file", "Mod+N"),
  entry("open-document", "Open…", "file", "Mod+O"),
  entry("save-document", "Save", "file", "Mod+S"),
  entry("save-document-as", "Save as…", "file", "Mod+Shift+S"),
  entry("print-export", "Print and export…", "file", "Mod+P"),
  entry("start-page", "Start page", "file"),
  entry("energise", "Energise", "document", "F9"),
  entry("add-seen-box", "Box from what I see…", "edit"),
  entry("undo", "Undo", "edit", "Mod+Z"),
  entry("redo", "Redo", "edit", "Mod+Shift+Z"),
  { ...entry("cut", "Cut", "edit", "Mod+X"), byPlatform: true },
  { ...entry("copy", "Copy", "edit", "Mod+C"), byPlatform: true },
  { ...entry("paste", "Paste", "edit", "Mod+V"), byPlatform: true },
  entry("duplicate", "Duplicate", "edit", "Mod+D"),
  entry("copy-picture", "Picture for other programs", "edit"),
  entry("find-anything", "Find anything…", "edit", "Mod+K"),
  entry("other-state", "The other of as found and proposed", "proposed", "F8"),
  entry("show-scope", "Show scope", "proposed", "Shift+F8"),
  entry("take-tour", "Tour of the window", "help"),
  entry("show-keys", "Keys…", "help"),
  entry("show-signs", "Signs and letters…", "help"),
  entry("show-rules", "Rule book…", "help"),
  entry("show-cautions", "General cautions…", "help"),
];

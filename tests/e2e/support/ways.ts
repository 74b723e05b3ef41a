/** By which keys and by which presses every command is given; the tests drive what stands here. */

import type { WindowCommandId } from "../../../shared-model/commands/catalog/commands.ts";
import type { CommandId } from "../../../shared-model/commands/command-args.ts";

/** A line of the menu of a row of the outline: Shift+F10 or the row's own button, then the choices it asks for. */
export interface OutlineWay {
  readonly by: "outline";
  readonly box: string;
  /** Row in the box; "R1/H" is the row H in the row R1. The box itself where it is left out. */
  readonly row?: string;
  readonly action: string;
  readonly choices?: readonly string[];
  /** The list of choices stays open for the next step. */
  readonly stays?: true;
  /** Ends that are selected together first. */
  readonly ends?: readonly string[];
}

/** A control of the window that is a plain button, field or list: Tab and its own keys, or a press. */
export interface ControlWay {
  readonly by: "control";
  readonly where: string;
}

/** A line of a menu of the strip, with keys of its own where it has any. */
export interface MenuWay {
  readonly by: "menu";
  readonly menu: "Drawing" | "Edit";
  readonly line: string;
  readonly keys?: string;
}

export type Way = OutlineWay | ControlWay | MenuWay;

const outline = (box: string, row: string | undefined, action: string, ...choices: readonly string[]): OutlineWay => ({
  by: "outline",
  box,
  action,
  ...(row !== undefined && { row }),
  ...(choices.length > 0 && { choices }),
});
const control = (where: string): ControlWay => ({ by: "control", where });
const menu = (name: MenuWay["menu"], line: string, keys?: string): MenuWay => ({
  by: "menu",
  menu: name,
  line,
  ...(keys !== undefined && { keys }),
});

/** On the laundry sample, in this order: some ways need what the one before has made. */
export const WAYS: Readonly<Record<CommandId | WindowCommandId, Way>> = {
  "cap-end": outline("B1", "C1 BK", "Cap C1 BK"),
  "mark-spare": outline("B1", "C1 BK", "Mark C1 BK as a spare"),
  "land-end": outline("B1", "C1 BK", "Land C1 BK…", "R1 H"),
  "lift-end": outline("B1", "C1 BK", "Leave C1 BK loose"),
  "join-splice": outline("B1", "X", "Join an end to X…", "C1 BK"),
  "leave-splice": outline("B1", "C2 BK", "Take C2 BK out of its splice"),
  "splice-ends": { ...outline("B2", undefined, "Splice the 2 selected ends"), ends: ["C2 BK", "C6 BK"] },
  "change-connector": outline("B1", "X", "Change the connector of X…", "Lever, 5 ports"),
  "move-splice": { ...outline("B1", "X", "Place X by hand…", "Right by a step"), stays: true },
  "add-jumper": outline("B1", "X", "Jumper from X…", "R1 H", "12 AWG black"),
  "pigtail-terminal": outline("B1", "R1/N", "Pigtail R1 N"),
  "place-device": outline("B1", undefined, "Add a device to B1…", "Grounding duplex, 20 A"),
  "route-cable": outline("B1", undefined, "Run a cable from B1…", "12/2 with ground", "B3"),
  "remove-ring": outline("B1", "Plaster ring", "Take it off"),
  "add-ring": outline("B1", undefined, "Add a ring or extension to B1…", "Extension"),
  "add-label": outline("B1", undefined, "Write a label on B1…", "Write “GFCI protected outlet”"),
  "move-enclosures": { ...outline("B1", undefined, "Move B1 on the sheet…", "Right by a step"), stays: true },
  "set-box-intent": outline("B1", undefined, "Say what B1 is meant to do…", "Supply by C2"),
  "assign-room": outline("B1", undefined, "Put B1 in a room…", "In no room"),
  "place-load": outline("B1", "R1", "Plug a load into R1…", "Freezer"),
  "set-outlet-wish": outline("B1", "R1", "Wish protection for R1…", "Decided against a wish"),
  "replace-device": outline("B1", "R1", "Replace R1…", "GFCI receptacle, 20 A face"),
  "move-cable-side": outline("B1", "C5", "Move the end of C5 from B1…", "To B2"),
  "add-pass-through": outline("B1", "C3", "Run C3 through a box unbroken…", "B3", "All of them, straight"),
  "remove-pass-through": outline("B3", "C3 unbroken", "Stop running it through"),
  "add-reading": outline("B1", "C1 WH", "Record a reading at C1 WH…", "Meter", "This point alone", "It read 120 V"),
  "move-load": outline("B4", "R4/Freezer", "Plug Freezer in elsewhere…", "R2"),
  "move-device": outline("P", "Q14", "Move Q14…", "Before Neutral bar"),
  "set-directory-line": outline("P", "Q14", "Write the directory line of Q14…", "Write “Laundry”"),
  "remove-items": outline("B1", "Y", "Remove Y"),
  "rename-item": outline("B3", undefined, "Rename B3", "B3x"),
  "place-enclosure": control("Add a box or panel"),
  "set-property": control("Internal clamps"),
  "mark-evidence": control("How known: Internal clamps"),
  "add-room": control("Add room"),
  "set-edition": control("Code edition"),
  "start-proposed": control("Proposed not started"),
  "reset-proposed": menu("Edit", "Reset all of proposed to as found"),
  "discard-proposed": menu("Edit", "Discard proposed"),
  "settle-held-back": control("I have looked"),
  "acknowledge-finding": control("Acknowledge"),
  "withdraw-acknowledgement": control("Withdraw"),
  "run-together": control("Findings, a fix"),
  "paste-items": menu("Edit", "Paste", "Control+v"),
  undo: menu("Edit", "Undo", "Control+z"),
  redo: menu("Edit", "Redo", "Control+Shift+z"),
  cut: menu("Edit", "Cut", "Control+x"),
  copy: menu("Edit", "Copy", "Control+c"),
  paste: menu("Edit", "Paste", "Control+v"),
  duplicate: menu("Edit", "Duplicate", "Control+d"),
  "start-page": menu("Drawing", "Start page"),
  "add-seen-box": menu("Edit", "Box from what I see"),
  "new-document": menu("Drawing", "New"),
  "open-document": menu("Drawing", "Open", "Control+o"),
  "save-document": menu("Drawing", "Save", "Control+s"),
  "save-document-as": menu("Drawing", "Save as", "Control+Shift+s"),
};

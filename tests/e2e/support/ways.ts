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

export type StripMenu = "Drawing" | "Edit" | "Help and view";

/** One thing that a person does with a control; all names are those that the window shows or says. */
export type ControlStep =
  /** Goes to a box or panel, so that its details show. */
  | { readonly do: "select"; readonly box: string }
  | { readonly do: "show"; readonly pane: "Details" | "Findings" | "Rooms" }
  /** A button, a list and a field; `near` are words of the finding that it belongs to. */
  | { readonly do: "press"; readonly name: string | RegExp; readonly near?: string | RegExp }
  | { readonly do: "pick"; readonly name: string; readonly option: string; readonly near?: string }
  | { readonly do: "write"; readonly name: string; readonly text: string; readonly near?: string }
  /** A line of the list that is asked to be chosen from. */
  | { readonly do: "choose"; readonly line: string }
  /** A button of the question that is asked. */
  | { readonly do: "answer"; readonly answer: string }
  /** A line of a menu of the strip, or its own keys. */
  /** A button that asks for a file: a small photo is chosen. */
  | { readonly do: "choose-photo"; readonly name: string | RegExp; readonly near?: string | RegExp }
  | { readonly do: "menu"; readonly menu: StripMenu; readonly line: string; readonly keys?: string };

/** What makes the command possible, and then the command by the controls of the window. */
export interface ControlWay {
  readonly by: "control";
  readonly first?: readonly (ControlStep | OutlineWay)[];
  readonly steps: readonly ControlStep[];
  /** What Undo says it would take back; absent for what the window does outside the document. */
  readonly undoes?: RegExp;
}

export type Way = OutlineWay | ControlWay;

const outline = (box: string, row: string | undefined, action: string, ...choices: readonly string[]): OutlineWay => ({
  by: "outline",
  box,
  action,
  ...(row !== undefined && { row }),
  ...(choices.length > 0 && { choices }),
});
const control = (undoes: RegExp | undefined, ...steps: readonly ControlStep[]): ControlWay => ({
  by: "control",
  steps,
  ...(undoes !== undefined && { undoes }),
});
const after = (first: ControlWay["first"], way: ControlWay): ControlWay => ({ ...way, ...(first && { first }) });

const select = (box: string): ControlStep => ({ do: "select", box });
const show = (pane: "Details" | "Findings" | "Rooms"): ControlStep => ({ do: "show", pane });
const press = (name: string | RegExp, near?: string | RegExp): ControlStep => ({
  do: "press",
  name,
  ...(near !== undefined && { near }),
});
const pick = (name: string, option: string): ControlStep => ({ do: "pick", name, option });
const write = (name: string, text: string): ControlStep => ({ do: "write", name, text });
const choose = (line: string): ControlStep => ({ do: "choose", line });
const answer = (words: string): ControlStep => ({ do: "answer", answer: words });
const help = (line: string): ControlWay => control(undefined, menu("Help and view", line));
const menu = (name: StripMenu, line: string, keys?: string): ControlStep => ({
  do: "menu",
  menu: name,
  line,
  ...(keys !== undefined && { keys }),
});
const OCTAGON = "Octagon 4 × 1-1/2";
const STATES = { found: press(/^As found/), proposed: press(/^Proposed/) } as const;

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
  "add-jumper": outline("B1", "X", "Pigtail or jumper from X…", "R1 H, lower", "12 AWG black"),
  "pigtail-terminal": outline("B1", "R1/N", "Pigtail R1 N"),
  "place-device": outline("B1", undefined, "Add a device to B1…", "Grounding duplex, 20 A"),
  "route-cable": outline("B1", undefined, "Run a cable from B1…", "12/2 with ground", "B3"),
  "remove-ring": outline("B1", "Plaster ring", "Take it off"),
  "add-ring": outline("B1", undefined, "Add a ring or extension to B1…", "Extension"),
  "add-label": outline("B1", undefined, "Write a label on B1…", "Write “GFCI protected outlet”"),
  "move-enclosures": { ...outline("B1", undefined, "Move B1 on the sheet…", "Right by a step"), stays: true },
  "pin-enclosures": outline("B1", undefined, "Pin B1 in place"),
  "bend-cable": { ...outline("B1", "C5", "Bend C5 on the sheet…", "Add a bend"), stays: true },
  "set-box-intent": outline("B1", undefined, "Say what B1 is meant to do…", "Supply by C2"),
  "assign-room": outline("B1", undefined, "Put B1 in a room…", "In no room"),
  "place-load": outline("B1", "R1", "Plug a load into R1…", "Freezer"),
  "set-outlet-wish": outline("B1", "R1", "Wish protection for R1…", "Decided against a wish"),
  "replace-device": outline("B1", "R1", "Replace R1…", "GFCI receptacle, 20 A face"),
  "move-cable-side": outline("B1", "C5", "Move the end of C5 from B1…", "To B2"),
  "add-pass-through": outline("B1", "C3", "Run C3 through a box unbroken…", "B3", "All of them, straight"),
  "remove-pass-through": outline("B3", "C3 unbroken", "Stop running it through"),
  "add-reading": outline("B1", "C1 WH", "Record a reading at C1 WH…", "Meter", "This point alone", "It read 120 V"),
  "change-reading": control(
    /^Undo: Correct “Hot to neutral” of R2/,
    menu("Drawing", "Test record"),
    write("R2, Hot to neutral, before", "12"),
    press("More: R2, Hot to neutral"),
    write("R2, Hot to neutral, before", "1"),
    answer("Close"),
  ),
  "remove-reading": control(
    /^Undo: Remove “Hot to neutral” of R2/,
    menu("Drawing", "Test record"),
    press("More: R2, Hot to neutral"),
    press("Remove: R2, Hot to neutral, before"),
    answer("Close"),
  ),
  "move-load": outline("B4", "R4/Freezer", "Plug Freezer in elsewhere…", "R2"),
  "move-device": outline("P", "Q14", "Move Q14…", "Before Neutral bar"),
  "set-directory-line": outline("P", "Q14", "Write the directory line of Q14…", "Write “Laundry”"),
  "remove-items": outline("B1", "Y", "Remove Y"),
  "rename-item": outline("B3", undefined, "Rename B3", "B3x"),
  "set-property": after(
    [select("B1"), show("Details")],
    control(/^Undo: Set internal clamps of B1/, pick("Internal clamps", "None")),
  ),
  "mark-evidence": control(/^Undo: Mark/, pick("How known: Internal clamps", "measured (m)")),
  "attach-photo": control(/^Undo: Attach a photo to B1/, { do: "choose-photo", name: /^Add photos/ }),
  "describe-photo": control(
    /^Undo: Describe the photo/,
    write("What it shows", "As it was opened"),
    show("Findings"),
    show("Details"),
  ),
  "remove-photo": control(/^Undo: Remove the photo/, press(/^Remove B1: As it was opened/)),
  "set-edition": control(/^Undo: Set edition 2017/, pick("Code edition", "2017")),
  "set-amendment": control(
    /^Undo: Switch off box-overfull by local amendment/,
    menu("Drawing", "Local amendments"),
    pick("Rule", "A box must have room for every conductor, clamp, support and device that it holds"),
    write("Reason", "The authority counts with its own table."),
    write("Required by", "By-law 12"),
    press("Make the amendment"),
    answer("Close"),
  ),
  "remove-amendment": control(
    /^Undo: Switch box-overfull on again/,
    menu("Drawing", "Local amendments"),
    press(/^Take back/),
    answer("Close"),
  ),
  "add-room": after(
    [show("Rooms")],
    control(/^Undo: Add room Wash room/, write("Name, if not the same", "Wash room"), press("Add room")),
  ),
  "acknowledge-finding": after(
    [show("Findings")],
    control(
      /^Undo: Acknowledge a finding/,
      press("Acknowledge R3", "R3 in B3"),
      write("Your name", "Pat Example"),
      write("Reason", "The porch is rebuilt in spring."),
      press("Acknowledge", "R3 in B3"),
    ),
  ),
  "withdraw-acknowledgement": control(
    /^Undo: Withdraw an acknowledgement/,
    press(/^Acknowledged/),
    press(/^Withdraw/, "R3 in B3"),
  ),
  "start-proposed": control(/^Undo: Start proposed/, STATES.proposed, answer("Start proposed")),
  // There and back.
  "other-state": control(undefined, menu("Edit", "Show as found", "F8"), menu("Edit", "Show proposed", "F8")),
  // There and back.
  "show-scope": control(undefined, menu("Edit", "Show scope", "Shift+F8"), menu("Edit", "Leave scope", "Shift+F8")),
  overview: control(undefined, menu("Help and view", "Overview", "F7")),
  // There and back: the second line of the menu is there only while it is folded.
  "fold-left": control(
    undefined,
    menu("Help and view", "Fold stock and outline", "F4"),
    menu("Help and view", "Show stock and outline", "F4"),
  ),
  "fold-right": control(
    undefined,
    menu("Help and view", "Fold details and findings", "Shift+F4"),
    menu("Help and view", "Show details and findings", "Shift+F4"),
  ),
  "run-together": control(
    /^Undo: Change the connector: X gets/,
    press(/^Change the connector/, "X in B1 holds 6 × 12"),
  ),
  undo: control(undefined, menu("Edit", "Undo", "Control+z")),
  redo: control(undefined, menu("Edit", "Redo", "Control+Shift+z")),
  "reset-proposed": control(/^Undo: Reset proposed to as found/, menu("Edit", "Reset all of proposed to as found")),
  "settle-held-back": after(
    [
      outline("B6", "R5", "Remove R5"),
      STATES.found,
      outline("B6", "R5", "Plug a load into R5…", "Freezer"),
      show("Findings"),
    ],
    control(/^Undo: Settle/, press(/^I have looked/)),
  ),
  "discard-proposed": control(/^Undo: Discard proposed/, menu("Edit", "Discard proposed"), answer("Discard proposed")),
  copy: after([select("B6")], control(undefined, menu("Edit", "Copy", "Control+c"))),
  "paste-items": control(/^Undo: Paste/, menu("Edit", "Paste", "Control+v")),
  cut: control(/^Undo: Remove/, menu("Edit", "Cut", "Control+x")),
  paste: control(/^Undo: Paste/, menu("Edit", "Paste", "Control+v")),
  duplicate: after([select("B6")], control(/^Undo: Duplicate/, menu("Edit", "Duplicate", "Control+d"))),
  "copy-picture": after([select("B6")], control(undefined, menu("Edit", "Picture for other programs"))),
  "place-enclosure": control(/^Undo: Place box B/, press("Add a box or panel"), choose(OCTAGON)),
  "add-seen-box": control(
    /^Undo: Make .* from what is seen/,
    menu("Drawing", "New from what I see"),
    answer("Add the box"),
  ),
  "find-anything": control(undefined, menu("Edit", "Find anything", "Control+k")),
  "show-keys": help("Keys"),
  "show-signs": help("Signs and letters"),
  "show-cautions": help("General cautions"),
  "take-tour": help("Tour of the window"),
  energise: control(undefined, press("Energise")),
  "print-export": control(undefined, menu("Drawing", "Print and export", "Control+p")),
  "start-page": control(undefined, menu("Drawing", "Start page")),
  "save-document-as": after([press(/^Back to/)], control(undefined, menu("Drawing", "Save as", "Control+Shift+s"))),
  "save-document": after([pick("Code edition", "2020")], control(undefined, menu("Drawing", "Save", "Control+s"))),
  "open-document": control(undefined, menu("Drawing", "Open", "Control+o")),
  "new-document": control(undefined, menu("Drawing", "New")),
  "show-rules": control(undefined, menu("Drawing", "Rule book"), answer("Close")),
};

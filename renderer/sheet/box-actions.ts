import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { modKey } from "../platform/mod-key.ts";
import { selectedBoxes } from "../state/arranging.ts";
import {
  type ArrangeLine,
  alignLines,
  layOutLines,
  nudgeLines,
  selectAllBoxes,
} from "../state/commands/arrange-lines.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { sessionStore, takeTool, toggleSelected } from "../state/session-store.ts";
import { runWindowCommand } from "../state/window-commands.ts";
import { type Action, act, LINE, list, remove } from "./action.ts";
import { gestureStore, say } from "./gesture-store.ts";
import { startJumper } from "./hand.ts";
import { closeAllBoxes, closeBox, isOpen, openStore } from "./open-boxes.ts";
import { fitAll, fitBoxes } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";

/** What can be done with the sheet as a whole. */
export function sheetActions(): readonly Action[] {
  return [
    act("Fit everything", fitAll, "1"),
    ...(openStore.get().ids.length > 0 ? [act("Close opened boxes", closeAllBoxes)] : []),
    LINE,
    act("Select all boxes", () => {
      selectAllBoxes();
      say(`${selectedBoxes().length} boxes selected.`);
    }),
    choosingAction(),
    ...linesAs(layOutLines()),
    LINE,
    act("Paste", () => runWindowCommand("paste"), `${modKey} V`),
  ];
}

const choosingAction = (): Action =>
  gestureStore.get().choosing
    ? act("Stop choosing several", () => setChoosing(false))
    : act("Choose several boxes", () => setChoosing(true));

/** Begins or ends the mode in which presses add to the selection. */
export function setChoosing(choosing: boolean): void {
  gestureStore.merge({ choosing });
  say(choosing ? "Choosing several: press boxes, or drag a frame around them. Escape ends it." : "Choosing has ended.");
}

const linesAs = (lines: readonly ArrangeLine[]): readonly Action[] =>
  lines.map(({ title, keys, run }) => act(title, run, keys));

/** Lists of what moves the selected boxes. */
export function arrangeActions(): readonly Action[] {
  return [...linesAs(alignLines()), ...linesAs(nudgeLines()), ...linesAs(layOutLines())];
}

/** Draws a cable from this box: the next press says where it goes. */
function startRoute(from: EnclosureId, item: string): void {
  takeTool({ kind: "cable", id: item });
  sessionStore.merge({ routeFrom: from });
  const name = shownInstallation().enclosures[from]?.name ?? "";
  say(`Cable from ${name}. Press the box where it ends, or the bare sheet if it leaves this drawing.`);
}

/** What can be done with a box, and with all selected ones where it is one of them. */
export function boxActions(box: Enclosure): readonly Action[] {
  const chosen = selectedBoxes();
  const ids = chosen.includes(box.id) ? chosen : [box.id];
  const several = ids.length > 1;
  return [
    isOpen(box.id)
      ? act(`Close ${box.name}`, () => closeBox(box.id), "Esc")
      : act(`Open ${box.name}`, () => showOpened(box.id), "Enter"),
    ...(documentStore.get().readOnly ? [] : wiringActions(box)),
    LINE,
    ...list("Align and space", linesAs(alignLines())),
    ...list("Move by a step", linesAs(nudgeLines())),
    ...linesAs(layOutLines()),
    LINE,
    ...clipActions(),
    LINE,
    chosen.includes(box.id) && several
      ? act("Take out of the selection", () => toggleSelected({ kind: "enclosure", id: box.id }), "Space")
      : choosingAction(),
    act(several ? "Show them whole" : "Show whole", () => fitBoxes(ids)),
    LINE,
    remove(
      several ? `Remove ${ids.length} boxes` : `Remove ${box.name}`,
      ids.map((id) => ({ kind: "enclosure", id })),
    ),
  ];
}

const wiringActions = (box: Enclosure): readonly Action[] => [
  ...list(
    "Draw a cable from here",
    cableItems.map(({ id, title }) => act(title, () => startRoute(box.id, id))),
  ),
  ...(box.kind === "box" && box.material !== "nonmetallic"
    ? [act("Pigtail or jumper from the box bond", () => startJumper(box.id, { kind: "bond" }))]
    : []),
];

/** The clipboard works on what is selected: a press with the other button selects first. */
export const clipActions = (): readonly Action[] => [
  act("Cut", () => runWindowCommand("cut"), `${modKey} X`),
  act("Copy", () => runWindowCommand("copy"), `${modKey} C`),
  act("Paste", () => runWindowCommand("paste"), `${modKey} V`),
  act("Duplicate", () => runWindowCommand("duplicate"), `${modKey} D`),
];

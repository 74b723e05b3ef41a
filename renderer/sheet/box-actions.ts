import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { modKey } from "../platform/mod-key.ts";
import { selectedBoxes } from "../state/arranging.ts";
import { cableKindStore, kindsFor } from "../state/cable-kind.ts";
import { keysNow } from "../state/keys/keys.ts";
import { isLooking } from "../state/looking.ts";
import {
  type ArrangeLine,
  alignLines,
  layOutLines,
  nudgeLines,
  selectAllBoxes,
} from "../state/menu-lines/arrange-lines.ts";
import { toggleSelected } from "../state/session-store.ts";
import { runWindowCommand } from "../state/window-commands.ts";
import { type Action, act, LINE, list, remove } from "./action.ts";
import { startRoute } from "./cable-start.ts";
import { setChoosing } from "./choosing.ts";
import { gestureStore, say } from "./gesture-store.ts";
import { startJumper } from "./hand.ts";
import { laterWording } from "./later-words.ts";
import { closeAllBoxes, closeBox, isOpen, openStore } from "./open-boxes.ts";
import { fitAll, fitBoxes } from "./sheet-view.ts";
import { showOpened } from "./show-opened.ts";
import { wording } from "./words.ts";

const ALL_KEYS = `${modKey} A`;

/** What can be done with the sheet as a whole. */
export function sheetActions(): readonly Action[] {
  return [
    act(wording.fitEverything, fitAll, keysNow("zoom-all")),
    ...(openStore.get().ids.length > 0 ? [act(laterWording.closeOpenedBoxes, closeAllBoxes)] : []),
    LINE,
    act(
      laterWording.selectAllBoxes,
      () => {
        selectAllBoxes();
        say(laterWording.boxesSelected(selectedBoxes().length));
      },
      ALL_KEYS,
    ),
    choosingAction(),
    ...linesAs(layOutLines()),
    LINE,
    act(laterWording.paste, () => runWindowCommand("paste"), keysNow("paste")),
  ];
}

const choosingAction = (): Action =>
  gestureStore.get().choosing
    ? act(laterWording.stopChoosingSeveral, () => setChoosing(false))
    : act(laterWording.chooseSeveralBoxes, () => setChoosing(true));

const linesAs = (lines: readonly ArrangeLine[]): readonly Action[] =>
  lines.map(({ title, keys, run }) => act(title, run, keys));

/** Lists of what moves the selected boxes. */
export function arrangeActions(): readonly Action[] {
  return [...linesAs(alignLines()), ...linesAs(nudgeLines()), ...linesAs(layOutLines())];
}

/**
 * What can be done with a box, and with all selected ones where it is one of them.
 * @param more What else is done with one box; `naming` and `selecting` stand together.
 */
export function boxActions(
  box: Enclosure,
  more: readonly Action[],
  naming: readonly Action[],
  selecting: readonly Action[],
): readonly Action[] {
  const chosen = selectedBoxes();
  const ids = chosen.includes(box.id) ? chosen : [box.id];
  const several = ids.length > 1;
  return [
    isOpen(box.id)
      ? act(wording.close(box.name), () => closeBox(box.id), "Esc")
      : act(laterWording.open(box.name), () => showOpened(box.id), "Enter"),
    ...(isLooking() ? [] : wiringActions(box)),
    ...(several ? [] : list(laterWording.moreFor(box.name), more)),
    LINE,
    ...(several ? [] : naming),
    ...selecting,
    LINE,
    ...list(laterWording.alignAndSpace, linesAs(alignLines())),
    ...list(laterWording.moveByAStep, linesAs(nudgeLines())),
    ...linesAs(layOutLines()),
    LINE,
    ...clipActions(),
    LINE,
    chosen.includes(box.id) && several
      ? act(laterWording.takeOutOfTheSelection, () => toggleSelected({ kind: "enclosure", id: box.id }), "Space")
      : choosingAction(),
    act(several ? laterWording.showThemWhole : laterWording.showWhole, () => fitBoxes(ids)),
    LINE,
    remove(
      several ? laterWording.removeBoxes(ids.length) : laterWording.remove(box.name),
      ids.map((id) => ({ kind: "enclosure", id })),
    ),
  ];
}

const wiringActions = (box: Enclosure): readonly Action[] => [
  act(laterWording.runACableFromHere, () => startRoute(box.id), keysNow("start-cable")),
  ...list(
    laterWording.runACableOfAKind,
    kindsFor("", cableKindStore.get().last).map(({ id, title }) => act(title, () => startRoute(box.id, id))),
  ),
  ...(box.kind === "box" && box.material !== "nonmetallic"
    ? [act(laterWording.pigtailOrJumperFromTheBox, () => startJumper(box.id, { kind: "bond" }))]
    : []),
];

/** The clipboard works on what is selected: a press with the other button selects first. */
export const clipActions = (): readonly Action[] => [
  act(laterWording.cut, () => runWindowCommand("cut"), keysNow("cut")),
  act(laterWording.copy, () => runWindowCommand("copy"), keysNow("copy")),
  act(laterWording.paste, () => runWindowCommand("paste"), keysNow("paste")),
  act(laterWording.duplicate, () => runWindowCommand("duplicate"), keysNow("duplicate")),
];

import { connectors } from "../../shared-model/catalog/connectors.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { CableId, DeviceId, EndKey, JumperId, SpliceId } from "../../shared-model/model/ids.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { landedAt } from "../../shared-model/queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { itemActions } from "../state/item-actions/item-actions.ts";
import { nameable } from "../state/item-actions/nameable.ts";
import { keysNow } from "../state/keys/keys.ts";
import { isLooking } from "../state/looking.ts";
import { nameOfSelected } from "../state/name-of-selected.ts";
import { pigtail } from "../state/pigtail.ts";
import { renameInPlace } from "../state/rename.ts";
import { selectMoreLines } from "../state/selecting.ts";
import type { Selected } from "../state/selection.ts";
import { notify, select, showPane } from "../state/session-store.ts";
import { type Action, act, command, LINE, list, remove } from "./action.ts";
import { arrangeActions, boxActions, clipActions, sheetActions } from "./box-actions.ts";
import { litActions } from "./energise/lit-hands.ts";
import { endsAt, pickUp, startJumper } from "./hand.ts";
import { laterWording } from "./later-words.ts";
import { roomActions } from "./room-actions.ts";
import { type Subject, selectedOf } from "./sheet-subject.ts";
import { fitBoxes } from "./sheet-view.ts";
import { wording } from "./words.ts";

/** What can be done with something on the sheet, most used first. */
export const actionsFor = (subject: Subject): readonly Action[] => [...litActions(subject), ...drawnActions(subject)];

/** What can be done with it as something that is drawn. */
function drawnActions(subject: Subject): readonly Action[] {
  if (subject.kind === "sheet")
    return [...(subject.room === undefined ? [] : roomActions(subject.room)), ...sheetActions()];
  if (subject.kind === "arrange") return arrangeActions();
  const item = selectedOf(subject);
  const box = subject.enclosure && shownInstallation().enclosures[subject.enclosure];
  if (item === undefined) return [];
  if (subject.kind === "cable") return cableActions(subject.id, item);
  if (box === undefined) return [];
  switch (subject.kind) {
    case "box":
      return boxActions(box, moreOf(item, /^(Run a cable|Move )/), namingOf(item), selectingOf(item));
    case "device":
      return deviceActions(box, subject.id, item);
    case "splice":
      return spliceActions(box, subject.id, item);
    case "jumper":
      return jumperActions(box, subject.id, item);
    case "end":
      return endActions(box, subject.id, item);
  }
}

/** What the other parts of the window offer for a thing, without what the sheet has a gesture of its own for. */
const moreOf = (item: Selected, own = /^$/): readonly Action[] =>
  itemActions(item)
    .filter(({ title }) => !own.test(title))
    .map(({ title, keys, run }) => act(title, run, keys));

/** Changing its name, where it stands if it is drawn there. */
function namingOf(item: Selected): readonly Action[] {
  const name = nameOfSelected(documentStore.get(), item);
  if (nameable(item, name) === undefined) return [];
  const words = item.kind === "end" ? laterWording.writeOnTheTagOf(name) : laterWording.rename(name);
  const begin = (): void => {
    if (renameInPlace(item)) return;
    select(item);
    showPane("details");
  };
  return [act(words, begin, item.kind === "end" ? undefined : keysNow("rename"))];
}

const selectingOf = (item: Selected): readonly Action[] =>
  list(
    laterWording.selectMore,
    selectMoreLines(item).map(({ title, run }) => act(title, run)),
  );

function deviceActions(box: Enclosure, id: DeviceId, item: Selected): readonly Action[] {
  const device = box.devices[id];
  if (device === undefined) return [];
  const writes = !isLooking();
  const terminals = terminalsOf(device).map((terminal) => ({
    terminal,
    words: nameOfTerminal(device, terminal.name),
    landed: landedAt(box, id, terminal.name),
  }));
  const jumpers = terminals.map(({ terminal, words, landed }) => {
    const taken = new Set(landed.map(({ hole }) => hole));
    const free = Array.from({ length: terminal.holes }, (_, i) => i + 1).find((hole) => !taken.has(hole)) ?? 1;
    const from: At = { kind: "terminal", device: id, terminal: terminal.name, hole: free };
    return act(words, () => startJumper(box.id, from));
  });
  const pigtails = terminals
    .filter(({ landed }) => landed.length > 0)
    .map(({ terminal, words }) =>
      act(words, () => {
        const done = pigtail(box, id, terminal.name);
        if (!done.ok) notify("problem", wording.notPossible, [done.refusal.message]);
      }),
    );
  return [
    ...(writes ? list(laterWording.pigtailOrJumperFrom, jumpers) : []),
    ...(writes ? list(laterWording.putWhatIsThereOnA, pigtails) : []),
    ...moreOf(item, /^Pigtail or jumper/),
    LINE,
    ...namingOf(item),
    ...selectingOf(item),
    LINE,
    ...clipActions(),
    LINE,
    remove(laterWording.remove(device.name), [{ kind: "device", id }]),
  ];
}

const where = (box: Enclosure) => ({ state: documentStore.get().state, enclosure: box.id });

function spliceActions(box: Enclosure, id: SpliceId, item: Selected): readonly Action[] {
  const splice = box.splices[id];
  if (splice === undefined) return [];
  const placed = documentStore.get().project.layout.splices[id] !== undefined;
  return [
    act(laterWording.pigtailOrJumperFromHere, () => startJumper(box.id, { kind: "splice", splice: id })),
    ...list(
      laterWording.changeConnector,
      connectors
        .filter((connector) => connector.id !== splice.connector)
        .map((connector) =>
          act(connector.title, () =>
            command({ command: "change-connector", args: { ...where(box), splice: id, connector: connector.id } }),
          ),
        ),
    ),
    ...moreOf(item, /^(Pigtail or jumper|Change the connector)/),
    ...(placed
      ? [act(laterWording.letItPlaceItself, () => command({ command: "move-splice", args: { splice: id, to: null } }))]
      : []),
    LINE,
    ...namingOf(item),
    ...selectingOf(item),
    LINE,
    remove(laterWording.removeSplice(splice.name), [{ kind: "splice", id }]),
  ];
}

function cableActions(id: CableId, item: Selected): readonly Action[] {
  const cable = shownInstallation().cables[id];
  if (cable === undefined) return [];
  const boxes = [cable.sides.a, cable.sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
  return [
    act(laterWording.showBothEnds, () => fitBoxes(boxes)),
    ...moreOf(item),
    LINE,
    ...namingOf(item),
    ...selectingOf(item),
    LINE,
    remove(laterWording.removeCable(cable.name), [{ kind: "cable", id }]),
  ];
}

function jumperActions(box: Enclosure, id: JumperId, item: Selected): readonly Action[] {
  const jumper = box.jumpers[id];
  if (jumper === undefined) return [];
  const ends = (["a", "b"] as const).flatMap((side) => {
    const end = `${id}.${side}` as EndKey;
    const words = side === "a" ? laterWording.pickUpItsFirstEnd : laterWording.pickUpItsSecondEnd;
    return box.places[end] === undefined ? [] : [act(words, () => pickUp(box.id, end))];
  });
  return [
    ...ends,
    LINE,
    ...namingOf(item),
    ...selectingOf(item),
    LINE,
    remove(laterWording.removeJumper(jumper.name), [{ kind: "jumper", id }]),
  ];
}

function endActions(box: Enclosure, end: EndKey, item: Selected): readonly Action[] {
  const place = box.places[end];
  const parsed = parseEnd(end);
  if (place === undefined || parsed === undefined) return [];
  const { at } = place;
  const jumper = parsed.of === "jumper" ? box.jumpers[parsed.jumper] : undefined;
  const cable = parsed.of === "cable" ? shownInstallation().cables[parsed.cable] : undefined;
  return [
    act(laterWording.pickUp, () => pickUp(box.id, end), "Enter"),
    ...moreOf(item),
    ...(at.kind === "capped" || at.kind === "loose" || endsAt(box, at).length === 0
      ? []
      : [act(laterWording.pigtailOrJumperFromTheSame, () => startJumper(box.id, freePlace(box, at)))]),
    LINE,
    ...namingOf(item),
    ...selectingOf(item),
    ...(cable === undefined
      ? []
      : [act(laterWording.selectCable(cable.name), () => select({ kind: "cable", id: cable.id }))]),
    ...(jumper === undefined
      ? []
      : [LINE, remove(laterWording.removeJumper(jumper.name), [{ kind: "jumper", id: jumper.id }])]),
  ];
}

/** A jumper beside a landed end takes the other hole of its terminal where there is one. */
function freePlace(box: Enclosure, at: At): At {
  if (at.kind !== "terminal") return at;
  const device = box.devices[at.device];
  const holes = device && terminalsOf(device).find(({ name }) => name === at.terminal)?.holes;
  const taken = new Set(landedAt(box, at.device, at.terminal).map(({ hole }) => hole));
  const free = Array.from({ length: holes ?? 1 }, (_, i) => i + 1).find((hole) => !taken.has(hole));
  return free === undefined ? at : { ...at, hole: free };
}

import { connectors } from "../../../shared-model/catalog/connectors.ts";
import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import type { Enclosure, Splice } from "../../../shared-model/model/enclosure.ts";
import type { LoadId } from "../../../shared-model/model/ids.ts";
import { findDevice, findSplice } from "../../../shared-model/queries/find-item.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { keyOfPlace } from "../landing-choices.ts";
import { isLooking } from "../looking.ts";
import { lineFor, openPick, runOrTell } from "../pick-store.ts";
import { showPane } from "../session-store.ts";
import { cableActions } from "./cable-actions.ts";
import { deviceActions, receptacles, terminalActions } from "./device-actions.ts";
import { addEnclosure, enclosureActions } from "./enclosure-actions.ts";
import { endActions, landHere } from "./end-actions.ts";
import { addJumperFrom } from "./jumper-action.ts";
import { moveSpliceByHand } from "./move-boxes.ts";
import type { ActionSubject, ItemAction } from "./subject.ts";
import { wording } from "./words.ts";

/** What can be done with a thing as the document is now, most used first; renaming, removing and showing left out. */
export function itemActions(subject: ActionSubject): readonly ItemAction[] {
  if (isLooking()) return [];
  const installation = shownInstallation();
  switch (subject.kind) {
    case "enclosure": {
      const enclosure = installation.enclosures[subject.id];
      return enclosure === undefined ? [] : enclosureActions(enclosure);
    }
    case "device": {
      const found = findDevice(installation, subject.id);
      return found === undefined ? [] : deviceActions(found.enclosure, found.device);
    }
    case "splice": {
      const found = findSplice(installation, subject.id);
      return found === undefined ? [] : spliceActions(found.enclosure, found.splice);
    }
    case "cable": {
      const cable = installation.cables[subject.id];
      return cable === undefined ? [] : cableActions(cable);
    }
    case "load":
      return [
        {
          title: wording.plugInElsewhere(installation.loads[subject.id]?.name ?? "it"),
          run: () => plugElsewhere(subject.id),
        },
      ];
    case "drawing":
      return [{ title: wording.addABoxOrPanel2, run: addEnclosure }, ADD_ROOM];
    case "rooms":
      return [ADD_ROOM];
    case "room":
    case "readings":
    case "reading":
    case "jumper":
    case "label":
    case "entry":
      return [];
    default:
      return insideActions(subject);
  }
}

type Inside = Extract<ActionSubject, { readonly kind: "end" | "terminal" | "bond" | "ring" | "pass-through" }>;

/** Parts of an enclosure that have no life outside it. */
function insideActions(subject: Inside): readonly ItemAction[] {
  const enclosure = shownInstallation().enclosures[subject.enclosure];
  if (enclosure === undefined) return [];
  const args = { state: documentStore.get().state, enclosure: enclosure.id };
  switch (subject.kind) {
    case "end":
      return endActions(enclosure, subject.id);
    case "terminal": {
      const device = enclosure.devices[subject.device];
      return device === undefined ? [] : terminalActions(enclosure, device, subject.id);
    }
    case "bond": {
      const name = enclosure.kind === "panel" ? wording.thePanelBond : wording.theBoxGroundScrew;
      return [
        { title: wording.landAnEndOn(name), run: () => landHere(enclosure, keyOfPlace({ kind: "bond" }), name) },
        { title: wording.pigtailOrJumperFrom(name), run: () => addJumperFrom(enclosure, { kind: "bond" }) },
      ];
    }
    case "ring":
      return [does(wording.takeItOff, { command: "remove-ring", args: { ...args, id: subject.id } })];
    case "pass-through":
      return [
        does(wording.stopRunningItThrough, { command: "remove-pass-through", args: { ...args, id: subject.id } }),
      ];
  }
}

const does = (title: string, call: TypedCall): ItemAction => ({ title, run: () => void runOrTell(call) });

const ADD_ROOM: ItemAction = { title: wording.addARoom, run: () => showPane("rooms") };

function spliceActions(enclosure: Enclosure, splice: Splice): readonly ItemAction[] {
  const { id, name } = splice;
  const place = { kind: "splice", splice: id } as const;
  return [
    { title: wording.joinAnEndTo(name), run: () => landHere(enclosure, keyOfPlace(place), `splice ${name}`) },
    { title: wording.pigtailOrJumperFrom(name), run: () => addJumperFrom(enclosure, place) },
    { title: wording.changeTheConnectorOf(name), run: () => changeConnector(enclosure, splice) },
    { title: wording.placeByHand(name), run: () => moveSpliceByHand(id, name) },
  ];
}

const NO_CONNECTOR: readonly (readonly [id: string, words: string])[] = [
  ["none", wording.noConnector],
  ["taped", wording.tapedOnly],
  ["soldered", wording.soldered],
  ["unknown", wording.notKnown],
];

function changeConnector({ id: enclosure }: Enclosure, splice: Splice): void {
  openPick({
    title: wording.connectorOf(splice.name),
    lines() {
      const { state } = documentStore.get();
      const all = [...connectors.map(({ id, title }) => [id, title] as const), ...NO_CONNECTOR];
      return all
        .filter(([id]) => id !== splice.connector)
        .map(([connector, title]) =>
          lineFor(title, { command: "change-connector", args: { state, enclosure, splice: splice.id, connector } }),
        );
    },
  });
}

function plugElsewhere(id: LoadId): void {
  const { loads } = shownInstallation();
  openPick({
    title: wording.plugInElsewhere2(loads[id]?.name ?? "it"),
    lines() {
      const { state } = documentStore.get();
      const now = shownInstallation().loads[id]?.plug;
      return receptacles()
        .filter(({ outlet }) => outlet.key !== now)
        .map(({ outlet, box }) =>
          lineFor(
            outlet.name,
            { command: "move-load", args: { state, id, plug: outlet.key } },
            wording.inWord(box.name),
          ),
        );
    },
  });
}

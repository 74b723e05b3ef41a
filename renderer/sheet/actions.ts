import { connectors } from "../../shared-model/catalog/connectors.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { DeviceId, EndKey, JumperId, SpliceId } from "../../shared-model/model/ids.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import { landedAt } from "../../shared-model/queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { usualConnector } from "../../shared-model/queries/usual-connector.ts";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { mintId } from "../state/mint-id.ts";
import { nextJumperName, nextSpliceName } from "../state/naming.ts";
import { type Action, act, command, LINE, remove } from "./action.ts";
import { arrangeActions, boxActions, clipActions, sheetActions } from "./box-actions.ts";
import { litActions } from "./energise/lit-events.ts";
import { endsAt, pickUp, startJumper } from "./hand.ts";
import type { Subject } from "./sheet-subject.ts";
import { fitBoxes } from "./sheet-view.ts";

/** What can be done with something on the sheet, most used first. */
export const actionsFor = (subject: Subject): readonly Action[] => [...litActions(subject), ...drawnActions(subject)];

/** What can be done with it as something that is drawn. */
function drawnActions(subject: Subject): readonly Action[] {
  if (subject.kind === "sheet") return sheetActions();
  if (subject.kind === "arrange") return arrangeActions();
  const box = subject.enclosure && shownInstallation().enclosures[subject.enclosure];
  if (subject.kind === "cable") return cableActions(subject.id);
  if (box === undefined) return [];
  if (subject.kind === "box") return boxActions(box);
  if (subject.kind === "device") return deviceActions(box, subject.id);
  if (subject.kind === "splice") return spliceActions(box, subject.id);
  return endActions(box, subject.id);
}

function deviceActions(box: Enclosure, id: DeviceId): readonly Action[] {
  const device = box.devices[id];
  if (device === undefined) return [];
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
    .map(({ terminal, words }) => act(words, () => pigtail(box, id, terminal.name)));
  return [
    { kind: "list", words: "Pigtail or jumper from", actions: jumpers },
    ...(pigtails.length > 0
      ? [{ kind: "list", words: "Put what is there on a pigtail", actions: pigtails } as const]
      : []),
    LINE,
    ...clipActions(),
    LINE,
    remove(`Remove ${device.name}`, [{ kind: "device", id }]),
  ];
}

/** Joins what is on a terminal in a splice and brings one jumper from it. */
function pigtail(box: Enclosure, device: DeviceId, terminal: string): void {
  const installation = shownInstallation();
  const ends = landedAt(box, device, terminal as Parameters<typeof landedAt>[2]).map(({ end }) => end);
  // The jumper is a further member of the splice, made like the others.
  const joined = ends[0] === undefined ? ends : [...ends, ends[0]];
  command({
    command: "pigtail-terminal",
    args: {
      ...where(box),
      device,
      terminal,
      splice: mintId<SpliceId>("s"),
      spliceName: nextSpliceName(installation, box, ends),
      connector: usualConnector(installation, box, joined),
      jumper: mintId<JumperId>("j"),
      jumperName: nextJumperName(box),
    },
  });
}

const where = (box: Enclosure) => ({ state: documentStore.get().state, enclosure: box.id });

function spliceActions(box: Enclosure, id: SpliceId): readonly Action[] {
  const splice = box.splices[id];
  if (splice === undefined) return [];
  const placed = documentStore.get().project.layout.splices[id] !== undefined;
  return [
    act("Pigtail or jumper from here", () => startJumper(box.id, { kind: "splice", splice: id })),
    {
      kind: "list",
      words: "Change connector",
      actions: connectors
        .filter((connector) => connector.id !== splice.connector)
        .map((connector) =>
          act(connector.title, () =>
            command({ command: "change-connector", args: { ...where(box), splice: id, connector: connector.id } }),
          ),
        ),
    },
    ...(placed
      ? [act("Let it place itself", () => command({ command: "move-splice", args: { splice: id, to: null } }))]
      : []),
    LINE,
    remove(`Remove splice ${splice.name}`, [{ kind: "splice", id }]),
  ];
}

function cableActions(id: Extract<Subject, { kind: "cable" }>["id"]): readonly Action[] {
  const cable = shownInstallation().cables[id];
  if (cable === undefined) return [];
  const boxes = [cable.sides.a, cable.sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
  return [
    act("Show both ends", () => fitBoxes(boxes)),
    LINE,
    remove(`Remove cable ${cable.name}`, [{ kind: "cable", id }]),
  ];
}

function endActions(box: Enclosure, end: EndKey): readonly Action[] {
  const place = box.places[end];
  const parsed = parseEnd(end);
  if (place === undefined || parsed === undefined) return [];
  const { at } = place;
  const args = { ...where(box), end };
  const jumper = parsed.of === "jumper" ? box.jumpers[parsed.jumper] : undefined;
  return [
    act("Pick up", () => pickUp(box.id, end), "Enter"),
    ...(at.kind === "splice" ? [act("Take out of the splice", () => command({ command: "leave-splice", args }))] : []),
    ...(at.kind === "capped" ? [] : [act("Cap it", () => command({ command: "cap-end", args }))]),
    ...(at.kind === "loose" ? [] : [act("Leave it loose", () => command({ command: "lift-end", args }))]),
    ...(at.kind === "capped"
      ? [
          act(place.spare === true ? "Not a spare" : "Mark as a spare", () =>
            command({ command: "mark-spare", args: { ...args, spare: place.spare !== true } }),
          ),
        ]
      : []),
    ...(at.kind === "capped" || at.kind === "loose" || endsAt(box, at).length === 0
      ? []
      : [act("Pigtail or jumper from the same place", () => startJumper(box.id, freePlace(box, at)))]),
    ...(jumper === undefined
      ? []
      : [LINE, remove(`Remove jumper ${jumper.name}`, [{ kind: "jumper", id: jumper.id }])]),
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

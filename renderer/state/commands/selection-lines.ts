import { connectors } from "../../../shared-model/catalog/connectors.ts";
import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import type { Command } from "../../../shared-model/commands/define-command.ts";
import { commands } from "../../../shared-model/commands/registry.ts";
import type { SpliceId } from "../../../shared-model/model/ids.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { findDevice, findSplice } from "../../../shared-model/queries/find-item.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { usualConnector } from "../../../shared-model/queries/usual-connector.ts";
import { type DocumentState, dispatch, installationOf, refusalOf } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { nextSpliceName } from "../naming.ts";
import { pigtail } from "../pigtail.ts";
import { isItem, type Selected } from "../selection.ts";
import { hold, notify, showPane } from "../session-store.ts";
import type { CommandLine } from "./entry.ts";
import { laterWording } from "./later-words.ts";

/** Commands that apply to what is selected, each named as undo will name it. */
export function selectionLines(document: DocumentState, selection: readonly Selected[]): readonly CommandLine[] {
  const calls = [...callsForAll(document, selection), ...selection.flatMap((item) => callsFor(document, item))];
  const lines = calls.filter((call) => refusalOf(call) === undefined).map((call) => lineOf(document, call));
  return [...lines, ...selection.flatMap((item) => gestures(document, item))];
}

function lineOf({ project }: DocumentState, call: TypedCall): CommandLine {
  const command = commands[call.command] as Command<unknown>;
  const title = command.label(project, call.args);
  return {
    key: `${call.command} ${title}`,
    title,
    note: laterWording.whatIsSelected,
    run: () => tell(call),
  };
}

function tell(call: TypedCall): void {
  const done = dispatch(call);
  if (!done.ok) notify("problem", laterWording.notDone, [done.refusal.message]);
}

function callsForAll(document: DocumentState, selection: readonly Selected[]): readonly TypedCall[] {
  const { state, project } = document;
  const calls: TypedCall[] = [];
  const items = selection.filter(isItem);
  if (items.length > 0) calls.push({ command: "remove-items", args: { state, items } });
  const enclosures = items.flatMap((item) => (item.kind === "enclosure" ? [item.id] : []));
  if (enclosures.length > 0) {
    for (const { id } of inOrder<Room>(project.rooms))
      calls.push({ command: "assign-room", args: { state, enclosures, room: id } });
    calls.push({ command: "assign-room", args: { state, enclosures, room: null } });
  }
  const ends = selection.flatMap((item) => (item.kind === "end" ? [item] : []));
  const first = ends[0];
  const installation = installationOf(document);
  const enclosure = first && installation.enclosures[first.enclosure];
  if (enclosure && ends.length > 1 && ends.every((end) => end.enclosure === enclosure.id)) {
    const joined = ends.map(({ id }) => id);
    const name = nextSpliceName(installation, enclosure, joined);
    const connector = usualConnector(installation, enclosure, joined);
    const splice = mintId<SpliceId>("s");
    calls.push({
      command: "splice-ends",
      args: { state, enclosure: enclosure.id, splice, name, connector, connectorAssumed: true, ends: joined },
    });
  }
  return calls;
}

function callsFor(document: DocumentState, item: Selected): readonly TypedCall[] {
  const { state, project } = document;
  const installation = installationOf(document);
  switch (item.kind) {
    case "end": {
      const args = { state, enclosure: item.enclosure, end: item.id };
      const place = installation.enclosures[item.enclosure]?.places[item.id];
      return [
        ...(place?.at.kind === "capped" ? [] : [{ command: "cap-end", args } as const]),
        ...(place?.at.kind === "loose" ? [] : [{ command: "lift-end", args } as const]),
        { command: "leave-splice", args },
        { command: "mark-spare", args: { ...args, spare: place?.spare !== true } },
      ];
    }
    case "splice": {
      const found = findSplice(installation, item.id);
      if (found === undefined) return [];
      const args = { state, enclosure: found.enclosure.id, splice: item.id };
      const others = connectors.filter(({ id }) => id !== found.splice.connector);
      const changes = others.map(
        ({ id }): TypedCall => ({ command: "change-connector", args: { ...args, connector: id } }),
      );
      const byHand = item.id in project.layout.splices;
      return byHand ? [...changes, { command: "move-splice", args: { splice: item.id, to: null } }] : changes;
    }
    case "device": {
      const found = findDevice(installation, item.id);
      if (found === undefined) return [];
      return outletsOf(found.device).flatMap(({ key }): readonly TypedCall[] => {
        const wished = key in installation.intent.outlets;
        return [
          { command: "set-outlet-wish", args: { state, outlet: key, wish: wished ? null : { wish: "protect" } } },
        ];
      });
    }
    default:
      return [];
  }
}

/** What begins something that the person finishes by hand. */
function gestures(document: DocumentState, item: Selected): readonly CommandLine[] {
  // Two terminals of a device may be called the same, so what a line is about tells it apart, not its words.
  const line = (title: string, run: () => void, about = title): CommandLine => ({
    key: `${about} ${item.id}`,
    title,
    note: laterWording.whatIsSelected,
    run,
  });
  if (item.kind === "end")
    return [line(laterWording.landThisConductorEnd, () => hold({ enclosure: item.enclosure, end: item.id }))];
  const facts = line(laterWording.changeItsNameOrFacts, () => showPane("details"));
  if (item.kind !== "device") return [facts];
  const found = findDevice(installationOf(document), item.id);
  if (found === undefined) return [];
  const { device, enclosure } = found;
  const pigtails = terminalsOf(device).map(({ name, group, label }) => {
    const bring = (): void => {
      const done = pigtail(enclosure, device.id, name);
      if (!done.ok) notify("problem", laterWording.notDone, [done.refusal.message]);
    };
    return line(
      laterWording.pigtail([device.name, group, label].filter(Boolean).join(" ")),
      bring,
      laterWording.pigtail2(name),
    );
  });
  return [facts, ...pigtails];
}

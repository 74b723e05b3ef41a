import type { Draft, Patch } from "immer";
import { sameValue } from "../../lib/same-value.ts";
import type { DeviceId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { HeldBack, Installation, Project } from "../../model/project.ts";
import { findDevice } from "../../queries/find-item.ts";
import { editedBy } from "./edited.ts";

type Item = HeldBack["items"][number];

const MOST_ITEMS = 20;

/**
 * Keeps word of an edit of as found that was not carried over. The same word twice running is kept once: a person may be
 * typing.
 */
export function holdBack(
  draft: Draft<Project>,
  before: Project,
  project: Project,
  patches: readonly Patch[],
  said: Pick<HeldBack, "title" | "because">,
): void {
  const word = { ...said, items: itemsOf(patches, before.asFound, project.asFound) };
  const { heldBack = [] } = project;
  const newest = heldBack[heldBack.length - 1];
  if (newest !== undefined && sameValue({ ...newest, id: undefined }, word)) return;
  const id = String(1 + Math.max(0, ...heldBack.map((one) => Number(one.id) || 0)));
  const made = { id, ...word } as Draft<HeldBack>;
  if (draft.heldBack === undefined) draft.heldBack = [made];
  else draft.heldBack.push(made);
}

/** Cables, devices and boxes that an edit of as found touched, in this order, as far as a person takes them in. */
function itemsOf(patches: readonly Patch[], was: Installation, is: Installation): readonly Item[] {
  const edited = editedBy(patches, was, is);
  const items = new Map<string, Item>();
  const add = (kind: Item["kind"], id: string, name: string | undefined): void => {
    if (name !== undefined) items.set(`${kind} ${id}`, { kind, id, name });
  };
  const addDevice = (id: DeviceId): void => add("device", id, (findDevice(is, id) ?? findDevice(was, id))?.device.name);
  for (const id of edited.cables) add("cable", id, (is.cables[id] ?? was.cables[id])?.name);
  for (const id of edited.enclosures) {
    const before = was.enclosures[id]?.devices ?? {};
    const now = is.enclosures[id]?.devices ?? {};
    for (const device of Object.keys({ ...before, ...now }) as DeviceId[])
      if (before[device] !== now[device]) add("device", device, (now[device] ?? before[device])?.name);
  }
  for (const id of edited.enclosures) add("enclosure", id, (is.enclosures[id] ?? was.enclosures[id])?.name);
  for (const id of edited.boxIntents) add("enclosure", id, (is.enclosures[id] ?? was.enclosures[id])?.name);
  for (const key of edited.outletWishes) addDevice(parseOutlet(key).device);
  for (const id of edited.directory) addDevice(id);
  for (const id of edited.loads)
    for (const load of [was.loads[id], is.loads[id]]) if (load !== undefined) addDevice(parseOutlet(load.plug).device);
  for (const id of edited.labels) {
    const on = (is.labels[id] ?? was.labels[id])?.on;
    if (on === undefined) continue;
    if ("device" in on) addDevice(on.device);
    else if ("cable" in on) add("cable", on.cable, (is.cables[on.cable] ?? was.cables[on.cable])?.name);
    else add("enclosure", on.enclosure, (is.enclosures[on.enclosure] ?? was.enclosures[on.enclosure])?.name);
  }
  return [...items.values()].sort(byKindAndName).slice(0, MOST_ITEMS);
}

const KINDS: readonly Item["kind"][] = ["cable", "device", "enclosure"];

const byKindAndName = (a: Item, b: Item): number =>
  KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || (a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1);

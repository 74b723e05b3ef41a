import type { Draft } from "immer";
import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId, RoomId } from "../model/ids.ts";
import { emptyProject, type Installation, type Project } from "../model/project.ts";
import type { Room } from "../model/room.ts";
import { inOrder, nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { invariantProblems } from "../queries/invariants.ts";
import { roomTable, wiring, wiringLayout } from "./args-of-wiring.ts";
import { idTable } from "./args-open.ts";
import { idText, nameText, oneOf, optional, record, sheetPoint, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { enclosureOr, installationOr } from "./find-or-refuse.ts";
import { allIds } from "./fresh-ids.ts";
import { grammar } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";
import { wrongEnclosure } from "./place-device.ts";
import { copyOf } from "./plain-data.ts";
import { innerOf, putInside } from "./put-inside.ts";
import { idsOf, insideIds, localIdsOf, renumbered, renumberedLayout } from "./renumber.ts";

type Args = CommandArgs["paste-items"];

const wording = catalogue({
  duplicate: (what: Part) => `Duplicate ${what}`,
  duplicateInto: (what: Part, box: Part) => `Duplicate ${what} into ${box}`,
  empty: "There is nothing in it to paste. Copy a box or what is in one first.",
  idInUse: "An identity for a new item is already in use. Ask for new ones and try again.",
  idMissing: "Something that is to be pasted was given no new identity. Ask for one and try again.",
  more: (first: Part, count: Part) => `${first} and ${count} more`,
  nothingInside: "There is nothing in it to paste. Copy a device or a jumper first.",
  notInside: (box: Part) => `Only devices, splices and jumpers can be pasted into ${box}. Paste boxes on the sheet.`,
  parts: "parts",
  paste: (what: Part) => `Paste ${what}`,
  pasteInto: (what: Part, box: Part) => `Paste ${what} into ${box}`,
  unsound: "What was to be pasted does not agree with itself. Copy it once more and try again.",
});

/** Puts copies of some wiring into the drawing: new boxes with all that is in them, or parts into a box that is there. */
export const pasteItems = defineCommand<Args>({
  id: "paste-items",
  args: record<Args>({
    state: stateName,
    from: wiring,
    rooms: roomTable,
    layout: wiringLayout,
    ids: idTable(idText),
    names: idTable(nameText),
    at: sheetPoint,
    into: optional(idText),
    as: optional(oneOf(["paste", "duplicate"])),
  }),
  label(project, { state, from, names, into, as }) {
    const boxes = inOrder(from.enclosures);
    const parts = into === undefined ? boxes : boxes.flatMap(({ devices }) => inOrder(devices));
    const what = list(parts.map(({ id, name }) => (Object.hasOwn(names, id) ? (names[id] ?? name) : name)));
    const where = into === undefined ? undefined : getInstallation(project, state).enclosures[into]?.name;
    if (where === undefined) return as === "duplicate" ? wording.duplicate(what) : wording.paste(what);
    return as === "duplicate" ? wording.duplicateInto(what, where) : wording.pasteInto(what, where);
  },
  refuse(project, args) {
    const { no } = installationOr(project, args.state);
    if (no !== undefined) return no;
    if (Object.keys(args.from.enclosures).length === 0) return refusal("nothing-to-paste", wording.empty);
    return notSound(args) ?? notFor(project, args) ?? idsMissing(project, args) ?? idsTaken(project, args);
  },
  apply(draft, args, before) {
    const { state, into, ids, names } = args;
    const target = draftInstallation(draft, state);
    const rooms = roomsAfter(before, args);
    if (into !== undefined) {
      const carrier = written(Object.values(args.from.enclosures)[0]);
      const copies = renumbered(innerOf(args.from), { ids: { ...ids, [carrier.id]: into }, names, rooms });
      putInside(draft, state, into, copyOf(copies), before);
      return;
    }
    const copies = copyOf(renumbered(args.from, { ids, names, rooms }));
    let order = nextOrder(before.rooms);
    for (const [old, id] of rooms)
      if (!(id in before.rooms)) {
        const room = copyOf(written(args.rooms[old]));
        draft.rooms[id] = { ...room, id, name: nameNow(names, room), order: order++ } as Draft<Room>;
      }
    addAll(target, copies, getInstallation(before, state));
    stand(draft, args);
  },
});

const list = (names: readonly string[]): string => {
  const [first = wording.parts, second] = names;
  if (second === undefined) return first;
  return names.length === 2 ? grammar.and(first, second) : wording.more(first, names.length - 1);
};

const nameNow = (names: Args["names"], { id, name }: Pick<Room, "id" | "name">): string =>
  Object.hasOwn(names, id) ? (names[id] ?? name) : name;

/** What the document has to hold of it, judged by itself: with new ids it cannot disagree with the rest. */
function notSound({ from, rooms }: Args): Refusal | undefined {
  const alone: Project = { ...emptyProject("", 2023), asFound: from, rooms };
  const sound =
    invariantProblems(alone).length === 0 &&
    Object.entries(rooms).every(([key, { id }]) => id === key) &&
    Object.values(from.enclosures).every(tiesHold);
  return sound ? undefined : refusal("not-sound", wording.unsound);
}

/** Each tie leads to another breaker of the same panel, and none leads round a circle of more than two. */
function tiesHold({ devices }: Enclosure): boolean {
  for (const start of Object.values(devices)) {
    let at = start;
    for (let steps = 0; at.tiedTo !== undefined; steps++) {
      const next = devices[at.tiedTo];
      if (next === undefined || next.id === at.id || steps > Object.keys(devices).length) return false;
      // Two that name each other are a pair.
      if (next.tiedTo === at.id) break;
      at = next;
    }
  }
  return true;
}

function notFor(project: Project, { state, from, into }: Args): Refusal | undefined {
  if (into === undefined) return undefined;
  const { found, no } = enclosureOr(project, state, into);
  if (no !== undefined) return no;
  const [carrier, ...others] = Object.values(from.enclosures);
  if (carrier === undefined || others.length > 0 || Object.keys(from.cables).length > 0)
    return refusal("not-from-inside", wording.notInside(found.enclosure.name));
  if (insideIds(carrier).length === 0) return refusal("nothing-to-paste", wording.nothingInside);
  for (const { type } of Object.values(carrier.devices)) {
    const wrong = wrongEnclosure(found.enclosure, type);
    if (wrong !== undefined || findDeviceType(type) === undefined) return wrong;
  }
  return undefined;
}

/** Ids that something new is to be known by in the whole drawing, old ones, without repeats. */
function newThings(project: Project, args: Args): readonly string[] {
  const { from, into } = args;
  const all = idsOf(into === undefined ? from : innerOf(from));
  if (into !== undefined) return all.filter((id) => !(id in from.enclosures));
  const rooms = roomsJoined(project, args);
  return [...all, ...Object.keys(args.rooms).filter((id) => !rooms.has(id as RoomId))];
}

const newIdOf = ({ ids }: Args, id: string): string | undefined => (Object.hasOwn(ids, id) ? ids[id] : undefined);

function idsMissing(project: Project, args: Args): Refusal | undefined {
  const local =
    args.into === undefined ? Object.values(args.from.enclosures).flatMap((one) => localIdsOf(one).flat()) : [];
  if ([...newThings(project, args), ...local].every((id) => newIdOf(args, id) !== undefined)) return undefined;
  return refusal("id-missing", wording.idMissing);
}

function idsTaken(project: Project, args: Args): Refusal | undefined {
  const old = newThings(project, args);
  const fresh = new Set(old.map((id) => newIdOf(args, id)));
  const taken = allIds(project);
  const boxes = args.into === undefined ? Object.values(args.from.enclosures) : [];
  const clash = boxes.some((one) =>
    localIdsOf(one).some((ids) => new Set(ids.map((id) => newIdOf(args, id))).size < ids.length),
  );
  if (!clash && fresh.size === old.length && ![...fresh].some((id) => id !== undefined && taken.has(id)))
    return undefined;
  return refusal("id-in-use", wording.idInUse);
}

/** Rooms of the drawing that rooms of the wiring join: of the same name and kinds. */
function roomsJoined({ rooms }: Project, args: Args): ReadonlyMap<RoomId, RoomId> {
  const joined = new Map<RoomId, RoomId>();
  const kinds = (room: Room): string => [...new Set(room.kinds)].sort().join(" ");
  for (const room of Object.values<Room>(args.rooms)) {
    const same = inOrder<Room>(rooms).find((one) => one.name === room.name && kinds(one) === kinds(room));
    if (same !== undefined) joined.set(room.id, same.id);
  }
  return joined;
}

function roomsAfter(project: Project, args: Args): ReadonlyMap<RoomId, RoomId> {
  if (args.into !== undefined) return new Map();
  const after = new Map(roomsJoined(project, args));
  for (const id of Object.keys(args.rooms) as RoomId[])
    if (!after.has(id)) after.set(id, written(newIdOf(args, id)) as RoomId);
  return after;
}

/** After everything that is there, in their own order. */
function addAll(target: Draft<Installation>, copies: Installation, before: Installation): void {
  const add = <T extends { readonly id: string; readonly order: number }>(
    to: Record<string, unknown>,
    from: Readonly<Record<string, T>>,
    had: Readonly<Record<string, { readonly order: number }>>,
  ): void => {
    const first = nextOrder(had);
    inOrder(from).forEach((item, index) => {
      to[item.id] = { ...item, order: first + index };
    });
  };
  add(target.enclosures, copies.enclosures, before.enclosures);
  add(target.cables, copies.cables, before.cables);
  add(target.loads, copies.loads, before.loads);
  add(target.labels, copies.labels, before.labels);
  Object.assign(target.intent.boxes, copies.intent.boxes);
  Object.assign(target.intent.outlets, copies.intent.outlets);
  Object.assign(target.directory, copies.directory);
}

/** Boxes stand as they stood to each other. */
function stand(draft: Draft<Project>, { from, layout, ids, at }: Args): void {
  for (const id of Object.keys(from.enclosures) as EnclosureId[]) {
    const { x, y } = (Object.hasOwn(layout.enclosures, id) && layout.enclosures[id]) || { x: 0, y: 0 };
    draft.layout.enclosures[written(ids[id]) as EnclosureId] = { x: at.x + x, y: at.y + y };
  }
  const { splices, cables } = copyOf(renumberedLayout(from, layout, ids));
  Object.assign(draft.layout.splices, splices);
  for (const [id, bends] of Object.entries(cables))
    draft.layout.cables[id as keyof typeof cables] = bends.map(({ x, y }) => ({ x: at.x + x, y: at.y + y }));
}

import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId, JumperId } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import type { Room } from "../../shared-model/model/room.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { mintId } from "./mint-id.ts";
import {
  deviceNames,
  everyAccount,
  freeRoomName,
  jumperNames,
  namesOf,
  nextJumperName,
  nextName,
  spliceNames,
} from "./naming.ts";

interface Named {
  readonly id: string;
  readonly name: string;
  readonly order: number;
}

/** New ids for everything in some wiring, and names that are free where it goes. */
export interface CopyIdentities {
  readonly ids: Readonly<Record<string, string>>;
  readonly names: Readonly<Record<string, string>>;
}

/**
 * Mints ids for a copy and finds names for it: a name that is free stays, "R2" becomes the next free R, and what is
 * named in words, such as a bar or a load, keeps its words. `into` is the box that the parts go into, if they go into one.
 */
export function copyIdentities(
  { asFound: from, rooms }: Pick<Project, "asFound" | "rooms">,
  project: Project,
  installation: Installation,
  into: EnclosureId | undefined,
): CopyIdentities {
  const ids: Record<string, string> = {};
  const names: Record<string, string> = {};
  const boxes = inOrder(from.enclosures);
  const mint = (prefix: string, ...tables: readonly Readonly<Record<string, unknown>>[]): void => {
    for (const table of tables) for (const id of Object.keys(table)) ids[id] ??= mintId(prefix);
  };
  const name = (items: readonly Named[], taken: Set<string>): void => {
    for (const item of items) {
      const free = freeName(item.name, taken);
      taken.add(free);
      if (free !== item.name) names[item.id] = free;
    }
  };
  const inside = (one: Enclosure): void => {
    mint("d", one.devices);
    mint("s", one.splices);
    mint("j", one.jumpers);
    mint("e", one.entries);
    mint("g", one.kind === "box" ? one.rings : {});
    mint("x", one.passThroughs);
  };
  mint("r", rooms);
  mint("b", from.enclosures);
  for (const one of boxes) inside(one);
  mint("c", from.cables);
  mint("k", from.loads);
  mint("l", from.labels);

  name(
    boxes.flatMap(({ devices }) => inOrder(devices)),
    deviceNames(installation),
  );
  const home = into === undefined ? undefined : installation.enclosures[into];
  if (home !== undefined) {
    // Splices and jumpers are named within their box: only a box that was there before can have the name already.
    let grown = home;
    for (const one of boxes) {
      name(inOrder(one.splices), spliceNames(home));
      for (const jumper of inOrder(one.jumpers)) {
        const free = jumperNames(grown).has(jumper.name) ? nextJumperName(grown) : jumper.name;
        if (free !== jumper.name) names[jumper.id] = free;
        grown = { ...grown, jumpers: { ...grown.jumpers, [ids[jumper.id] as JumperId]: { ...jumper, name: free } } };
      }
    }
    return { ids, names };
  }
  const accounts = everyAccount(installation);
  name(boxes, namesOf(...accounts.map(({ enclosures }) => enclosures)));
  name(inOrder(from.cables), namesOf(...accounts.map(({ cables }) => cables)));
  for (const room of Object.values<Room>(rooms)) {
    const free = freeRoomName(project, room.name);
    if (free !== room.name) names[room.id] = free;
  }
  return { ids, names };
}

/** A short code and a number, as the trade names things; "P" is the first of its kind. */
const NUMBERED = /^([A-Za-z]{1,3})(\d*)[a-z]?$/;

function freeName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const [, stem, number] = NUMBERED.exec(name) ?? [];
  if (stem === undefined) return name;
  return nextName(stem, number === "" ? new Set([...taken, `${stem}1`]) : taken);
}

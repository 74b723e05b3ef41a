import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { findEnclosureItem } from "../../shared-model/catalog/enclosure-items.ts";
import { STORED_WORDS } from "../../shared-model/catalog/stored-words.ts";
import type { SideTarget, TypedCall } from "../../shared-model/commands/command-args.ts";
import { freePlace } from "../../shared-model/geometry/free-place.ts";
import type { EntryMeans } from "../../shared-model/model/enclosure.ts";
import {
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EntryId,
  type RoomId,
} from "../../shared-model/model/ids.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { UNNAMED_SIDE } from "../../shared-model/queries/far-side.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { colourCode } from "../../shared-model/units/colour.ts";
import { laterWording } from "./later-words.ts";
import { mintId } from "./mint-id.ts";
import { freeRoomName, nextCableName, nextDeviceName, nextEnclosureName } from "./naming.ts";
import { stepTitle } from "./step-title.ts";

/** As many of a kind; of kinds with the same id, all count. */
export interface Counted {
  readonly id: string;
  readonly count: number;
}

/** A box as somebody who has taken off its cover describes it. */
export interface SeenBox {
  /** Of the enclosure catalogue. */
  readonly item: string;
  /** Empty: the next free one. */
  readonly name: string;
  readonly room: { readonly kind: "none" } | { readonly kind: "there"; readonly id: RoomId } | NewRoom;
  /** Of a box that may have clamps inside: whether they hold the cables, or connectors do and there are none. */
  readonly held: "clamps" | "connectors";
  /** Of the cable catalogue. */
  readonly cables: readonly Counted[];
  /** Which of the cables, counted from 1 through all kinds, is thought to bring the supply. */
  readonly supply?: number;
  /** Whether the panel that the supply comes from is left out; else it is drawn, all of it as assumed. */
  readonly panel?: "left-out";
  /** Of the device catalogue. */
  readonly devices: readonly Counted[];
}

interface NewRoom {
  readonly kind: "new";
  readonly roomKind: RoomKind;
  readonly name: string;
}

export const MOST_CABLES = 16;
export const MOST_DEVICES = 6;

/** Where a cable goes that nobody has followed: the words after "to", or none. */
const FAR_SIDE = { supply: STORED_WORDS.theSupply, other: UNNAMED_SIDE } as const;
const NOTES = {
  supply: laterWording.thoughtToBringTheSupplyNot,
  other: laterWording.whereItGoesWasNotTraced,
} as const;

export interface BoxToMake {
  readonly id: EnclosureId;
  /** The cable that is thought to bring the supply. */
  readonly supply?: CableId;
  readonly call: TypedCall<"run-together">;
}

/** Whether a box of this item leaves it open how cables are held. */
export const hasChoiceOfHold = (item: string): boolean => factsOf(item)?.internalClamps === "present";

const factsOf = (item: string) => {
  const make = findEnclosureItem(item)?.make;
  return make?.kind === "box" ? make.facts : undefined;
};

/**
 * The one command that makes such a box in a state of a document: every end capped and tagged with what its sheath and
 * colour say, the other side of every cable in open country. Commands judge it when it is run.
 */
export function boxToMake(project: Project, state: StateName, seen: SeenBox): BoxToMake {
  const installation = getInstallation(project, state);
  const id = mintId<EnclosureId>("b");
  const room = roomFor(project, seen.room);
  const name = seen.name.trim() || nextEnclosureName(installation, "box");
  const connectors = seen.held === "connectors" && hasChoiceOfHold(seen.item);
  const cables = cableCalls(installation, state, id, seen, meansFor(seen, connectors));
  const supply = cables.ids[(seen.supply ?? 0) - 1];
  const calls: TypedCall[] = [
    ...room.calls,
    {
      command: "place-enclosure",
      args: {
        state,
        id,
        item: seen.item,
        name,
        at: freePlace(project, installation, seen.item),
        ...(room.id !== undefined && { roomId: room.id }),
      },
    },
    ...(connectors ? [noClamps(state, id)] : []),
    ...deviceCalls(installation, state, id, seen.devices),
    ...cables.calls,
    ...(supply === undefined
      ? []
      : [{ command: "set-box-intent", args: { state, enclosure: id, intent: { supply } } } as const]),
  ];
  return {
    id,
    ...(supply !== undefined && { supply }),
    call: { command: "run-together", args: { title: stepTitle(laterWording.makeFromWhatIsSeen(name)), calls } },
  };
}

function roomFor(
  project: Project,
  room: SeenBox["room"],
): { readonly id?: RoomId; readonly calls: readonly TypedCall[] } {
  if (room.kind === "none") return { calls: [] };
  if (room.kind === "there") return { id: room.id, calls: [] };
  const id = mintId<RoomId>("r");
  const name = freeRoomName(project, room.name);
  return { id, calls: [{ command: "add-room", args: { id, name, kinds: [room.roomKind] } }] };
}

const noClamps = (state: StateName, id: EnclosureId): TypedCall => ({
  command: "set-property",
  args: { state, target: { kind: "enclosure", id }, field: "internalClamps", value: "none", evidence: "seen" },
});

function meansFor({ item }: SeenBox, connectors: boolean): EntryMeans {
  const clamps = factsOf(item)?.internalClamps;
  if (connectors || clamps === "none") return "external-connector";
  return clamps === "included-in-marked-volume" ? "integral-clamp" : "internal-clamp";
}

function deviceCalls(
  installation: Installation,
  state: StateName,
  enclosure: EnclosureId,
  devices: readonly Counted[],
): readonly TypedCall[] {
  const names = new Set<string>();
  return each(devices).map((type) => {
    const name = nextDeviceName(installation, type, names);
    names.add(name);
    return { command: "place-device", args: { state, enclosure, id: mintId<DeviceId>("d"), type, name } };
  });
}

function cableCalls(
  installation: Installation,
  state: StateName,
  enclosure: EnclosureId,
  seen: SeenBox,
  means: EntryMeans,
): { readonly ids: readonly CableId[]; readonly calls: readonly TypedCall[] } {
  const names = new Set<string>();
  const ids: CableId[] = [];
  const calls = each(seen.cables).flatMap((item, index): readonly TypedCall[] => {
    const id = mintId<CableId>("c");
    ids.push(id);
    const name = nextCableName(installation, names);
    names.add(name);
    const a: SideTarget = { enclosure, newEntry: mintId<EntryId>("e"), means };
    const far = seen.supply === index + 1 ? "supply" : "other";
    const b: SideTarget = { outside: FAR_SIDE[far] };
    const target = { kind: "cable", id } as const;
    return [
      { command: "route-cable", args: { state, id, item, name, a, b } },
      { command: "set-property", args: { state, target, field: "notes", value: NOTES[far] } },
      ...tagCalls(state, enclosure, id, name, item),
    ];
  });
  return { ids, calls };
}

/** "C1 BK" on each end; the second white of a cable is "C1 WH 2", as its name is everywhere. */
function tagCalls(
  state: StateName,
  enclosure: EnclosureId,
  cable: CableId,
  name: string,
  item: string,
): readonly TypedCall[] {
  const conductors = Object.entries(findCableItem(item)?.conductors ?? {});
  const seen = new Map<string, number>();
  return conductors.map(([key, { colour }]) => {
    const code = colourCode(colour);
    const count = (seen.get(code) ?? 0) + 1;
    seen.set(code, count);
    const value = `${name} ${code}${count > 1 ? ` ${count}` : ""}`;
    const target = { kind: "end", enclosure, id: cableEnd(cable, key as ConductorKey, "a") } as const;
    return { command: "set-property", args: { state, target, field: "tag", value } };
  });
}

const each = (counted: readonly Counted[]): readonly string[] =>
  counted.flatMap(({ id, count }) => Array.from({ length: count }, () => id));

import type { DeviceFamily, DeviceType } from "../../shared-model/catalog/device-type.ts";
import { deviceTypes, findDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { DeviceId, EndKey } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { findDevice } from "../../shared-model/queries/find-item.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { replacedBy, replacementFor } from "../../shared-model/queries/replaced.ts";
import { nameOfReplacement } from "../../shared-model/queries/replacement-name.ts";
import { type DocumentState, documentStore, tryCall } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { deviceNames } from "./naming.ts";
import { placeWords } from "./place-words.ts";

/** Families of which one commonly takes the place of another. */
const KIN: readonly (readonly DeviceFamily[])[] = [
  ["receptacle", "ground-fault-receptacle", "ground-fault-blank", "combination"],
  ["switch", "dimmer", "timer", "combination"],
  ["luminaire", "fan"],
  ["breaker", "fuse"],
];

/** Types that an enclosure can hold in the place of a device: those of its kind, and the others. */
export function replacementTypes(
  enclosure: Enclosure,
  device: Device,
): { readonly kin: readonly DeviceType[]; readonly others: readonly DeviceType[] } {
  const family = findDeviceType(device.type)?.family;
  const near = new Set(KIN.filter((families) => families.some((one) => one === family)).flat());
  const fitting = deviceTypes.filter(({ where }) => where === enclosure.kind);
  const isKin = (type: DeviceType): boolean => type.family === family || near.has(type.family);
  return { kin: fitting.filter(isKin), others: fitting.filter((type) => !isKin(type)) };
}

/**
 * Name for what takes the place of a device: as found it is the same device, better known; in proposed "R1b" for "R1",
 * and the name that it has for one that the plan put there before.
 */
export function replacementName({ project, state }: DocumentState, device: Device): string {
  const first = findDevice(project.asFound, device.id) !== undefined;
  if (state === "as-found" || !first) return device.name;
  return nameOfReplacement(device.name, deviceNames(getInstallation(project, state)));
}

/** What a replacement would do to the conductors on a device. */
export interface Replacement {
  readonly call: TypedCall<"replace-device">;
  readonly id: DeviceId;
  /** Ends that stay landed, each with where: "C1 BK: R1b LINE H". */
  readonly kept: readonly string[];
  readonly capped: readonly string[];
  /** Why it cannot be. */
  readonly refusal: string | undefined;
}

/** Tries a replacement on a copy. */
export function tryReplacement(enclosure: Enclosure, device: Device, type: string, name: string): Replacement {
  const { state } = documentStore.get();
  const id = mintId<DeviceId>("d");
  const call: TypedCall<"replace-device"> = {
    command: "replace-device",
    args: { state, device: device.id, id, type, name },
  };
  const tried = tryCall(call);
  if (!tried.ok) return { call, id, kept: [], capped: [], refusal: tried.refusal.message };
  const installation = getInstallation(tried.project, state);
  const after = installation.enclosures[enclosure.id] ?? enclosure;
  const landed = (Object.keys(enclosure.places) as EndKey[]).filter((end) => {
    const at = enclosure.places[end]?.at;
    return at?.kind === "terminal" && at.device === device.id;
  });
  const kept: string[] = [];
  const capped: string[] = [];
  for (const end of landed) {
    const words = nameOfEnd(installation, after, end);
    if (after.places[end]?.at.kind === "terminal") kept.push(`${words}: ${placeWords(after, end)}`);
    else capped.push(words);
  }
  return { call, id, kept, capped, refusal: undefined };
}

/** The device of the other account of the wiring that this one is linked with. */
export interface Linked {
  readonly state: StateName;
  readonly id: DeviceId;
  readonly name: string;
}

/** What a device of proposed replaces, or what replaces one of as found. */
export function linkedDevice({ asFound, proposed }: Project, state: StateName, device: DeviceId): Linked | undefined {
  if (proposed === undefined) return undefined;
  const id =
    state === "proposed" ? replacementFor(proposed, asFound).get(device) : replacedBy(proposed, asFound).get(device);
  const other: StateName = state === "proposed" ? "as-found" : "proposed";
  const found = id && findDevice(state === "proposed" ? asFound : proposed, id);
  return found && { state: other, id: found.device.id, name: found.device.name };
}

import type { Patch } from "immer";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";

export const otherKey = (state: StateName): "asFound" | "proposed" => (state === "as-found" ? "proposed" : "asFound");

type Devices = Enclosure["devices"];

/** Devices of as found by enclosure, as they stood when proposed was last checked: tables of enclosures change in place. */
export type StoodAsFound = ReadonlyMap<EnclosureId, Devices>;

/**
 * What rules may see of as found while they judge proposed, beside what they are given: whether an enclosure, a device or
 * a cable was there, and the device or cable of the same id, or that a device replaces. Where it is another than it was,
 * these are the parts of proposed to look at again.
 */
export interface SeenOfAsFound {
  /** Undefined when as found was exchanged as a whole. */
  readonly enclosures: ReadonlySet<EnclosureId> | undefined;
  /** Breakers of proposed that as found says something else about. */
  readonly breakers: ReadonlySet<DeviceId>;
  /** Enclosures of as found whose devices are others now; undefined for one that is gone. */
  readonly stood: ReadonlyMap<EnclosureId, Devices | undefined>;
}

const NOTHING: SeenOfAsFound = { enclosures: new Set(), breakers: new Set(), stood: new Map() };

/** Everything that stands as found. */
export const standing = ({ asFound }: Project): StoodAsFound =>
  new Map(Object.values(asFound.enclosures).map(({ id, devices }) => [id, devices]));

/** Read off the patches, so that it costs the edit; only a device that came, went or changed is looked for in proposed. */
export function seenOfAsFound(stood: StoodAsFound, after: Project, patches: readonly Patch[]): SeenOfAsFound {
  const { asFound, proposed } = after;
  if (proposed === undefined) return NOTHING;
  const touched = new Set<EnclosureId>();
  const cables = new Set<CableId>();
  for (const { path } of patches) {
    const [first, second, third] = path.map(String);
    if (first !== "asFound") continue;
    if (second === undefined || (third === undefined && (second === "enclosures" || second === "cables")))
      return { ...NOTHING, enclosures: undefined };
    if (second === "enclosures") touched.add(third as EnclosureId);
    else if (second === "cables") cables.add(third as CableId);
  }
  const enclosures = new Set<EnclosureId>();
  const devices = new Set<DeviceId>();
  const now = new Map<EnclosureId, Devices | undefined>();
  for (const id of touched) {
    const was = stood.get(id);
    const is = asFound.enclosures[id]?.devices;
    if (was === is) continue;
    now.set(id, is);
    if ((was === undefined) !== (is === undefined) && id in proposed.enclosures) enclosures.add(id);
    for (const device of Object.keys({ ...was, ...is }) as DeviceId[])
      if (was?.[device] !== is?.[device]) devices.add(device);
  }
  for (const id of cables)
    for (const side of Object.values(proposed.cables[id]?.sides ?? {}))
      if ("enclosure" in side) enclosures.add(side.enclosure);
  const breakers = addHolders(proposed, devices, enclosures);
  return { enclosures, breakers, stood: now };
}

/** Enclosures of proposed that hold one of some devices, or one that replaces it. @returns Those that sit in panels. */
function addHolders(
  proposed: Installation,
  devices: ReadonlySet<DeviceId>,
  enclosures: Set<EnclosureId>,
): ReadonlySet<DeviceId> {
  const breakers = new Set<DeviceId>();
  if (devices.size === 0) return breakers;
  for (const enclosure of Object.values(proposed.enclosures))
    for (const { id, replaces } of Object.values(enclosure.devices)) {
      if (!devices.has(id) && (replaces === undefined || !devices.has(replaces))) continue;
      enclosures.add(enclosure.id);
      if (enclosure.kind === "panel") breakers.add(id);
    }
  return breakers;
}

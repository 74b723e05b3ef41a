import type { BoxRoles, OutletAnswer } from "../../shared-model/answers/circuit.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import {
  type CableId,
  type ConductorKey,
  cableEnd,
  type DeviceId,
  type EnclosureId,
  parseOutlet,
} from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

type Outlets = Readonly<Record<EnclosureId, readonly OutletAnswer[]>>;
type Roles = Readonly<Record<EnclosureId, BoxRoles>>;

const kept = new WeakMap<Outlets, ReadonlyMap<DeviceId, readonly string[]>>();

/** Names of the outlets that each device protects besides its own, as they were checked. Kept while the answers are the same. */
function protectedBy(outlets: Outlets): ReadonlyMap<DeviceId, readonly string[]> {
  let found = kept.get(outlets);
  if (found === undefined) {
    found = collect(outlets);
    kept.set(outlets, found);
  }
  return found;
}

function collect(outlets: Outlets): ReadonlyMap<DeviceId, readonly string[]> {
  const found = new Map<DeviceId, string[]>();
  for (const answers of Object.values(outlets))
    for (const { outlet, name, protectedBy: devices } of answers)
      for (const device of devices) {
        if (parseOutlet(outlet).device === device) continue;
        const names = found.get(device);
        if (names === undefined) found.set(device, [name]);
        else if (!names.includes(name)) names.push(name);
      }
  return found;
}

/** The outlets that the devices of a box protect elsewhere, as one text: "d1 R2, R3", a device a line. */
export function protectsText({ devices }: Enclosure, outlets: Outlets): string {
  const all = protectedBy(outlets);
  return (Object.keys(devices) as DeviceId[])
    .flatMap((device) => {
      const names = all.get(device);
      return names === undefined ? [] : [`${device} ${names.join(", ")}`];
    })
    .join("\n");
}

/** Cables whose insulated conductors all lie behind a ground-fault device, at one end at least. */
export function cablesBehind(installation: Installation, roles: Roles): ReadonlySet<CableId> {
  const found = new Set<CableId>();
  for (const cable of Object.values(installation.cables)) if (isBehind(cable, roles)) found.add(cable.id);
  return found;
}

/** The conductors of a cable are looked at only where a box has something behind a device: few boxes of a large house do. */
function isBehind(cable: Cable, roles: Roles): boolean {
  return (["a", "b"] as const).some((side) => {
    const at = cable.sides[side];
    const behind = "enclosure" in at ? roles[at.enclosure]?.behind : undefined;
    if (behind === undefined || isEmpty(behind)) return false;
    const insulated = insulatedOf(cable);
    return insulated.length > 0 && insulated.every((key) => behind[cableEnd(cable.id, key, side)] !== undefined);
  });
}

const insulatedOf = ({ conductors }: Cable): readonly ConductorKey[] =>
  (Object.keys(conductors) as ConductorKey[]).filter((key) => !conductors[key]?.grounding);

function isEmpty(table: object): boolean {
  for (const _ in table) return false;
  return true;
}

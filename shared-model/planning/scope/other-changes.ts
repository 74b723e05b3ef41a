import type { ScopeChange, ScopeItem, ScopeKind } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Cable, CableSide } from "../../model/cable.ts";
import { type CableId, type DeviceId, parseOutlet } from "../../model/ids.ts";
import type { Load } from "../../model/load.ts";
import type { Installation, Label } from "../../model/project.ts";
import { outsideWords } from "../../queries/far-side.ts";
import { inOrder } from "../../queries/in-order.ts";
import { differentFields } from "./box-pair.ts";
import { deviceIn } from "./device-places.ts";
import { fromToWords } from "./scope-words.ts";

const wording = catalogue({
  at: (device: Part) => `at ${device}`,
  directory: (device: Part) => `directory, ${device}`,
  feet: (length: Part) => `${length} ft`,
  label: (bearer: Part) => `label on ${bearer}`,
  withGround: (size: Part) => `${size} with ground`,
});

interface Told {
  readonly kind: ScopeKind;
  readonly item: ScopeItem;
  readonly was?: string | undefined;
  readonly will?: string | undefined;
  readonly fields?: readonly string[];
}

/** What lies in no box: nothing is counted for it. */
const told = ({ kind, item, was, will, fields = [] }: Told): ScopeChange => ({
  key: `${item.kind} ${item.id}`,
  kind,
  item,
  states: kind === "new" ? "proposed" : kind === "removed" ? "as-found" : "both",
  ...(was !== undefined && { was: { words: was } }),
  ...(will !== undefined && { will: { words: will } }),
  detach: 0,
  attach: 0,
  ...(fields.length > 0 && { fields }),
});

/** Fields of which another value is another cable in the place of the old one. */
const MAKE: readonly string[] = ["item", "construction", "conductors"];

/** Cables of the same id that are made otherwise: the old one comes out. */
export function remadeCables(asFound: Installation, proposed: Installation): ReadonlySet<CableId> {
  const remade = new Set<CableId>();
  if (asFound.cables === proposed.cables) return remade;
  for (const cable of Object.values<Cable>(proposed.cables)) {
    const was = asFound.cables[cable.id];
    if (was === undefined || was === cable) continue;
    if (differentFields(was, cable).some((field) => MAKE.includes(field))) remade.add(cable.id);
  }
  return remade;
}

/** Cables that come, go, end elsewhere, or are made or laid otherwise. */
export function cableChanges(asFound: Installation, proposed: Installation): readonly ScopeChange[] {
  const changes: ScopeChange[] = [];
  if (asFound.cables === proposed.cables) return changes;
  for (const cable of inOrder<Cable>(proposed.cables)) {
    const was = asFound.cables[cable.id];
    if (was === cable) continue;
    const item: ScopeItem = { kind: "cable", id: cable.id, name: cable.name };
    const will = cableWords(proposed, cable);
    if (was === undefined) {
      changes.push(told({ kind: "new", item, will }));
      continue;
    }
    const fields = differentFields(was, cable);
    const kind: ScopeKind | undefined = fields.some((field) => MAKE.includes(field))
      ? "replaced"
      : fields.includes("sides") && ends(asFound, was) !== ends(proposed, cable)
        ? "moved"
        : fields.length > 0
          ? "changed"
          : was.name !== cable.name
            ? "relabelled"
            : undefined;
    if (kind === undefined) continue;
    const [old, now] = kind === "relabelled" ? [was.name, cable.name] : [cableWords(asFound, was), will];
    changes.push(told({ kind, item, was: old, will: now, fields }));
  }
  for (const cable of inOrder<Cable>(asFound.cables))
    if (proposed.cables[cable.id] === undefined)
      changes.push(
        told({
          kind: "removed",
          item: { kind: "cable", id: cable.id, name: cable.name },
          was: cableWords(asFound, cable),
        }),
      );
  return changes;
}

const sideWords = ({ enclosures }: Installation, side: CableSide): string =>
  "enclosure" in side ? (enclosures[side.enclosure]?.name ?? side.enclosure) : outsideWords(side.outside);

const ends = (installation: Installation, { sides }: Cable): string =>
  fromToWords(sideWords(installation, sides.a), sideWords(installation, sides.b));

/** "12 AWG, 3 conductors, B1 to B4, 30 ft". */
function cableWords(installation: Installation, cable: Cable): string {
  const conductors = Object.values(cable.conductors);
  const size = conductors.find(({ grounding }) => !grounding)?.awg ?? conductors[0]?.awg ?? "";
  const insulated = conductors.filter(({ grounding }) => !grounding).length;
  const made = `${size}/${insulated}`;
  const words = [insulated < conductors.length ? wording.withGround(made) : made, ends(installation, cable)];
  if (cable.lengthFt !== undefined) words.push(wording.feet(cable.lengthFt));
  return words.join(", ");
}

/** Loads that are plugged in elsewhere, labels, and lines of the panel directory. */
export function looseChanges(
  asFound: Installation,
  proposed: Installation,
  former: ReadonlyMap<DeviceId, DeviceId>,
): readonly ScopeChange[] {
  return [
    ...loadChanges(asFound, proposed, former),
    ...labelChanges(asFound, proposed),
    ...directoryChanges(asFound, proposed, former),
  ];
}

function loadChanges(
  asFound: Installation,
  proposed: Installation,
  former: ReadonlyMap<DeviceId, DeviceId>,
): readonly ScopeChange[] {
  const at = (load: Load): DeviceId => parseOutlet(load.plug).device;
  return tables<Load>(asFound.loads, proposed.loads).flatMap(([was, is]): readonly ScopeChange[] => {
    const load = (is ?? was) as Load;
    const item: ScopeItem = { kind: "load", id: load.id, name: load.name };
    const words = (installation: Installation, one: Load | undefined): string | undefined =>
      one && wording.at(nameOfDevice(installation, at(one)));
    const [old, now] = [words(asFound, was), words(proposed, is)];
    if (was === undefined) return [told({ kind: "new", item, will: now })];
    if (is === undefined) return [told({ kind: "removed", item, was: old })];
    const fields = differentFields(was, is, new Set(["plug"]));
    const isThere = at(was) === at(is) || former.get(at(is)) === at(was);
    if (!isThere) return [told({ kind: "moved", item, was: old, will: now, fields })];
    return fields.length === 0 ? [] : [told({ kind: "changed", item, was: old, will: now, fields })];
  });
}

const nameOfDevice = (installation: Installation, id: DeviceId): string => deviceIn(installation, id)?.name ?? id;

function labelChanges(asFound: Installation, proposed: Installation): readonly ScopeChange[] {
  return tables<Label>(asFound.labels, proposed.labels).flatMap(([was, is]): readonly ScopeChange[] => {
    const label = (is ?? was) as Label;
    const installation = is === undefined ? asFound : proposed;
    const item: ScopeItem = { kind: "label", id: label.id, name: wording.label(bearerOf(installation, label)) };
    if (was === undefined) return [told({ kind: "new", item, will: label.wording })];
    if (is === undefined) return [told({ kind: "removed", item, was: label.wording })];
    if (was.wording === is.wording) return [];
    return [told({ kind: "relabelled", item, was: was.wording, will: is.wording, fields: ["wording"] })];
  });
}

function bearerOf(installation: Installation, { on }: Label): string {
  if ("device" in on) return nameOfDevice(installation, on.device);
  if ("enclosure" in on) return installation.enclosures[on.enclosure]?.name ?? on.enclosure;
  return installation.cables[on.cable]?.name ?? on.cable;
}

function directoryChanges(
  asFound: Installation,
  proposed: Installation,
  former: ReadonlyMap<DeviceId, DeviceId>,
): readonly ScopeChange[] {
  const changes: ScopeChange[] = [];
  for (const id of Object.keys(proposed.directory).sort() as DeviceId[]) {
    const [was, is] = [asFound.directory[former.get(id) ?? id], proposed.directory[id]];
    if (was === is) continue;
    const item: ScopeItem = { kind: "directory", id, name: wording.directory(nameOfDevice(proposed, id)) };
    changes.push(told({ kind: was === undefined ? "new" : "relabelled", item, was, will: is }));
  }
  const there = new Set((Object.keys(proposed.directory) as DeviceId[]).map((id) => former.get(id) ?? id));
  for (const id of Object.keys(asFound.directory).sort() as DeviceId[])
    if (!there.has(id) && proposed.directory[id] === undefined)
      changes.push(
        told({
          kind: "removed",
          item: { kind: "directory", id, name: wording.directory(nameOfDevice(asFound, id)) },
          was: asFound.directory[id],
        }),
      );
  return changes;
}

/** Every thing of two tables in its order, with what is the same object in both left out. */
function tables<T extends { readonly id: string; readonly order: number }>(
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): readonly (readonly [was: T | undefined, is: T | undefined])[] {
  if (before === after) return [];
  return [
    ...inOrder(after).flatMap((is) => (before[is.id] === is ? [] : [[before[is.id], is] as const])),
    ...inOrder(before).flatMap((was) => (after[was.id] === undefined ? [[was, undefined] as const] : [])),
  ];
}

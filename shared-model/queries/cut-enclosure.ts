import type { Device } from "../model/device.ts";
import type { Enclosure, Entry } from "../model/enclosure.ts";
import type { Evidence } from "../model/evidence.ts";
import type { DeviceId, EndKey, EntryId, JumperId, SpliceId } from "../model/ids.ts";
import { jumperEnd, parseEnd } from "../model/ids.ts";
import type { At, Place } from "../model/place.ts";
import type { Installation } from "../model/project.ts";
import { cablesInto } from "./cables-into.ts";
import { keptEntries } from "./kept-entries.ts";

/** What is chosen inside an enclosure that is not chosen itself. */
export interface InnerItems {
  readonly devices: ReadonlySet<DeviceId>;
  readonly splices: ReadonlySet<SpliceId>;
  readonly jumpers: ReadonlySet<JumperId>;
}

/** A copy of an enclosure with only some of the cables: ends of the others go, with splices and entries left empty. */
export function wholeEnclosure(
  installation: Installation,
  enclosure: Enclosure,
  cables: Installation["cables"],
): Enclosure {
  const passThroughs = keptEntries(enclosure.passThroughs, ({ cable }) => cable in cables);
  const places = keptEntries(enclosure.places, (_place, end) => {
    const parsed = parseEnd(end);
    return parsed?.of !== "cable" || parsed.cable in cables;
  });
  return {
    ...enclosure,
    entries: withoutEmptied(installation, enclosure, cables),
    devices: standAlone(enclosure.devices),
    splices: joining(enclosure.splices, places),
    passThroughs,
    places,
  } as Enclosure;
}

/** Entries that something still goes through, and those that nothing went through before. */
function withoutEmptied(
  installation: Installation,
  enclosure: Enclosure,
  cables: Installation["cables"],
): Readonly<Record<EntryId, Entry>> {
  const before = new Set<EntryId>();
  const now = new Set<EntryId>();
  for (const { cable, entry } of cablesInto(installation.cables, enclosure.id)) {
    before.add(entry);
    if (cable.id in cables) now.add(entry);
  }
  for (const { cable, entryIn, entryOut } of Object.values(enclosure.passThroughs)) {
    before.add(entryIn).add(entryOut);
    if (cable in cables) now.add(entryIn).add(entryOut);
  }
  return keptEntries(enclosure.entries, (_entry, id) => now.has(id as EntryId) || !before.has(id as EntryId));
}

/**
 * A copy of an enclosure with nothing but what was chosen inside it and the jumpers between that; undefined when
 * nothing remains. A splice whose members all stay behind is none.
 */
export function innerPart(enclosure: Enclosure, chosen: InnerItems): Enclosure | undefined {
  const among = (at: At | undefined): boolean =>
    (at?.kind === "terminal" && chosen.devices.has(at.device)) ||
    (at?.kind === "splice" && chosen.splices.has(at.splice));
  const jumpers = keptEntries(enclosure.jumpers, ({ id }) => {
    const ends = [jumperEnd(id, "a"), jumperEnd(id, "b")];
    return chosen.jumpers.has(id) || ends.every((end) => among(enclosure.places[end]?.at));
  });
  const places: Record<EndKey, Place> = {};
  for (const { id } of Object.values(jumpers)) {
    for (const end of [jumperEnd(id, "a"), jumperEnd(id, "b")]) {
      const place = enclosure.places[end];
      if (place === undefined) continue;
      const stays = place.at.kind !== "terminal" && place.at.kind !== "splice";
      places[end] = stays || among(place.at) ? place : capped(place);
    }
  }
  const devices = standAlone(keptEntries(enclosure.devices, ({ id }) => chosen.devices.has(id)));
  if (Object.keys(devices).length + Object.keys(jumpers).length === 0) return undefined;
  return {
    ...enclosure,
    entries: {},
    devices,
    splices: joining(enclosure.splices, places),
    jumpers,
    passThroughs: {},
    places,
  } as Enclosure;
}

/** What is known of the end stays, what is known of its joint does not. */
function capped({ at: _at, spare: _spare, jointOhm: _ohm, ...place }: Place): Place {
  return { ...withoutMarks(place, "at", "spare", "jointOhm"), at: { kind: "capped" } };
}

const joining = (splices: Enclosure["splices"], places: Enclosure["places"]): Enclosure["splices"] => {
  const joined = new Set<SpliceId>();
  for (const { at } of Object.values(places)) if (at.kind === "splice") joined.add(at.splice);
  return keptEntries(splices, ({ id }) => joined.has(id));
};

/** A copy replaces nothing, and is tied to no breaker that does not come along. */
function standAlone(devices: Enclosure["devices"]): Enclosure["devices"] {
  const copies: Record<DeviceId, Device> = {};
  for (const { replaces: _old, tiedTo, ...device } of Object.values(devices)) {
    const tied = tiedTo !== undefined && tiedTo in devices;
    copies[device.id] = tied
      ? { ...withoutMarks(device, "replaces"), tiedTo }
      : withoutMarks(device, "replaces", "tiedTo");
  }
  return copies;
}

function withoutMarks<T extends { readonly evidence?: Evidence }>(entity: T, ...fields: readonly string[]): T {
  const { evidence, ...rest } = entity;
  if (evidence === undefined) return entity;
  const marks = Object.entries(evidence).filter(([field]) => !fields.includes(field));
  return { ...rest, ...(marks.length > 0 && { evidence: Object.fromEntries(marks) }) } as T;
}

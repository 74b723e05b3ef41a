import type { Draft } from "immer";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, ConductorKey, EnclosureId, EndKey, EntryId, PassThroughId, SpliceId } from "../model/ids.ts";
import { cableEnd, jumperEnd, parseOutlet } from "../model/ids.ts";
import type { At, Place } from "../model/place.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { findSplice } from "../queries/find-item.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { emptiedEntries } from "./entries.ts";
import { unpin } from "./flow/shared-tables.ts";
import { draftInstallation, forgetEvidence, moveEnds, otherState, written } from "./move-ends.ts";
import type { Gone } from "./what-goes.ts";

const CAPPED: At = { kind: "capped" };

/** Ends of a cable that goes, and the entries that they came by, in one enclosure. */
interface CableEndsHere {
  readonly ends: EndKey[];
  readonly entries: EntryId[];
}

/** One removal under way. */
interface Removal {
  readonly draft: Draft<Project>;
  readonly state: StateName;
  readonly before: Project;
  readonly installation: Installation;
  readonly gone: Gone;
  readonly cableEnds: ReadonlyMap<EnclosureId, CableEndsHere>;
}

/** Takes what `whatGoes` found out of one state, and every reference to it; ends that lose their place are capped. */
export function takeAway(draft: Draft<Project>, state: StateName, gone: Gone, before: Project): void {
  const installation = getInstallation(before, state);
  const target = draftInstallation(draft, state);
  const cableEnds = cableEndsOf(installation, gone.cables);
  const removal: Removal = { draft, state, before, installation, gone, cableEnds };
  for (const enclosure of Object.values(installation.enclosures))
    if (!gone.enclosures.has(enclosure.id) && isTouched(removal, enclosure)) clearEnclosure(removal, enclosure);
  for (const id of gone.enclosures) delete target.enclosures[id];
  for (const id of gone.cables) delete target.cables[id];
  for (const id of gone.loads) delete target.loads[id];
  for (const id of gone.labels) delete target.labels[id];
  clearIntent(target, installation, gone);
  for (const device of gone.devices) if (device in installation.directory) delete target.directory[device];
  clearShared(draft, otherState(before, state), gone, before);
  clearReplaces(draft, state, gone, before);
  for (const room of gone.rooms) delete draft.rooms[room];
}

/** Read off the sides of the cables, so that no enclosure is searched for them. */
function cableEndsOf(
  installation: Installation,
  cables: ReadonlySet<CableId>,
): ReadonlyMap<EnclosureId, CableEndsHere> {
  const byEnclosure = new Map<EnclosureId, CableEndsHere>();
  for (const id of cables) {
    const cable = installation.cables[id];
    for (const side of cable === undefined ? [] : (["a", "b"] as const)) {
      const where = cable?.sides[side];
      if (cable === undefined || where === undefined || !("enclosure" in where)) continue;
      const here = byEnclosure.get(where.enclosure) ?? { ends: [], entries: [] };
      byEnclosure.set(where.enclosure, here);
      here.entries.push(where.entry);
      for (const key of Object.keys(cable.conductors) as ConductorKey[]) here.ends.push(cableEnd(id, key, side));
    }
  }
  return byEnclosure;
}

/** Asked of every enclosure of the drawing, so it makes no lists. */
function isTouched({ gone, cableEnds }: Removal, enclosure: Enclosure): boolean {
  if (cableEnds.has(enclosure.id) || hasAny(enclosure.devices, gone.devices)) return true;
  if (hasAny(enclosure.splices, gone.splices) || hasAny(enclosure.jumpers, gone.jumpers)) return true;
  if (gone.cables.size === 0) return false;
  for (const id in enclosure.passThroughs) {
    const pass = enclosure.passThroughs[id as PassThroughId];
    if (pass !== undefined && gone.cables.has(pass.cable)) return true;
  }
  return false;
}

function hasAny<K extends string>(table: Readonly<Record<K, unknown>>, ids: ReadonlySet<K>): boolean {
  if (ids.size === 0) return false;
  for (const id in table) if (ids.has(id)) return true;
  return false;
}

const NO_CABLE_ENDS: CableEndsHere = { ends: [], entries: [] };

function clearEnclosure(removal: Removal, enclosure: Enclosure): void {
  const { draft, state, before, installation, gone, cableEnds } = removal;
  const devices = present(enclosure.devices, gone.devices);
  const splices = present(enclosure.splices, gone.splices);
  const jumpers = present(enclosure.jumpers, gone.jumpers);
  const { ends, entries } = cableEnds.get(enclosure.id) ?? NO_CABLE_ENDS;
  const passes = Object.values(enclosure.passThroughs).filter((pass) => gone.cables.has(pass.cable));
  const box = written(draftInstallation(draft, state).enclosures[enclosure.id]);
  const vanish = [...ends, ...jumpers.flatMap((id) => [jumperEnd(id, "a"), jumperEnd(id, "b")])];
  const uncapped = (Object.keys(enclosure.places) as EndKey[]).filter((end) => losesPlace(enclosure.places[end], gone));
  // What vanishes is capped first as well, so that a splice notices when its last member leaves.
  const moves = new Map<EndKey, At>([...vanish, ...uncapped].map((end) => [end, CAPPED]));
  moveEnds(draft, state, enclosure.id, moves, before);
  for (const end of vanish) delete box.places[end];
  for (const id of devices) delete box.devices[id];
  for (const id of splices) delete box.splices[id];
  for (const id of jumpers) delete box.jumpers[id];
  for (const pass of passes) delete box.passThroughs[pass.id];
  const candidates = [...entries, ...passes.flatMap((pass) => [pass.entryIn, pass.entryOut])];
  const isGone = { cable: (id: string) => gone.cables.has(id as CableId), passThrough: () => false };
  for (const entry of emptiedEntries(installation, enclosure, candidates, isGone)) delete box.entries[entry];
  for (const device of Object.values(enclosure.devices))
    if (device.tiedTo !== undefined && gone.devices.has(device.tiedTo) && !gone.devices.has(device.id))
      clearField(written(box.devices[device.id]), "tiedTo");
}

const losesPlace = (place: Place | undefined, gone: Gone): boolean =>
  (place?.at.kind === "terminal" && gone.devices.has(place.at.device)) ||
  (place?.at.kind === "splice" && gone.splices.has(place.at.splice));

const present = <K extends string>(table: Readonly<Record<K, unknown>>, ids: ReadonlySet<K>): readonly K[] =>
  ids.size === 0 ? [] : (Object.keys(table) as K[]).filter((id) => ids.has(id));

function clearIntent(target: Draft<Installation>, { intent }: Installation, gone: Gone): void {
  for (const key of Object.keys(intent.outlets) as (keyof typeof intent.outlets)[])
    if (gone.devices.has(parseOutlet(key).device)) delete target.intent.outlets[key];
  for (const [box, one] of Object.entries(intent.boxes)) {
    if (gone.enclosures.has(box as EnclosureId)) delete target.intent.boxes[box as EnclosureId];
    else if (namesCable(one, gone.cables)) forgetCables(target, box as EnclosureId, gone.cables);
  }
}

const namesCable = (intent: Installation["intent"]["boxes"][EnclosureId], cables: ReadonlySet<CableId>): boolean =>
  (intent.supply !== undefined && cables.has(intent.supply)) ||
  Object.keys(intent.protect ?? {}).some((cable) => cables.has(cable as CableId));

/** Takes cables out of what one box is meant to do; an intent that says nothing more goes. */
export function forgetCables(target: Draft<Installation>, box: EnclosureId, cables: ReadonlySet<CableId>): void {
  const intent = target.intent.boxes[box];
  if (intent === undefined) return;
  if (intent.supply !== undefined && cables.has(intent.supply)) delete intent.supply;
  const { protect } = intent;
  if (protect !== undefined) {
    for (const cable of cables) if (cable in protect) delete protect[cable];
    if (Object.keys(protect).length === 0) delete intent.protect;
  }
  if (Object.keys(intent).length === 0) delete target.intent.boxes[box];
}

/** What both states share: where things stand, and pictures of boxes. It stays while the other state has the item. */
function clearShared(draft: Draft<Project>, other: Installation | undefined, gone: Gone, before: Project): void {
  const { layout, attachments } = before;
  for (const id of gone.enclosures) {
    if (other !== undefined && id in other.enclosures) continue;
    if (id in layout.enclosures) delete draft.layout.enclosures[id];
    unpin(draft, layout, id);
    for (const attachment of Object.values(attachments))
      if (attachment.enclosure === id) delete written(draft.attachments[attachment.id]).enclosure;
  }
  for (const id of gone.cables)
    if (id in layout.cables && !(other !== undefined && id in other.cables)) delete draft.layout.cables[id];
  for (const id of present(layout.splices, gone.splices as ReadonlySet<SpliceId>))
    if (other === undefined || findSplice(other, id) === undefined) delete draft.layout.splices[id];
  for (const id of gone.rooms) if (id in layout.rooms) delete draft.layout.rooms[id];
  if (gone.rooms.size > 0) clearRooms(draft, gone, before);
}

function clearRooms(draft: Draft<Project>, gone: Gone, before: Project): void {
  for (const state of ["as-found", "proposed"] as const) {
    const installation = state === "as-found" ? before.asFound : before.proposed;
    for (const enclosure of Object.values(installation?.enclosures ?? {})) {
      if (enclosure.roomId === undefined || !gone.rooms.has(enclosure.roomId)) continue;
      const box = draftInstallation(draft, state).enclosures[enclosure.id];
      if (box !== undefined) clearField(box, "roomId");
    }
  }
}

/** A device of the other state cannot replace what is not there. */
function clearReplaces(draft: Draft<Project>, state: StateName, gone: Gone, before: Project): void {
  const other = otherState(before, state);
  if (other === undefined || gone.devices.size === 0) return;
  const target = draftInstallation(draft, state === "as-found" ? "proposed" : "as-found");
  for (const enclosure of Object.values(other.enclosures)) {
    for (const device of Object.values(enclosure.devices)) {
      if (device.replaces !== undefined && gone.devices.has(device.replaces))
        clearField(written(written(target.enclosures[enclosure.id]).devices[device.id]), "replaces");
    }
  }
}

/** Takes an optional field away with what was known of it. */
export function clearField<T extends { evidence?: Draft<Record<string, unknown>> }>(
  entity: T,
  field: keyof T & string,
): void {
  delete entity[field];
  forgetEvidence(entity, field);
}

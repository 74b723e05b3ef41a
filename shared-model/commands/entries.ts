import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure, EntryMeans } from "../model/enclosure.ts";
import type { EnclosureId, EntryId } from "../model/ids.ts";
import { parseEnd } from "../model/ids.ts";
import type { Installation, Project } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import type { EntryTarget } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { idInUseHere } from "./fresh-ids.ts";

const wording = catalogue({
  none: (box: Part) => `${box} has no such entry. Pick one of its entries, or make a new one.`,
});

/** Why a cable cannot use an entry: it is not there, or the id for a new one is taken. */
export function noSuchEntry(project: Project, enclosure: Enclosure, target: EntryTarget): Refusal | undefined {
  if ("newEntry" in target) return idInUseHere(project, enclosure.id, "entries", target.newEntry);
  if (target.entry in enclosure.entries) return undefined;
  return refusal("unknown-entry", wording.none(enclosure.name));
}

/** Makes the entry where it is new; gives its id. */
export function makeEntry(installation: Draft<Installation>, enclosure: EnclosureId, target: EntryTarget): EntryId {
  if (!("newEntry" in target)) return target.entry;
  const box = installation.enclosures[enclosure];
  if (box === undefined) throw new Error(`No enclosure ${enclosure}.`);
  const means: EntryMeans = target.means;
  box.entries[target.newEntry] = { id: target.newEntry, means, order: nextOrder(box.entries) };
  return target.newEntry;
}

/** Cables that have a side in an enclosure, read off its places: an end of each lies there. */
export function cablesAt(installation: Installation, enclosure: Enclosure): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const end of Object.keys(enclosure.places)) {
    const parsed = parseEnd(end);
    if (parsed?.of === "cable" && parsed.cable in installation.cables) ids.add(parsed.cable);
  }
  return ids;
}

/** Entries of `candidates` that nothing goes through any more once some cables and pass-throughs are gone. */
export function emptiedEntries(
  installation: Installation,
  enclosure: Enclosure,
  candidates: Iterable<EntryId>,
  isGone: { readonly cable: (id: string) => boolean; readonly passThrough: (id: string) => boolean },
): readonly EntryId[] {
  const used = new Set<EntryId>();
  for (const id of cablesAt(installation, enclosure)) {
    if (isGone.cable(id)) continue;
    const cable = installation.cables[id as keyof typeof installation.cables];
    for (const side of cable === undefined ? [] : [cable.sides.a, cable.sides.b]) {
      if ("enclosure" in side && side.enclosure === enclosure.id) used.add(side.entry);
    }
  }
  for (const pass of Object.values(enclosure.passThroughs)) {
    if (isGone.passThrough(pass.id) || isGone.cable(pass.cable)) continue;
    used.add(pass.entryIn).add(pass.entryOut);
  }
  return [...new Set(candidates)].filter((entry) => !used.has(entry) && entry in enclosure.entries);
}

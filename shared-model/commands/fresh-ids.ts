import { catalogue } from "../lib/catalogue.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Project } from "../model/project.ts";
import { type Refusal, refusal } from "./define-command.ts";

const wording = catalogue({
  inUse: "The identity for the new item is already in use. Ask for a new one and try again.",
});

/**
 * Why ids cannot be given to something new: an id names one physical thing in both states and in every table, so it must
 * be used nowhere. A scan over the enclosures, a few look-ups each, costs less than keeping an index true.
 */
export function idsInUse(project: Project, ...ids: readonly string[]): Refusal | undefined {
  if (new Set(ids).size < ids.length) return inUse();
  const installations = project.proposed === undefined ? [project.asFound] : [project.asFound, project.proposed];
  for (const id of ids) {
    if (id in project.rooms || id in project.readings || id in project.attachments) return inUse();
    if (installations.some((installation) => usesId(installation, id))) return inUse();
  }
  return undefined;
}

function usesId(installation: Installation, id: string): boolean {
  const { enclosures, cables, loads, labels } = installation;
  if (id in enclosures || id in cables || id in loads || id in labels) return true;
  for (const enclosure of Object.values(enclosures)) {
    if (id in enclosure.devices || id in enclosure.splices || id in enclosure.jumpers) return true;
  }
  return false;
}

/** Every id that names one thing in the whole drawing, for a command that makes very many new ones. */
export function allIds({ asFound, proposed, rooms, readings, attachments }: Project): ReadonlySet<string> {
  const ids = new Set([rooms, readings, attachments].flatMap((table) => Object.keys(table)));
  for (const installation of proposed === undefined ? [asFound] : [asFound, proposed]) {
    const { enclosures, cables, loads, labels } = installation;
    for (const table of [enclosures, cables, loads, labels]) for (const id in table) ids.add(id);
    for (const { devices, splices, jumpers } of Object.values(enclosures))
      for (const table of [devices, splices, jumpers]) for (const id in table) ids.add(id);
  }
  return ids;
}

/** Entries, rings and pass-throughs are looked up inside their enclosure only, in both states. */
export function idInUseHere(
  { asFound, proposed }: Project,
  enclosure: EnclosureId,
  table: "entries" | "rings" | "passThroughs",
  id: string,
): Refusal | undefined {
  const taken = [asFound, proposed].some((state) => {
    const here = state?.enclosures[enclosure];
    if (here === undefined) return false;
    return id in (table === "rings" ? (here.kind === "box" ? here.rings : {}) : here[table]);
  });
  return taken ? inUse() : undefined;
}

const inUse = (): Refusal => refusal("id-in-use", wording.inUse);

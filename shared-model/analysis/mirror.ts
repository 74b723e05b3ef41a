import type { Patch } from "immer";
import { applyPatches, applyPatchesTo } from "../commands/run-command.ts";
import { copyTable } from "../lib/copy-table.ts";
import { sameValue } from "../lib/same-value.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Project } from "../model/project.ts";

/**
 * A document that follows another by its patches. Its tables of enclosures are its own and change in place: copying a
 * table of a thousand at every landing would cost more than checking what was landed. So a former revision shares its
 * table with the present one, and only enclosures themselves tell by identity what changed.
 *
 * What is equal as found and proposed is one object in both, so that what is derived of it is derived once.
 */
export interface Mirror {
  readonly project: Project;
  /** Throws when the patches do not belong to the document as it stands. */
  follow(patches: readonly Patch[]): Project;
  /** The document as it stands, with tables that stay as they are: for commands to be tried on. */
  copy(): Project;
}

export function createMirror(document: Project): Mirror {
  let project = shareAll(withOwnTables(document));
  return {
    get project() {
      return project;
    },
    follow(patches) {
      project = patches.every(isInsideEnclosures)
        ? changeEnclosures(project, patches)
        : shareAll(withOwnTables(applyPatches(withOwnTables(project), patches)));
      return project;
    },
    copy: () => withOwnTables(project),
  };
}

type StateKey = "asFound" | "proposed";

const isInsideEnclosures = ({ path }: Patch): boolean =>
  (path[0] === "asFound" || path[0] === "proposed") && path[1] === "enclosures" && path.length >= 3;

/** A copy that shares everything but its tables of enclosures. */
function withOwnTables(project: Project): Project {
  const own = (installation: Installation): Installation => ({
    ...installation,
    enclosures: copyTable(installation.enclosures),
  });
  const copy: Project = { ...project, asFound: own(project.asFound) };
  return project.proposed === undefined ? copy : { ...copy, proposed: own(project.proposed) };
}

function changeEnclosures(project: Project, patches: readonly Patch[]): Project {
  const changed = { ...project };
  const byEnclosure = new Map<
    string,
    { readonly state: StateKey; readonly id: EnclosureId; readonly patches: Patch[] }
  >();
  for (const patch of patches) {
    const [state, , id, ...inside] = patch.path as [StateKey, "enclosures", EnclosureId, ...Patch["path"]];
    const key = `${state}/${id}`;
    const group = byEnclosure.get(key) ?? { state, id, patches: [] };
    byEnclosure.set(key, group);
    group.patches.push({ ...patch, path: ["enclosure", ...inside] });
  }
  for (const { state, id, patches: own } of byEnclosure.values()) {
    const installation = changed[state];
    if (installation === undefined) throw new Error(`The document has no state ${state}.`);
    const enclosures = installation.enclosures as Record<EnclosureId, Enclosure>;
    const before = enclosures[id];
    const after = applyPatchesTo<{ enclosure?: Enclosure }>(
      before === undefined ? {} : { enclosure: before },
      own,
    ).enclosure;
    if (after === undefined) delete enclosures[id];
    else enclosures[id] = after;
    changed[state] = { ...installation };
  }
  for (const { id } of byEnclosure.values()) shareEnclosure(changed, id);
  return changed;
}

/** Costs a look at every enclosure and cable where they are one already. @param project With tables of its own. */
function shareAll(project: Project): Project {
  const { asFound, proposed } = project;
  if (proposed === undefined) return project;
  for (const id in proposed.enclosures) shareEnclosure(project, id as EnclosureId);
  const shared = { ...proposed, cables: sharedTable(asFound.cables, proposed.cables) };
  for (const name of ["loads", "labels"] as const)
    if (sameValue(asFound[name], proposed[name])) Object.assign(shared, { [name]: asFound[name] });
  return { ...project, proposed: shared };
}

function shareEnclosure({ asFound, proposed }: Project, id: EnclosureId): void {
  const [one, other] = [asFound.enclosures[id], proposed?.enclosures[id]];
  if (proposed === undefined || one === undefined || one === other || !sameValue(one, other)) return;
  (proposed.enclosures as Record<EnclosureId, Enclosure>)[id] = one;
}

/** The one table where both are equal; else the other with the equal entries of the one. */
function sharedTable<T extends Readonly<Record<string, unknown>>>(one: T, other: T): T {
  if (sameValue(one, other)) return one;
  const shared: Record<string, unknown> = {};
  for (const key in other) shared[key] = sameValue(one[key], other[key]) ? one[key] : other[key];
  return shared as T;
}

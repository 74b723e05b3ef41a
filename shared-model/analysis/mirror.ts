import type { Patch } from "immer";
import { applyPatches, applyPatchesTo } from "../commands/run-command.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Installation, Project } from "../model/project.ts";

/**
 * A document that follows another by its patches. Its tables of enclosures are its own and change in place: copying a
 * table of a thousand at every landing would cost more than checking what was landed. So a former revision shares its
 * table with the present one, and only enclosures themselves tell by identity what changed.
 */
export interface Mirror {
  readonly project: Project;
  /** Throws when the patches do not belong to the document as it stands. */
  follow(patches: readonly Patch[]): Project;
  /** The document as it stands, with tables that stay as they are: for commands to be tried on. */
  copy(): Project;
}

export function createMirror(document: Project): Mirror {
  let project = withOwnTables(document);
  return {
    get project() {
      return project;
    },
    follow(patches) {
      project = patches.every(isInsideEnclosures)
        ? changeEnclosures(project, patches)
        : withOwnTables(applyPatches(withOwnTables(project), patches));
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
    enclosures: { ...installation.enclosures },
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
  return changed;
}

import type { Patch } from "immer";
import type { CableId, DeviceId, EnclosureId, LabelId, LoadId, OutletKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";

/** Entries of the tables of as found that an edit touched. */
export interface Edited {
  readonly enclosures: Set<EnclosureId>;
  readonly cables: Set<CableId>;
  readonly loads: Set<LoadId>;
  readonly labels: Set<LabelId>;
  readonly boxIntents: Set<EnclosureId>;
  readonly outletWishes: Set<OutletKey>;
  readonly directory: Set<DeviceId>;
}

export const emptyEdited = (): Edited => ({
  enclosures: new Set(),
  cables: new Set(),
  loads: new Set(),
  labels: new Set(),
  boxIntents: new Set(),
  outletWishes: new Set(),
  directory: new Set(),
});

/**
 * What an edit touched of as found, read off the paths of its patches, so that following it costs the edit and not the
 * drawing. A patch that replaces a whole table touches all that the table has or had.
 */
export function editedBy(patches: readonly Patch[], was: Installation, is: Installation): Edited {
  const edited = emptyEdited();
  for (const { path } of patches) {
    const [root, table, key, inner] = path;
    if (root !== "asFound") continue;
    for (const one of TABLES) {
      if (table !== undefined && table !== one.path[0]) continue;
      const [, nested] = one.path;
      if (nested !== undefined && key !== undefined && key !== nested) continue;
      const named = nested === undefined ? key : inner;
      const keys = named === undefined ? [was, is].flatMap((state) => Object.keys(one.of(state))) : [String(named)];
      for (const each of keys) (edited[one.into] as Set<string>).add(each);
    }
  }
  return edited;
}

interface Table {
  readonly path: readonly [string, string?];
  readonly into: keyof Edited;
  of(installation: Installation): object;
}

const TABLES: readonly Table[] = [
  { path: ["enclosures"], into: "enclosures", of: (one) => one.enclosures },
  { path: ["cables"], into: "cables", of: (one) => one.cables },
  { path: ["loads"], into: "loads", of: (one) => one.loads },
  { path: ["labels"], into: "labels", of: (one) => one.labels },
  { path: ["intent", "boxes"], into: "boxIntents", of: (one) => one.intent.boxes },
  { path: ["intent", "outlets"], into: "outletWishes", of: (one) => one.intent.outlets },
  { path: ["directory"], into: "directory", of: (one) => one.directory },
];

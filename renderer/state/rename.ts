import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import type { Selected } from "./selection.ts";

type Renamer = (item: Selected) => boolean;

let renamer: Renamer | undefined;

/** The sheet takes part in renaming, until the returned function is called. */
export function offerRenaming(rename: Renamer): () => void {
  renamer = rename;
  return () => {
    if (renamer === rename) renamer = undefined;
  };
}

/** Opens the field for a name where it stands on the sheet. @returns False where it is not drawn there. */
export const renameInPlace = (item: Selected): boolean => renamer?.(item) ?? false;

/** What Tab goes on to: the next of its kind, in the same box for what is in a box; round at the end. */
export function nextToRename(installation: Installation, item: Selected, step: 1 | -1): Selected | undefined {
  const row = rowOf(installation, item);
  const at = row.findIndex(({ id }) => id === item.id);
  return at < 0 || row.length < 2 ? undefined : row[(at + step + row.length) % row.length];
}

function rowOf(installation: Installation, item: Selected): readonly Selected[] {
  switch (item.kind) {
    case "enclosure":
      return inOrder<Enclosure>(installation.enclosures).map(({ id }) => ({ kind: "enclosure", id }));
    case "cable":
      return inOrder(installation.cables).map(({ id }) => ({ kind: "cable", id }));
    case "device":
      return inOrder(findDevice(installation, item.id)?.enclosure.devices ?? {}).map(({ id }) => ({
        kind: "device",
        id,
      }));
    case "splice":
      return inOrder(findSplice(installation, item.id)?.enclosure.splices ?? {}).map(({ id }) => ({
        kind: "splice",
        id,
      }));
    case "jumper":
      return inOrder(findJumper(installation, item.id)?.enclosure.jumpers ?? {}).map(({ id }) => ({
        kind: "jumper",
        id,
      }));
    default:
      return [];
  }
}

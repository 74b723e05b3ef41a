import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import type { Selected } from "./selection.ts";

/** The one enclosure that a thing is, or is in; undefined for a cable, a load, a room. */
export function homeOf(installation: Installation, item: Selected): EnclosureId | undefined {
  switch (item.kind) {
    case "enclosure":
      return item.id in installation.enclosures ? item.id : undefined;
    case "device":
      return findDevice(installation, item.id)?.enclosure.id;
    case "splice":
      return findSplice(installation, item.id)?.enclosure.id;
    case "jumper":
      return findJumper(installation, item.id)?.enclosure.id;
    case "end":
    case "entry":
      return item.enclosure;
    default:
      return undefined;
  }
}

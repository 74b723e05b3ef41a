import type { Subject } from "../../shared-model/answers/finding.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type {
  CableId,
  DeviceId,
  EndKey,
  EntryId,
  JumperId,
  LoadId,
  OutletKey,
  RoomId,
  SpliceId,
} from "../../shared-model/model/ids.ts";
import { parseOutlet } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import type { Selected } from "./selection.ts";

/** The thing on the sheet that a finding is about; undefined for the whole drawing and for what is gone meanwhile. */
export function findSubject(project: Project, installation: Installation, subject: Subject): Selected | undefined {
  const { kind, id } = subject;
  switch (kind) {
    case "enclosure":
      return find(installation.enclosures, id, (found) => ({ kind: "enclosure", id: found.id }));
    case "cable":
      return find(installation.cables, id as CableId, (found) => ({ kind: "cable", id: found.id }));
    case "load":
      return find(installation.loads, id as LoadId, (found) => ({ kind: "load", id: found.id }));
    case "room":
      return find(project.rooms, id as RoomId, (found) => ({ kind: "room", id: found.id }));
    case "device":
    case "outlet":
    case "terminal": {
      const device = kind === "terminal" ? id.split(".")[0] : parseOutlet(id as OutletKey).device;
      const found = findDevice(installation, device as DeviceId);
      return found && { kind: "device", id: found.device.id };
    }
    case "splice": {
      const found = findSplice(installation, id as SpliceId);
      return found && { kind: "splice", id: found.splice.id };
    }
    case "jumper": {
      const found = findJumper(installation, id as JumperId);
      return found && { kind: "jumper", id: found.jumper.id };
    }
    case "end": {
      const end = id as EndKey;
      const enclosure = enclosureWith(installation, ({ places }) => end in places);
      return enclosure && { kind: "end", enclosure: enclosure.id, id: end };
    }
    case "entry": {
      const entry = id as EntryId;
      const enclosure = enclosureWith(installation, ({ entries }) => entry in entries);
      return enclosure && { kind: "entry", enclosure: enclosure.id, id: entry };
    }
    case "project":
      return undefined;
  }
}

function find<T>(table: Readonly<Record<string, T>>, id: string, make: (found: T) => Selected): Selected | undefined {
  const found = table[id];
  return found === undefined ? undefined : make(found);
}

const enclosureWith = (installation: Installation, has: (enclosure: Enclosure) => boolean): Enclosure | undefined =>
  Object.values(installation.enclosures).find(has);

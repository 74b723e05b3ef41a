import type { Subject } from "../../shared-model/answers/finding.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type {
  CableId,
  DeviceId,
  EnclosureId,
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
      const found = findDevice(installation, deviceOf(kind, id) as DeviceId);
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

/** The boxes that a subject is or is in: two for a cable, none for a room or the whole drawing. */
export function enclosuresOfSubject(installation: Installation, subject: Subject): readonly EnclosureId[] {
  const { kind, id } = subject;
  if (kind === "enclosure") return [id as EnclosureId];
  if (kind === "cable") {
    const sides = installation.cables[id as CableId]?.sides;
    return sides ? [sides.a, sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : [])) : [];
  }
  if (kind === "load") {
    const plug = installation.loads[id as LoadId]?.plug;
    return plug === undefined ? [] : enclosuresOfSubject(installation, { kind: "outlet", id: plug, name: "" });
  }
  const inside = enclosureWith(installation, insideTest(subject));
  return inside === undefined ? [] : [inside.id];
}

/** Whether a subject is a selected thing or, for a box, something in it or a cable into it. */
export function isAbout(installation: Installation, item: Selected, subject: Subject): boolean {
  const { kind, id } = subject;
  if (item.kind === "device" && (kind === "device" || kind === "outlet" || kind === "terminal"))
    return deviceOf(kind, id) === item.id;
  if (item.kind !== "enclosure" || kind === "enclosure") return kind === item.kind && id === item.id;
  if (kind === "cable" || kind === "load") return enclosuresOfSubject(installation, subject).includes(item.id);
  const enclosure = installation.enclosures[item.id];
  return enclosure !== undefined && insideTest(subject)(enclosure);
}

function insideTest({ kind, id }: Subject): (enclosure: Enclosure) => boolean {
  switch (kind) {
    case "device":
    case "outlet":
    case "terminal": {
      const device = deviceOf(kind, id);
      return ({ devices }) => device in devices;
    }
    case "splice":
      return ({ splices }) => id in splices;
    case "jumper":
      return ({ jumpers }) => id in jumpers;
    case "end":
      return ({ places }) => id in places;
    case "entry":
      return ({ entries }) => id in entries;
    default:
      return () => false;
  }
}

const deviceOf = (kind: Subject["kind"], id: string): string =>
  kind === "terminal" ? (id.split(".")[0] ?? "") : parseOutlet(id as OutletKey).device;

function find<T>(table: Readonly<Record<string, T>>, id: string, make: (found: T) => Selected): Selected | undefined {
  const found = table[id];
  return found === undefined ? undefined : make(found);
}

const enclosureWith = (installation: Installation, has: (enclosure: Enclosure) => boolean): Enclosure | undefined =>
  Object.values(installation.enclosures).find(has);

import { sameValue } from "../../lib/same-value.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EnclosureId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { type BoxHomes, boxHomes, isAtHome } from "./box-homes.ts";

/** One box or panel in both accounts; one of them is absent where it comes or goes. */
export interface BoxPair {
  readonly id: EnclosureId;
  readonly asFound: Installation;
  readonly proposed: Installation;
  readonly before: Enclosure | undefined;
  readonly after: Enclosure | undefined;
  readonly homes: BoxHomes;
  /** Whole house: the device of as found that one of proposed came for. */
  readonly former: ReadonlyMap<DeviceId, DeviceId>;
  /** Where each device is in the other account, for those that leave the box. */
  readonly elsewhere: DevicePlaces;
}

export interface DevicePlaces {
  readonly asFound: ReadonlyMap<DeviceId, EnclosureId>;
  readonly proposed: ReadonlyMap<DeviceId, EnclosureId>;
}

const NO_BOX: Pick<Enclosure, "splices" | "jumpers" | "places"> = { splices: {}, jumpers: {}, places: {} };

/** An empty box stands in for one that is not there. */
export const homesOf = (before: Enclosure | undefined, after: Enclosure | undefined): BoxHomes =>
  boxHomes((before ?? NO_BOX) as Enclosure, (after ?? NO_BOX) as Enclosure);

/** Whether a conductor that was at the one place and is at the other has not been touched. */
export function isUntouched({ before, after, homes }: BoxPair, was: At, is: At): boolean {
  if (!isAtHome(was, is, homes.splices)) return false;
  if (was.kind !== "terminal") return true;
  return before?.devices[was.device]?.type === after?.devices[was.device]?.type;
}

/** Whether a person who takes an end off something has something to undo. */
export const isOnSomething = (at: At | undefined): boolean =>
  at !== undefined && at.kind !== "capped" && at.kind !== "loose";

/** What says how a thing is drawn, called and known, and not what it is. */
const OF_THE_DRAWING: ReadonlySet<string> = new Set(["id", "name", "note", "notes", "order", "evidence"]);

/** Fields in which two accounts of one thing differ, but those of the drawing and some more; sorted. */
export function differentFields(one: object, other: object, but: ReadonlySet<string> = new Set()): readonly string[] {
  if (one === other) return [];
  const [a, b] = [one as Readonly<Record<string, unknown>>, other as Readonly<Record<string, unknown>>];
  const found: string[] = [];
  for (const key in a)
    if (!OF_THE_DRAWING.has(key) && !but.has(key) && a[key] !== b[key] && !sameValue(a[key], b[key])) found.push(key);
  for (const key in b)
    if (!(key in a) && !OF_THE_DRAWING.has(key) && !but.has(key) && b[key] !== undefined) found.push(key);
  return found.sort();
}

/** Fields of a device that say how a person judges it, and whom it came for. */
const OF_THE_PLAN: ReadonlySet<string> = new Set(["replaces", "zones"]);

export const deviceFields = (one: Device, other: Device): readonly string[] => differentFields(one, other, OF_THE_PLAN);

/** Tables of a box, which are compared thing by thing, and what the survey says of it. */
const OF_THE_BOX: ReadonlySet<string> = new Set([
  "entries",
  "devices",
  "splices",
  "jumpers",
  "passThroughs",
  "places",
  "rings",
  "roomId",
  "beingSurveyed",
]);

export const boxFields = (one: Enclosure, other: Enclosure): readonly string[] =>
  differentFields(one, other, OF_THE_BOX);

export const asBox = (enclosure: Enclosure | undefined): Box | undefined =>
  enclosure?.kind === "box" ? enclosure : undefined;

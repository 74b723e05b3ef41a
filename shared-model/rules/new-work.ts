import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId } from "../model/ids.ts";
import { findDevice } from "../queries/find-item.ts";
import type { ProjectContext } from "./rule.ts";

/** A document and which of its states is judged. */
type Judged = Pick<ProjectContext, "project" | "state">;

/**
 * What the work does at a device: it was there as found, it comes for another of the same box, or it comes to a place where
 * there was none. As found everything was there. Of as found a rule may read no more than this and `isNewCable`, or it would not be
 * run again when the rest changes (`analysis/seen-of-as-found.ts`).
 */
export type Work =
  | { readonly kind: "kept" }
  | { readonly kind: "new" }
  | { readonly kind: "replaces"; readonly device: Device };

const KEPT: Work = { kind: "kept" };
const NEW: Work = { kind: "new" };

export function workAt(judged: Judged, enclosure: Enclosure, device: Device): Work {
  if (judged.state === "as-found" || deviceAsFound(judged, enclosure, device.id) !== undefined) return KEPT;
  const { replaces } = device;
  // What still stands there is not replaced, whoever says so.
  if (replaces === undefined || replaces in enclosure.devices) return NEW;
  const old = judged.project.asFound.enclosures[enclosure.id]?.devices[replaces];
  return old === undefined ? NEW : { kind: "replaces", device: old };
}

/** A cable that as found does not have. */
export const isNewCable = ({ project, state }: Judged, { id }: Pick<Cable, "id">): boolean =>
  state === "proposed" && project.asFound.cables[id] === undefined;

/** Nearly always it stood in the same enclosure; only for others is the whole house looked through. */
const deviceAsFound = ({ project }: Judged, { id: home }: Enclosure, id: DeviceId): Device | undefined =>
  project.asFound.enclosures[home]?.devices[id] ?? findDevice(project.asFound, id)?.device;

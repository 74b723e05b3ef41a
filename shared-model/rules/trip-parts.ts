import { findLoadItem } from "../catalog/load-items.ts";
import type { Device, LoadPriority } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { Load } from "../model/load.ts";
import type { Installation } from "../model/project.ts";
import { loadsOn } from "../solver/circuit/loads-on.ts";
import type { OutletProof } from "../solver/circuit/proof-answers.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { andOthers, listed } from "./rule-parts.ts";

/** A sensing device of a section with the outlets that go dead when it trips. */
export interface TripsWith {
  readonly device: Device;
  readonly enclosure: Enclosure;
  /** Of the class that protects people, so that it trips on a ground fault of milliamperes. */
  readonly isPersonnel: boolean;
  readonly outlets: readonly OutletStanding[];
}

const kept = new WeakMap<readonly OutletProof[], readonly TripsWith[]>();

/**
 * What each sensing device takes along when it trips: live outlets whose hot no source reaches then, in the order of the
 * section. One that is fed on LOAD has a fault of its own and takes nothing here. Kept with the proof of the section.
 */
export function tripsOf(section: Section): readonly TripsWith[] {
  const proofs = sectionProof(section).outlets;
  let found = kept.get(proofs);
  if (found === undefined) {
    found = section.sensingDevices().map(({ device, enclosure }) => {
      const behind = proofs.flatMap(({ standing, devices }) => {
        const one = devices.find((proof) => proof.device === device.id);
        return one !== undefined && standing.live && !one.hotReached && one.fedOnLine ? { standing, one } : [];
      });
      return {
        device,
        enclosure,
        isPersonnel: behind.some(({ one }) => one.personnelClass),
        outlets: behind.map(({ standing }) => standing),
      };
    });
    kept.set(proofs, found);
  }
  return found;
}

/** What is plugged into one outlet, in order. */
export const pluggedAt = ({ loads }: Installation, { outlet }: OutletStanding): readonly Load[] =>
  (loadsOn(loads).get(outlet.device.id) ?? []).filter(({ plug }) => plug === outlet.key);

/** What a person said of a load, else what its kind usually is. */
export const priorityOf = ({ priority, item }: Load): LoadPriority =>
  priority ?? findLoadItem(item)?.priority ?? "none";

/** Names in a sentence at most. */
const MOST_NAMED = 6;

/** "R2, R3 and R5"; of eight or more the first six, "and 2 others". */
export function listedShort(names: readonly string[]): string {
  const left = names.length - MOST_NAMED;
  return left > 1 ? andOthers(names.slice(0, MOST_NAMED), left) : listed(names);
}

import { copyTable } from "../lib/copy-table.ts";
import type { DeviceId, EnclosureId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { replacementFor } from "../queries/replaced.ts";
import type { FormerDevices } from "./statements.ts";

type Devices = Installation["enclosures"][EnclosureId]["devices"];

/** Follows which device of proposed came for which one of as found, looking only when some box got other devices. */
export class ReplacedDevices {
  private readonly seen = { asFound: new Map<EnclosureId, Devices>(), proposed: new Map<EnclosureId, Devices>() };
  /** Enclosures of proposed with a device that says that it replaces another. */
  private readonly claimants = new Set<EnclosureId>();
  private known: FormerDevices = new Map();

  get former(): FormerDevices {
    return this.known;
  }

  /** @returns Whether anything is replaced by something else now than before. */
  follow(asFound: Installation, proposed: Installation, changed: ReadonlySet<EnclosureId>): boolean {
    let others = false;
    for (const id of changed) {
      const devices = proposed.enclosures[id]?.devices;
      const wasOther = [
        this.see("asFound", id, asFound.enclosures[id]?.devices),
        this.see("proposed", id, devices),
      ].includes(true);
      const hadClaim = this.claimants.delete(id);
      const hasClaim = Object.values(devices ?? {}).some(({ replaces }) => replaces !== undefined);
      if (hasClaim) this.claimants.add(id);
      if (wasOther && (hadClaim || hasClaim || this.claimants.size > 0)) others = true;
    }
    if (!others) return false;
    // The tables change in place where a document is followed; copies of them do not.
    const now = replacementFor(fixed(proposed), fixed(asFound));
    if (sameMap(now, this.known)) return false;
    this.known = now;
    return true;
  }

  private see(state: "asFound" | "proposed", id: EnclosureId, devices: Devices | undefined): boolean {
    const seen = this.seen[state];
    if (seen.get(id) === devices) return false;
    if (devices === undefined) seen.delete(id);
    else seen.set(id, devices);
    return true;
  }
}

const fixed = (installation: Installation): Installation => ({
  ...installation,
  enclosures: copyTable(installation.enclosures),
});

const sameMap = (one: FormerDevices, other: FormerDevices): boolean =>
  one.size === other.size && [...one].every(([key, value]: [DeviceId, DeviceId]) => other.get(key) === value);

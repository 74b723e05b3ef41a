import type { Role } from "../answers/circuit.ts";
import type { DeviceNode } from "../catalog/device-type.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EnclosureId, EndKey, SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import type { PlacedOutlet } from "../queries/outlets-of.ts";

/** What isolation by reachability says of one outlet and one sensing device; empty lists mean that the test passes. */
export interface ProtectionTest {
  readonly device: DeviceId;
  /** P1: source reaches the outlet round the open contacts, by its hot or by its neutral. */
  readonly hotReached: boolean;
  readonly neutralReached: boolean;
  /** P5: personnel class, and fed on LINE. */
  readonly personnelClass: boolean;
  readonly fedOnLine: boolean;
  readonly protects: boolean;
}

/** An outlet with the conductors it hangs on. */
export interface OutletStanding {
  readonly outlet: PlacedOutlet;
  readonly enclosure: Enclosure;
  readonly hot: Role;
  readonly neutral: Role;
  /** Some setting brings an ungrounded source to its hot. */
  readonly live: boolean;
  readonly tests: readonly ProtectionTest[];
  readonly protectedBy: readonly DeviceId[];
}

/**
 * A part of the drawing that can be judged on its own: enclosures joined by cables without passing through a panel, and
 * the panel terminals that their cables end on. Everything is computed on first use and kept.
 */
export interface Section {
  readonly installation: Installation;
  /** Boxes of the section, sorted by id; a panel is never one of them. */
  readonly enclosures: readonly Enclosure[];
  /** True when the switch settings are more than are tried, so that role and protection answers are not complete. */
  readonly bounded: boolean;
  roleOfEnd(end: EndKey): Role;
  roleOfSplice(splice: SpliceId): Role;
  roleOfNode(device: DeviceId, node: DeviceNode): Role;
  outlets(): readonly OutletStanding[];
  /** Sensing devices of its boxes and the sensing breakers that feed it. */
  sensingDevices(): readonly { readonly device: Device; readonly enclosure: Enclosure }[];
  /** Breakers whose load side reaches into the section. */
  breakers(): readonly { readonly device: Device; readonly panel: Enclosure }[];
  enclosureOf(device: DeviceId): EnclosureId | undefined;
}

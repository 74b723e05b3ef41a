import type { Role } from "../answers/circuit.ts";
import type { DeviceNode } from "../catalog/device-type.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  JumperId,
  OutletKey,
  SpliceId,
} from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import type { PlacedOutlet } from "../queries/outlets-of.ts";

/** An outlet with the conductors it hangs on. */
export interface OutletStanding {
  readonly outlet: PlacedOutlet;
  readonly enclosure: Enclosure;
  readonly hot: Role;
  readonly neutral: Role;
  /** Some setting brings an ungrounded source to its hot. */
  readonly live: boolean;
}

/** A point of the wiring: a terminal or slot of a device, the end of a conductor, a splice, the metal of an enclosure. */
export type Spot =
  | { readonly device: DeviceId; readonly node: DeviceNode }
  | { readonly end: EndKey }
  | { readonly splice: SpliceId }
  | { readonly bond: EnclosureId };

/** What sources reach over all switch positions, in one state of the contacts, with loads removed and breakers on. */
export interface Reach {
  /** Some switch position brings an ungrounded source to it. */
  isLive(spot: Spot): boolean;
  isAlwaysLive(spot: Spot): boolean;
  /** Some switch position joins it to the neutral of the supply. */
  isGrounded(spot: Spot): boolean;
  isAlwaysGrounded(spot: Spot): boolean;
  /** Some switch position joins it to the equipment ground. */
  isOnGround(spot: Spot): boolean;
  /** Some switch position joins the two by metal, bars and buses left out. */
  areJoined(one: Spot, other: Spot): boolean;
}

/** One piece of a way through the wiring, in walking order. */
export type PathStep =
  | {
      readonly kind: "cable";
      readonly cable: CableId;
      readonly conductor: ConductorKey;
      readonly from: EndKey;
      readonly to: EndKey;
      readonly fromEnclosure: EnclosureId;
      readonly toEnclosure: EnclosureId;
    }
  | {
      readonly kind: "jumper";
      readonly jumper: JumperId;
      readonly from: EndKey;
      readonly to: EndKey;
      readonly enclosure: EnclosureId;
    }
  | {
      readonly kind: "device";
      readonly device: DeviceId;
      readonly from: DeviceNode;
      readonly to: DeviceNode;
      readonly enclosure: EnclosureId;
    };

/** Where something first goes wrong, walking from the source. */
export interface WrongPlace {
  readonly enclosure: EnclosureId;
  /** Conductor ends or device that it shows at; an end before a device where both are known. */
  readonly ends: readonly EndKey[];
  readonly device?: DeviceId;
  /** Last enclosure on the way where it is still right; absent when it is wrong from the source on. */
  readonly lastRight?: EnclosureId;
}

/** One handle in one of its positions. */
export interface HandlePosition {
  readonly device: DeviceId;
  /** Terminal that tells the switches of one yoke apart; absent where it has one handle. */
  readonly at?: DeviceNode;
  readonly position: "on" | "off" | "up" | "down" | "straight" | "crossed";
}

/** What joins two things that must stay apart. */
export interface Joining {
  /** A jumper, a conductor or a switch path, walked from the first of the two to the second. */
  readonly by: PathStep;
  /** Positions that are enough for it; none when it is so in every position. */
  readonly when: readonly HandlePosition[];
  /** It is so in other positions too: behind two switches side by side either one will do, and `when` names one. */
  readonly alsoElse: boolean;
}

/** A switch that takes the neutral from outlets while their hot stays. */
export interface SwitchInNeutral {
  readonly device: DeviceId;
  readonly outlets: readonly OutletKey[];
}

/** What one breaker feeds, up to the next breaker: derived, never what a label says. Lists are sorted. */
export interface Circuit {
  readonly breaker: DeviceId;
  readonly panel: EnclosureId;
  /** Ends on its ungrounded side, switch legs and travellers included; ends in panels too. */
  readonly hotEnds: readonly EndKey[];
  /** Ends of the neutrals that the outlets and sensing devices on it return by. */
  readonly neutralEnds: readonly EndKey[];
  readonly outlets: readonly OutletKey[];
}

/**
 * A part of the drawing that can be judged on its own: enclosures joined by cables without passing through a panel, or by
 * a shared breaker or splice in one, and the panel terminals that their cables end on. Supplies of feeder panels are
 * followed upstream. Everything is computed on first use and kept.
 *
 * Its answers rest on its enclosures, cables and panels alone. Loads, labels, intent and rooms are not read: take those
 * from the installation at hand.
 */
export interface Section {
  readonly installation: Installation;
  /** Boxes of the section, sorted by id; a panel is never one of them. */
  readonly enclosures: readonly Enclosure[];
  /** Cables that enter them, sorted by id. */
  readonly cables: readonly Cable[];
  /** True when the switch settings are more than are tried, so that role and protection answers are not complete. */
  readonly bounded: boolean;
  /** Ends in its enclosures, and ends of its cables in panels. Throws on any other. */
  roleOfEnd(end: EndKey): Role;
  roleOfSplice(splice: SpliceId): Role;
  roleOfNode(device: DeviceId, node: DeviceNode): Role;
  outlets(): readonly OutletStanding[];
  /** Sensing devices of its boxes and the sensing breakers that feed it, sorted by id. */
  sensingDevices(): readonly { readonly device: Device; readonly enclosure: Enclosure }[];
  /** Breakers whose load side reaches into the section, sorted by id. */
  breakers(): readonly { readonly device: Device; readonly panel: Enclosure }[];
  enclosureOf(device: DeviceId): EnclosureId | undefined;

  /** All breakers on, all ground-fault devices reset. */
  reach(): Reach;
  /** The contacts of one sensing device open, as after a trip; a breaker leaves its neutral joined. */
  contactsOpen(device: DeviceId): Reach;
  /** Everything that the sensor of one device sums taken out, the neutral of a sensing breaker too. */
  sensorCut(device: DeviceId): Reach;
  /** What a breaker of `breakers()` feeds. Throws on another. */
  circuitOf(breaker: DeviceId): Circuit;
  /**
   * A shortest way from a source to a spot, from the source on; undefined when none leads there. With `open`, the sensor
   * of that device is taken out, so that the way goes round it.
   */
  wayFrom(source: "ungrounded" | "grounded", to: Spot, open?: DeviceId): readonly PathStep[] | undefined;
  /** For an outlet that is live and has no neutral: where the neutral stops. */
  whereNeutralStops(outlet: OutletKey): WrongPlace | undefined;
  /** For an outlet that has its neutral and is never live, or only one of two hots: where its hot stops. */
  whereHotStops(outlet: OutletKey): WrongPlace | undefined;
  /** For an outlet whose neutral slot is live: where hot and neutral first change places. */
  wherePolarityCrosses(outlet: OutletKey): WrongPlace | undefined;
  /** What joins hot to neutral by metal in some switch position, loads removed. Sorted. */
  shorts(): readonly Joining[];
  /**
   * What joins the equipment ground, or what is made for it (ground terminals, the metal of a box), to the neutral; walked
   * from the ground. The main bond is left out. Sorted.
   */
  neutralsOnGround(): readonly Joining[];
  /** The same of hots, switched ones included: a ground fault, or live metal where no ground arrives. Sorted. */
  hotsOnGround(): readonly Joining[];
  /** What joins hot terminals that nothing feeds to the equipment ground. Sorted. */
  deadHotsOnGround(): readonly Joining[];
  /** With the contacts of a ground-fault device open: what joins its LOAD neutral to the neutral of the supply. Sorted. */
  neutralsAround(device: DeviceId): readonly Joining[];
  /** The same of hots: what joins its LOAD hot to a hot of the supply, nearest to LINE or to LOAD where there is a choice. */
  hotsAround(device: DeviceId, nearest: "LINE" | "LOAD"): readonly Joining[];
  /** Switches that open a neutral and leave the hot on. Sorted by device. */
  switchesInNeutral(): readonly SwitchInNeutral[];
}

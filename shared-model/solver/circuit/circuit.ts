import type { DeviceNode, SensingType } from "../../catalog/device-type.ts";
import type { Leg, Reversal } from "../../model/device.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  JumperId,
  LoadId,
  SpliceId,
} from "../../model/ids.ts";
import type { Supply } from "../../model/project.ts";
import type { Factor, Network } from "../network/network.ts";

/** Ground outside as a node: the reference of every network. */
export const EARTH = -1;

/** A place at which an instrument can touch metal. */
export type Probe =
  /** A terminal of a device or a contact of its face. */
  | { readonly kind: "device"; readonly device: DeviceId; readonly node: DeviceNode }
  /** A bus or a bar of a panel. */
  | { readonly kind: "panel"; readonly panel: EnclosureId; readonly node: DeviceNode }
  | { readonly kind: "splice"; readonly splice: SpliceId }
  /** The metal of a conductor at its end, on its own side of a bad joint. */
  | { readonly kind: "end"; readonly end: EndKey }
  /** The metal of an enclosure. */
  | { readonly kind: "bond"; readonly enclosure: EnclosureId }
  /** Ground outside, away from the electrode of the service: the reference of all voltages. */
  | { readonly kind: "earth" };

/** A resistance between two places that is no part of the wiring: a leak, a person, a test. */
export interface Added {
  readonly from: Probe;
  readonly to: Probe;
  readonly ohm: number;
}

/** What is operated, unplugged or tripped; whatever is not named is on, in its drawn position, reset, and in use. */
export interface OperatingSetting {
  /** Breakers, fuses and disconnects that are off. A breaker takes with it those that its handle is tied to. */
  readonly off: ReadonlySet<DeviceId>;
  /** Position of a handle (see `Joint.handle`), as an index into the positions of its type. */
  readonly positions: ReadonlyMap<string, number>;
  /** Ground-fault devices and breakers with open contacts. */
  readonly tripped: ReadonlySet<DeviceId>;
  /** What uses nothing: plugged loads and devices that are switched off at themselves. */
  readonly idle: ReadonlySet<LoadId | DeviceId>;
  readonly added: readonly Added[];
}

/** Everything on, in use and reset, handles as drawn. */
export const EVERYTHING_ON: OperatingSetting = {
  off: new Set(),
  positions: new Map(),
  tripped: new Set(),
  idle: new Set(),
  added: [],
};

/** What a branch of the network stands for; currents are positive from its `a` to its `b`. */
export type BranchPart =
  | { readonly kind: "conductor"; readonly cable: CableId; readonly conductor: ConductorKey }
  | { readonly kind: "jumper"; readonly jumper: JumperId }
  /** A bad joint at an end. */
  | { readonly kind: "joint"; readonly end: EndKey }
  /** A path of a device that is operated, or whose current is summed. */
  | { readonly kind: "contact"; readonly device: DeviceId }
  | { readonly kind: "load"; readonly device: DeviceId; readonly load?: LoadId }
  /** Electronics of a ground-fault device, across its LINE. */
  | { readonly kind: "electronics"; readonly device: DeviceId }
  /** Between conductors of a cable. */
  | { readonly kind: "capacitance"; readonly cable: CableId }
  | { readonly kind: "leak"; readonly device: DeviceId; readonly load?: LoadId }
  | { readonly kind: "main-bond"; readonly panel: EnclosureId }
  /** Neutral of the supply to ground outside. */
  | { readonly kind: "earth"; readonly panel: EnclosureId }
  /** The modelling leakage to ground outside that every node has. */
  | { readonly kind: "stray" }
  /** One of `OperatingSetting.added`, by its place there. */
  | { readonly kind: "added"; readonly index: number };

/** A ground-fault device or sensing breaker as its sensor sees it. Nodes are those of the network. */
export interface SensorCircuit {
  readonly device: DeviceId;
  readonly class: SensingType["class"];
  /** What it does when it is fed on LOAD; absent where it has no LINE and LOAD to mistake. */
  readonly reversal?: Reversal;
  /** Branches that its sensor sums, with the sign that makes current toward the load positive. */
  readonly summed: readonly { readonly branch: number; readonly sign: 1 | -1 }[];
  /** Branches that it opens on a trip. */
  readonly contacts: readonly number[];
  readonly lineHot: readonly number[];
  readonly lineNeutral?: number;
  readonly loadHot: readonly number[];
  readonly loadNeutral?: number;
  /** Terminals of its LOAD, by name. */
  readonly loadTerminals: readonly DeviceNode[];
}

/** A breaker or fuse by its poles. */
export interface OvercurrentCircuit {
  readonly device: DeviceId;
  readonly poles: readonly number[];
  readonly ratingA: number;
}

/** The wiring as a network, with what its nodes and branches stand for. */
export interface Circuit {
  readonly network: Network;
  /** The network analysed; made when first asked for, and for other settings of one circuit without ordering it again. */
  readonly factor: Factor;
  readonly setting: OperatingSetting;
  readonly supply: Supply;
  /** Legs of the supply, one for each source of the network: each from the neutral of its panel to a bus. */
  readonly legs: readonly { readonly panel: EnclosureId; readonly leg: Leg }[];
  /** Places at each node; joints without resistance share one. */
  readonly placesAt: readonly (readonly Probe[])[];
  /** One for each branch of the network. */
  readonly parts: readonly BranchPart[];
  readonly sensors: readonly SensorCircuit[];
  readonly overcurrent: readonly OvercurrentCircuit[];
  /** `EARTH` for ground outside; undefined for a place that is not in this circuit. */
  nodeOf(place: Probe): number | undefined;
  /** The same wiring in another setting; keeps the order of elimination. */
  inSetting(setting: OperatingSetting): Circuit;
  /** Facts that were not known and what was taken instead, as sentences: "No length of C3 is known: 30 ft assumed." */
  readonly assumptions: readonly string[];
}

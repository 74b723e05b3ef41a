import type { Colour } from "../units/colour.ts";
import type { Amps, Inches } from "../units/quantity.ts";
import type { CubicInches } from "../units/volume.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { Material } from "./cable.ts";
import type { Device } from "./device.ts";
import type { WithEvidence } from "./evidence.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  EntryId,
  JumperId,
  PassThroughId,
  RingId,
  RoomId,
  SpliceId,
} from "./ids.ts";
import type { Place } from "./place.ts";

/** What holds a cable where it enters. The fill allowance comes from the clamps of the box, not from here. */
export type EntryMeans = "internal-clamp" | "external-connector" | "integral-clamp" | "none";

/** An opening through which one or more cables enter. */
export interface Entry extends WithEvidence {
  readonly id: EntryId;
  readonly means: EntryMeans;
  readonly sheathInsideIn?: Inches;
  readonly securedWithinIn?: Inches;
  /** How many cables its clamp or connector is marked for; absent means not recorded. */
  readonly markedForCables?: number;
  readonly order: number;
}

/** `connector` names a catalogue connector, or says that there is none. */
export interface Splice extends WithEvidence {
  readonly id: SpliceId;
  readonly name: string;
  readonly connector: string | "none" | "taped" | "soldered" | "unknown";
  readonly order: number;
}

/** A short conductor with both ends in one enclosure: pigtail, link, bonding jumper. Counts nothing in box fill. */
export interface Jumper extends WithEvidence {
  readonly id: JumperId;
  readonly name: string;
  readonly awg: WireSize;
  readonly colour: Colour;
  readonly material: Material;
  readonly stranded: boolean;
  readonly lengthIn?: Inches;
  readonly order: number;
}

/** Conductors of one cable that run through this box unbroken. */
export interface PassThrough extends WithEvidence {
  readonly id: PassThroughId;
  readonly cable: CableId;
  readonly conductors: readonly ConductorKey[];
  readonly entryIn: EntryId;
  readonly entryOut: EntryId;
  /** Length of the loop left inside; absent means straight through. */
  readonly loopLengthIn?: Inches;
}

/** How the volume of a box is known: read off its marking, taken from the table of standard boxes, or not known. */
export type VolumeFact =
  | { readonly kind: "marked"; readonly volumeIn3: CubicInches }
  | { readonly kind: "table"; readonly size: string }
  | { readonly kind: "unknown" };

/** A raised ring, cover or extension; it adds volume only if it is marked or is itself a standard box. */
export interface Ring extends WithEvidence {
  readonly id: RingId;
  readonly kind: "plaster-ring" | "raised-cover" | "extension";
  readonly volume: VolumeFact;
  /** How far it brings the front of the box forward. */
  readonly depthIn?: Inches;
  readonly order: number;
}

export type Support = "stud" | "hickey";

interface EnclosureCommon extends WithEvidence {
  readonly id: EnclosureId;
  readonly name: string;
  /** What a person calls the place: "laundry". */
  readonly note?: string;
  /** Catalogue item it was made from. */
  readonly item: string;
  readonly roomId?: RoomId;
  readonly entries: Readonly<Record<EntryId, Entry>>;
  readonly devices: Readonly<Record<DeviceId, Device>>;
  readonly splices: Readonly<Record<SpliceId, Splice>>;
  readonly jumpers: Readonly<Record<JumperId, Jumper>>;
  readonly passThroughs: Readonly<Record<PassThroughId, PassThrough>>;
  /** Place of every conductor end that lies in this enclosure, and of no other. */
  readonly places: Readonly<Record<EndKey, Place>>;
  readonly accessible?: boolean;
  readonly order: number;
}

export interface Box extends EnclosureCommon {
  readonly kind: "box";
  readonly material: "metal" | "nonmetallic" | "unknown";
  readonly shape: "device" | "square" | "octagon" | "round" | "masonry" | "cast";
  readonly volume: VolumeFact;
  readonly rings: Readonly<Record<RingId, Ring>>;
  /** Clamps present inside count, used or not. */
  readonly internalClamps: "none" | "present" | "included-in-marked-volume" | "unknown";
  readonly supports: readonly Support[];
  /** Terminal block assemblies, each by the largest conductor that ends on it. */
  readonly terminalBlocks?: readonly WireSize[];
  readonly gangs: number;
  readonly depthIn?: Inches;
  readonly openingMinIn?: Inches;
  readonly listedFor?: readonly ("device" | "luminaire" | "fan")[];
  readonly fanWeightLb?: number;
  /** Weight of a luminaire that it is marked for, where it is marked. */
  readonly luminaireWeightLb?: number;
  readonly mountedOn?: "wall" | "ceiling" | "floor";
  /** Framing that can carry a fan is reached through it without taking it out. */
  readonly framingBehind?: boolean;
  /** What the weather does there; absent means that its room says what is known. */
  readonly exposure?: "dry" | "damp" | "wet";
  readonly cover?: "none" | "blank" | "device-plate" | "weatherproof-closed" | "weatherproof-in-use" | "luminaire";
  readonly openKnockouts?: number;
  readonly setbackIn?: Inches;
  readonly wallCombustible?: boolean;
  /** While it is being surveyed, loose and capped ends raise no open-path finding. */
  readonly beingSurveyed?: boolean;
}

export interface Panel extends EnclosureCommon {
  readonly kind: "panel";
  /** Number of breaker spaces. */
  readonly spaces: number;
  /** Where its buses get their supply: from the service, or by a feeder landed on its lugs. */
  readonly supply: "service" | "feeder";
  readonly mainBond: "here" | "elsewhere" | "unknown";
  readonly busRatingA?: Amps;
  /** Breaker types its marking lists, by catalogue id; absent means not recorded. */
  readonly listedBreakers?: readonly string[];
}

export type Enclosure = Box | Panel;

import type { CableId, ConductorKey, DeviceId, Half, OutletKey } from "../model/ids.ts";

/** How joints are to be made. */
export interface MakeUpStyle {
  /** One conductor on one terminal goes straight onto it; false gives it a splice and a pigtail. */
  readonly direct: boolean;
  /** Two conductors may share the two holes of a clamp plate, so that the device carries the rest. */
  readonly bothHoles: boolean;
  /** No splicing connector of the push-in kind. */
  readonly noPushIn: boolean;
  /** Ids of the connectors at hand, the first that takes a set is used; absent: the usual twist-ons. */
  readonly connectors?: readonly string[];
}

/**
 * How the box is fed: by a plain supply, by two hots without a neutral, by a switch loop from the light, or by the
 * travellers of another 3-way switch.
 */
export interface SupplyUse {
  readonly cable: CableId;
  readonly as: "feed" | "two-hots" | "switch-loop" | "travellers";
  /** Hot conductor that feeds the devices here, where a multiwire supply has two; absent: the first. */
  readonly leg?: ConductorKey;
  /** Switch that a loop or travellers come to. */
  readonly switch?: DeviceId;
}

/** A cable that is fed on from here. */
export interface DownstreamUse {
  readonly cable: CableId;
  /** Behind the ground-fault device of this box, or left on its LINE. */
  readonly protect: boolean;
  /** Conductor of the supply that it hangs on. */
  readonly leg?: ConductorKey;
}

/** A cable to what a switch in this box switches; its neutral goes with the side that feeds the switch. */
export interface SwitchedUse {
  readonly cable: CableId;
  readonly switch: DeviceId;
  readonly protect: boolean;
  /** Which hot conductor is switched, where it has two. */
  readonly conductor?: ConductorKey;
  readonly leg?: ConductorKey;
}

/** A cable to a switch elsewhere that switches something here or beyond a cable here: a switch loop. */
export interface LoopUse {
  readonly cable: CableId;
  readonly protect: boolean;
  readonly feedsDevices: readonly DeviceId[];
  readonly feedsCables: readonly CableId[];
  /** Halves of devices here: one face of a split receptacle, the fan or the light of a fan-light. */
  readonly feedsHalves?: readonly OutletKey[];
  readonly leg?: ConductorKey;
}

/** A cable that carries the travellers of a 3-way or 4-way switch here on to the next one, with the neutral. */
export interface TravellersUse {
  readonly cable: CableId;
  readonly switch: DeviceId;
  readonly protect: boolean;
  readonly leg?: ConductorKey;
}

/** A device of this box that uses current: behind its ground-fault device or not, and switched by what. */
export interface DeviceUse {
  readonly device: DeviceId;
  /** One half of a split receptacle or a fan-light; absent: all of it. */
  readonly half?: Half;
  readonly protect: boolean;
  readonly switch?: DeviceId;
  readonly leg?: ConductorKey;
}

/** Another device in the place of one. */
export interface Replacing {
  readonly device: DeviceId;
  readonly type: string;
  readonly name?: string;
}

/** What a box is to do. Every cable that enters it has one use; conductors that no use needs are capped. */
export interface MakeUpIntent {
  readonly supply: SupplyUse;
  readonly downstream: readonly DownstreamUse[];
  readonly switched: readonly SwitchedUse[];
  readonly loops: readonly LoopUse[];
  readonly travellers: readonly TravellersUse[];
  readonly devices: readonly DeviceUse[];
  readonly replace: readonly Replacing[];
  readonly style: MakeUpStyle;
}

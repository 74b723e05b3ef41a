import type { Leg } from "../model/device.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  LoadId,
  OutletKey,
  SpliceId,
} from "../model/ids.ts";

/** A place that the lead of a meter can touch. */
export type LeadPlace =
  /** A terminal of a device or a contact of its face. */
  | { readonly kind: "device"; readonly device: DeviceId; readonly node: string }
  /** A bus or a bar of a panel. */
  | { readonly kind: "panel"; readonly panel: EnclosureId; readonly node: string }
  | { readonly kind: "splice"; readonly splice: SpliceId }
  | { readonly kind: "end"; readonly end: EndKey }
  /** The metal of an enclosure. */
  | { readonly kind: "bond"; readonly enclosure: EnclosureId }
  /** Ground outside. */
  | { readonly kind: "earth" };

/** What is operated. Whatever is not named is on, in its drawn position, reset and in use. */
export interface Operated {
  /** Breakers, fuses and disconnects that are off. */
  readonly off: readonly DeviceId[];
  /** Positions of handles, as an index into those of the type. */
  readonly positions: Readonly<Record<string, number>>;
  /** Ground-fault devices and breakers with open contacts. */
  readonly tripped: readonly DeviceId[];
  /** Loads that are unplugged, and luminaires and appliances that use nothing. */
  readonly idle: readonly (LoadId | DeviceId)[];
}

/** Something done for a moment; what it opens stays open, and what RESET closes stays closed. */
export type Act =
  /** TEST of a ground-fault device. */
  | { readonly kind: "own-test"; readonly device: DeviceId }
  /** RESET of a ground-fault device. */
  | { readonly kind: "reset"; readonly device: DeviceId }
  /** The button of a plug-in tester. */
  | { readonly kind: "plug-in-button"; readonly outlet: OutletKey }
  /** A resistance from a contact to ground outside through which so many milliamperes would flow at full voltage. */
  | { readonly kind: "leak"; readonly outlet: OutletKey; readonly contact: "hot" | "neutral"; readonly mA: number };

/** What is asked for besides the conditions. */
export interface EnergiseAsk {
  readonly meter?: { readonly from: LeadPlace; readonly to: LeadPlace };
  /** An outlet at which the meter and the plug-in tester are read. */
  readonly outlet?: OutletKey;
  readonly act?: Act;
}

/**
 * How metal stands: on a leg of the supply, always or through a switch; live only through a load; on the neutral; on
 * ground; on both of these; on nothing, but with volts that only a meter of high impedance finds; dead.
 */
export type ConditionKind =
  | "live"
  | "switched"
  | "through-load"
  | "neutral"
  | "ground"
  | "neutral-and-ground"
  | "floating"
  | "dead";

export interface Condition {
  readonly kind: ConditionKind;
  /** Legs that it is on. */
  readonly legs?: readonly Leg[];
  /** Volts to ground outside, as a meter of 10 megohms reads them. */
  readonly volts: number;
  /** A meter shows volts that are worth a word. */
  readonly shows?: true;
}

/** Conditions in one enclosure. */
export interface BoxConditions {
  readonly ends: Readonly<Record<EndKey, Condition>>;
  readonly splices: Readonly<Record<SpliceId, Condition>>;
  /** Terminals and face contacts, by device. */
  readonly devices: Readonly<Record<DeviceId, Readonly<Record<string, Condition>>>>;
  readonly bond?: Condition;
}

/** Something that a person operates, as it stands. */
export type Operable =
  | {
      readonly kind: "breaker";
      readonly device: DeviceId;
      readonly name: string;
      readonly note: string;
      readonly enclosure: EnclosureId;
      readonly stands: "on" | "off" | "tripped";
      /** Amperes through the pole that carries most. */
      readonly amps?: number;
      /** It senses ground faults and has a TEST. */
      readonly test?: true;
    }
  | {
      readonly kind: "switch";
      readonly device: DeviceId;
      readonly handle: string;
      readonly name: string;
      readonly note: string;
      readonly enclosure: EnclosureId;
      readonly position: number;
      /** "on", "off"; "up", "down". */
      readonly positions: readonly string[];
    }
  | {
      readonly kind: "ground-fault";
      readonly device: DeviceId;
      readonly name: string;
      readonly note: string;
      readonly enclosure: EnclosureId;
      readonly stands: "set" | "tripped" | "cannot-be-reset";
      readonly residualMa: number;
      /** Its electronics have power. */
      readonly powered: boolean;
      readonly why: string;
      /** Why RESET would not hold now. */
      readonly noReset?: string;
    }
  | {
      readonly kind: "load";
      readonly item: LoadId | DeviceId;
      /** The device that it is plugged into, or that it is. */
      readonly device: DeviceId;
      readonly name: string;
      readonly note: string;
      readonly enclosure: EnclosureId;
      readonly inUse: boolean;
      readonly plugged: boolean;
    };

/** A device and what it did, would do, or might do, as a sentence. */
export interface DeviceSaid {
  readonly device: DeviceId;
  readonly name: string;
  readonly why: string;
}

export interface NamedOutlet {
  readonly outlet: OutletKey;
  readonly name: string;
  readonly enclosure: EnclosureId;
  /** Name of the box, and of the room where it has one. */
  readonly note: string;
}

/** A contact that would shock somebody who stands on the ground. */
export interface StillLive extends NamedOutlet {
  readonly contact: "hot" | "neutral" | "ground";
  readonly volts: number;
}

/** What a meter shows: of 10 megohms, and of 3 kilohms. */
export interface MeterVolts {
  readonly volts: number;
  readonly lowVolts: number;
  /** The first is not to be believed. */
  readonly floating: boolean;
}

/** Two leads. */
export type MeterReading =
  | (MeterVolts & { readonly kind: "volts" })
  /** With the power off. Without `ohm`: more than the meter can show. */
  | { readonly kind: "ohms"; readonly ohm?: number; readonly continuous: boolean };

/** Meter and plug-in tester at an outlet. */
export interface OutletTested extends NamedOutlet {
  readonly hn: MeterVolts;
  readonly hg?: MeterVolts;
  readonly ng?: MeterVolts;
  /** Absent where the outlet has no ground contact. */
  readonly tester?: {
    readonly title: string;
    /** Lamps hot to neutral, hot to ground, neutral to ground. */
    readonly lit: readonly [boolean, boolean, boolean];
    /** What else shows the same lamps. */
    readonly mayBe: readonly string[];
  };
}

/** What followed from something done. */
export interface ActDone {
  /** Why nothing could be done; else absent. */
  readonly impossible?: string;
  /** Every ground-fault device that something was looked at in, and what it made of it. */
  readonly devices: readonly (DeviceSaid & { readonly residualMa: number; readonly trips: "no" | "may" | "yes" })[];
  /** Of the circuit that it was done on. */
  readonly wentDark: readonly NamedOutlet[];
  readonly cameOn: readonly NamedOutlet[];
  readonly stayedOn: readonly NamedOutlet[];
  /** Without their volts from hot to neutral, but not without volts to ground. */
  readonly offButLive: readonly StillLive[];
  /** Ground contacts that stood at volts while the button was held. */
  readonly raised: readonly StillLive[];
  /** Of RESET: whether the device stays closed. */
  readonly holds?: boolean;
}

/** An answer as it is sent: only the enclosures and cables that stand otherwise than in the answer before. */
export interface EnergisedNews extends Omit<Energised, "boxes" | "cables"> {
  /** It does not continue an answer before: everything is told. */
  readonly whole: boolean;
  /** Null for what is drawn no longer. */
  readonly boxes: Readonly<Record<EnclosureId, BoxConditions | null>>;
  readonly cables: Readonly<Record<CableId, Energised["cables"][CableId] | null>>;
}

/** One installation, energised in one setting: what a person with instruments would find. */
export interface Energised {
  readonly boxes: Readonly<Record<EnclosureId, BoxConditions>>;
  readonly cables: Readonly<Record<CableId, Readonly<Record<ConductorKey, Condition>>>>;
  readonly operables: readonly Operable[];
  /** What opened by itself in this setting, in order; those of one time together. */
  readonly opened: readonly (readonly DeviceSaid[])[];
  /** What stays open now until it is reset. */
  readonly tripped: readonly DeviceId[];
  /** Other orders in which devices could have opened, as sentences. */
  readonly otherwise: readonly string[];
  readonly mayOpen: readonly DeviceSaid[];
  /** Contacts that are live on the circuits of devices that have tripped or opened; none where none has. */
  readonly liveAfter: readonly StillLive[];
  /** LOAD terminals of open ground-fault devices that are live all the same. */
  readonly liveTerminals: readonly {
    readonly device: DeviceId;
    readonly name: string;
    readonly terminal: string;
    readonly volts: number;
  }[];
  /** No conductor of a circuit has power: resistance can be measured. */
  readonly powerOff: boolean;
  readonly meter?: MeterReading;
  readonly outlet?: OutletTested;
  readonly act?: ActDone;
  readonly supplyV: number;
  /** What its instruments are: ohms of the meter, and milliamperes through a test button at the volts of the supply. */
  readonly instruments: { readonly meterOhm: number; readonly testMa: number };
  readonly assumptions: readonly string[];
}

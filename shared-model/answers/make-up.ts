import type { CableId, ConductorKey, DeviceId, EnclosureId, Half, OutletKey } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { CommandCall } from "./command-call.ts";
import type { FillLedger } from "./fill.ts";
import type { Severity } from "./finding.ts";
import type { MakeUpIntent } from "./make-up-intent.ts";
import type { ScopeBox } from "./scope.ts";

/** A cable that is left on LINE although an outlet beyond it asks for protection: who decided so, and why. */
export interface LeftOnLine {
  readonly cable: CableId;
  readonly by: string;
  readonly reason: string;
}

/** What is asked of a make-up of a box. Without an intent the one is taken that the drawing already knows. */
export interface MakeUpAsk {
  readonly state: StateName;
  readonly box: EnclosureId;
  readonly intent?: MakeUpIntent;
  readonly left?: readonly LeftOnLine[];
  /** Title of the way to give the box the room that it needs, or false to leave it as it is; absent: the least work. */
  readonly room?: string | false;
}

/** What is asked of a ground-fault device in the place of a receptacle; always for proposed. */
export interface FitAsk {
  readonly outlet: OutletKey;
  /** Device type; absent: the first that may be offered. */
  readonly type?: string;
  /** By cable, what a person decided. */
  readonly decided?: readonly (readonly [CableId, boolean])[];
  /** Title of the way to give the box the room that it needs; absent: the least work. */
  readonly room?: string;
  readonly left?: readonly LeftOnLine[];
}

/** A way to give a box the room that it needs, and its fill once that is done. */
export interface RoomWay {
  readonly title: string;
  /** It is part of what would be run. */
  readonly taken: boolean;
  readonly fill: FillLedger;
}

/** Something that can be chosen, by id and by what a person calls it. */
export interface Named<Id extends string = string> {
  readonly id: Id;
  readonly name: string;
}

/** A cable of the box, as the drawing knows it. */
export interface CableHereAnswer extends Named<CableId> {
  /** Where its other end is: "B2", or the words of a side that leaves the drawing. */
  readonly leadsTo: string;
  /** Outlets beyond it, by name, nearest box first. */
  readonly feeds: readonly string[];
  readonly hots: readonly Named<ConductorKey>[];
  /** Whether it goes behind a ground-fault device if there is one, and why, in words. */
  readonly protect: boolean;
  readonly why: string;
  /** Outlets beyond it that ask for protection by the code or a wish and have none, with what asks. */
  readonly wanting: readonly string[];
}

/** A device of the box, with what may take its place there. */
export interface DeviceHereAnswer extends Named<DeviceId> {
  readonly title: string;
  readonly kind: "ground-fault" | "receptacle" | "switch" | "user";
  readonly mayBecome: readonly Named[];
  /** Of a split receptacle or a fan-light: each is fed by itself. */
  readonly halves?: readonly Named<Half>[];
}

/** One net of the make-up, as the card tells it. */
export interface MadeGroup {
  /** "HL", "ND", "E" and so on. */
  readonly name: string;
  readonly landing: "none" | "cap" | "direct" | "strap" | "splice";
  readonly members: readonly string[];
  /** Terminals and the bond that it reaches. */
  readonly ports: readonly string[];
  readonly splices: readonly MadeSplice[];
}

export interface MadeSplice {
  readonly word: string;
  /** What it is called in the drawing: a joint that stays keeps its name. */
  readonly name: string;
  readonly count: number;
  readonly connector: string;
  readonly isNew: boolean;
  readonly connectorChanges: boolean;
}

export interface MadeJumper {
  readonly name: string;
  readonly awg: WireSize;
  readonly colour: Colour;
  readonly from: string;
  readonly to: string;
  readonly isNew: boolean;
}

export interface MadeMove {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

export interface MadeFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
}

export interface ProtectedBy {
  readonly name: string;
  /** Names of the devices that protect it; empty where none does. */
  readonly by: readonly string[];
}

/** A make-up that was planned, tried on a copy and judged: one command, and all that is told of it before it is run. */
export interface MadeUp {
  readonly call: CommandCall;
  readonly box: EnclosureId;
  readonly groups: readonly MadeGroup[];
  readonly jumpers: readonly MadeJumper[];
  readonly moves: {
    readonly detach: number;
    readonly attach: number;
    readonly newSplices: number;
    readonly ends: readonly MadeMove[];
  };
  /** Devices that go, each with what takes its place. */
  readonly replaced: readonly { readonly old: string; readonly by: string }[];
  readonly introduces: readonly MadeFinding[];
  readonly repairs: readonly MadeFinding[];
  /** Outlets that are proved protected now and would not be. */
  readonly unprotects: readonly string[];
  readonly fill: { readonly before: FillLedger; readonly after: FillLedger };
  readonly protection: { readonly before: readonly ProtectedBy[]; readonly after: readonly ProtectedBy[] };
  /** Labels that come with it. */
  readonly labels: number;
  /** Thing by thing, as the drawing shows it; absent where nothing changes. */
  readonly scope?: ScopeBox;
}

export interface NotMade {
  readonly code: string;
  readonly message: string;
  /** Place inside the intent, as a path. */
  readonly path?: string;
  /** What it would bring, worst first, where that is the reason. */
  readonly findings?: readonly MadeFinding[];
}

export type MadeOrNot = { readonly made: MadeUp } | { readonly refused: NotMade };

export interface MakeUpAnswer {
  readonly name: string;
  readonly cables: readonly CableHereAnswer[];
  readonly devices: readonly DeviceHereAnswer[];
  /** What was made, or tried: the one asked for, or what the drawing knows. */
  readonly intent: MakeUpIntent;
  /** The cable taken for the supply although nothing drawn or said tells so: a person has to look. */
  readonly supplyGuess?: CableId;
  /** Ways to give the box the room that it needs then, the least work first; none where it has room enough. */
  readonly rooms: readonly RoomWay[];
  /** What is done to the box itself, in words. */
  readonly room?: string;
  readonly result: MadeOrNot;
  /** Other devices that were tried in the place of those asked for, and would do, where it is refused. */
  readonly alternatives: readonly OtherDevice[];
}

export interface OtherDevice {
  /** The device that goes, by id and by name. */
  readonly device: DeviceId;
  readonly name: string;
  readonly type: string;
  readonly title: string;
}

/** One question of fitting a device: what hangs on the receptacle's joint and stays together. */
export interface FitQuestion {
  readonly cables: readonly Named<CableId>[];
  /** Terminals of other devices that hang there too, in words. */
  readonly others: readonly string[];
  readonly feeds: readonly string[];
  readonly side: "LINE" | "LOAD";
  readonly why: string;
  /** It cannot go behind the device, and why is said. */
  readonly fixed: boolean;
  readonly wanting: readonly string[];
}

/** Another way to get what was asked for. */
export type FitAlternative =
  | { readonly kind: "type"; readonly type: string; readonly title: string }
  | { readonly kind: "place"; readonly outlet: OutletKey; readonly title: string };

export interface FitAnswer {
  readonly old: Named<DeviceId>;
  readonly box: Named<EnclosureId>;
  readonly questions: readonly FitQuestion[];
  /** Types that may be chosen. */
  readonly types: readonly Named[];
  /** The type that was tried last. */
  readonly type?: string;
  /** Types that were tried first, and why they are not offered. */
  readonly notOffered: readonly { readonly type: string; readonly title: string; readonly why: string }[];
  /** Ways to give the box the room that it needs then, the least work first. */
  readonly rooms: readonly RoomWay[];
  /** What is done to the box itself, in words. */
  readonly room?: string;
  readonly result: MadeOrNot;
  /** What else would do where it is refused. */
  readonly alternatives: readonly FitAlternative[];
}

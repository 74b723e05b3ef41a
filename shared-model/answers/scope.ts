import type { DeviceId, EnclosureId, LabelId, OutletKey, SpliceId } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { ExpectedTest } from "../model/test-record.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { Finding } from "./finding.ts";

/**
 * What the work does to one thing.
 * `kept`: it is in both states and stays where it is. `moved`: it stays and comes to another place. `removed`: as found
 * only. `new`: in proposed only. `replaced`: two things linked, the one out and the other in its place. `relabelled`: it
 * stays where it is and is marked or worded otherwise. `changed`: it stays, and something of it is set or fitted otherwise.
 */
export type ScopeKind = "kept" | "moved" | "removed" | "new" | "replaced" | "relabelled" | "changed";

/** "both" of a replaced device too: the old one is as found, the new one in proposed. */
export type ScopeStates = "both" | "as-found" | "proposed";

export type ScopeItemKind =
  | "enclosure"
  | "cable"
  | "end"
  | "jumper"
  | "splice"
  | "device"
  | "entry"
  | "ring"
  | "pass-through"
  /** Internal clamps, supports, cover, volume ... of a box: `id` is that of the box, a colon and the field. */
  | "part"
  | "load"
  | "label"
  | "directory";

/** A thing to go to on the sheet. */
export interface ScopeItem {
  readonly kind: ScopeItemKind;
  /** Its id in proposed, or as found where it is removed. */
  readonly id: string;
  /** Its id as found, where that is another: a device that is replaced, a splice or jumper that stands for an old one. */
  readonly was?: string;
  /** What a person calls it: "C2 BK", "R1b", "HD", "internal clamps". */
  readonly name: string;
}

/** A place in one state: in words, and as the document has it where the thing is a conductor end. */
export interface ScopePlace {
  /** "X", "R1b LINE H", "capped", "box ground screw", "external connector". */
  readonly words: string;
  readonly at?: At;
  /** Of what has two ends in the box, a jumper: both, from a to b. */
  readonly ends?: readonly [At, At];
}

/** What a conductor is made of, for ends and jumpers. */
export interface ScopeConductor {
  readonly awg: WireSize;
  readonly colour: Colour;
  /** "BK", "WH", "bare". */
  readonly code: string;
  /** Colour that it is re-identified as in proposed, by tape or paint. */
  readonly markedAs?: Colour;
  readonly lengthIn?: number;
}

/** One thing, exactly: there is one of these for every end, jumper, splice, device and part of a box that the work touches. */
export interface ScopeChange {
  /** The same as long as it is about the same thing: box, kind of thing, id. */
  readonly key: string;
  readonly kind: ScopeKind;
  readonly item: ScopeItem;
  readonly states: ScopeStates;
  /** Where it was, or what it was; absent for what is new. */
  readonly was?: ScopePlace;
  /** Where it goes, or what it becomes; absent for what is removed. */
  readonly will?: ScopePlace;
  readonly conductor?: ScopeConductor;
  /** Moves by hand that it takes: conductor ends taken off and put on. Ends alone have them. */
  readonly detach: number;
  readonly attach: number;
  /** Of an end: the cable or jumper that it belongs to. */
  readonly owner?: { readonly kind: "cable" | "jumper"; readonly id: string };
  /** Fields that are other than as found, besides the place: "connector", "hotTab", "markedAs". */
  readonly fields?: readonly string[];
}

/** One line of the list, as a person reads it: alike changes together, both ends of a jumper together. */
export interface ScopeLine {
  readonly key: string;
  readonly kind: ScopeKind;
  /** "C1 C3 C4 BK", "a, pigtail p of R1", "R1b GFCI receptacle". */
  readonly title: string;
  /** What is struck through: "X", "R1", "2.25 in³". */
  readonly was?: string;
  /** "HD", "R1b LINE H", "out", "in its place", "X is HL". */
  readonly will: string;
  /** Every thing that it stands for: pressing the line shows them. */
  readonly items: readonly ScopeItem[];
  /** Keys of the changes that it stands for. */
  readonly changes: readonly string[];
}

/**
 * Work by hand. A move is one conductor end taken off or put on: the cutting of tails counts nothing, both ends of a new
 * jumper count, an end that was capped is put on and not taken off.
 */
export interface ScopeCounts {
  readonly detach: number;
  readonly attach: number;
  /** Splices that stand for none of as found. */
  readonly newJoints: number;
  /** Devices put in, taken out or exchanged; an exchange is one. */
  readonly devices: number;
  /** New jumpers, to be cut. */
  readonly newJumpers: number;
  readonly newCables: number;
}

/** A splice of proposed and the one of as found that it is, by id or by what is in it. */
export interface ScopeHome {
  readonly splice: SpliceId;
  readonly name: string;
  readonly home?: { readonly splice: SpliceId; readonly name: string };
}

/** A breaker, fuse or disconnect to be opened. */
export interface ScopeBreaker {
  readonly device: DeviceId;
  readonly name: string;
  readonly panel: { readonly id: EnclosureId; readonly name: string };
  readonly ratingA?: number;
  /** A fuse is taken out and kept, it has no handle to lock. */
  readonly isFuse?: true;
  /** Nobody has found which breaker of the panel it is: its name says so, and its rating is left out where that is a guess. */
  readonly notFound?: true;
  /** All poles that open together with it: of a multiwire circuit, of tied handles. */
  readonly withPoles: readonly { readonly device: DeviceId; readonly name: string }[];
  /** It must open them together: conductors of both share a neutral. */
  readonly multiwire: boolean;
}

/** What happens in one box or panel. */
export interface ScopeBox {
  readonly enclosure: EnclosureId;
  readonly name: string;
  readonly note?: string;
  readonly isPanel: boolean;
  /** Whether it comes, goes, or is opened; a box of which nothing but a name or a label is other is "not-opened". */
  readonly work: "new" | "removed" | "opened" | "not-opened";
  readonly counts: ScopeCounts;
  /** Sorted: devices, box, then hot, neutral, ground, each kept, moved, removed, new. */
  readonly changes: readonly ScopeChange[];
  readonly lines: readonly ScopeLine[];
  readonly homes: readonly ScopeHome[];
  /** Circuits whose conductors come to it as found: all are opened before a hand goes in. */
  readonly breakers: readonly ScopeBreaker[];
  /** Those that come with the work: there is nothing to open yet, and they are closed at the end. Absent for none. */
  readonly newBreakers?: readonly ScopeBreaker[];
}

/** A label to fix, or a slip to leave. */
export interface ScopeLabel {
  readonly key: string;
  /** `required`: by its words; `reset-slip`: where an outlet that goes dead is set again, our own courtesy; `drawn`: any other. */
  readonly kind: "required" | "reset-slip" | "drawn";
  readonly wording: string;
  readonly on: {
    readonly kind: "device" | "outlet" | "enclosure" | "cable";
    readonly id: string;
    readonly name: string;
  };
  readonly box?: { readonly id: EnclosureId; readonly name: string };
  /** Why, in words: "protected by R1b in B1". */
  readonly because: string;
  /** Section that asks for it, or what a person gave as the reason. */
  readonly requiredBy?: string;
  /** The label of proposed, where it is drawn. */
  readonly label?: LabelId;
}

/** A line of the material list, in generic words. */
export interface ScopeMaterial {
  readonly key: string;
  readonly group: "device" | "box" | "cable" | "connector" | "conductor" | "fitting" | "label";
  /** "GFCI receptacle, 15 A", "twist-on connector, large", "jumper, 12 AWG black, 8 in." */
  readonly what: string;
  readonly quantity: number;
  readonly unit: "piece" | "ft" | "in";
  /** What it is for: "R1b in B1", "HL, NL in B1". */
  readonly where: readonly string[];
  /** Catalogue item, where it is one. */
  readonly item?: string;
  /** "verify listing", "length is assumed", "cut from scrap". */
  readonly note?: string;
}

/** A thing that comes out and may be kept or discarded. */
export interface ScopeRemoved {
  readonly key: string;
  readonly what: string;
  readonly quantity: number;
  readonly where: readonly string[];
}

export const HOLD_POINTS = ["HP1", "HP2", "HP3", "HP4", "HP5", "HP6"] as const;
export type HoldPoint = (typeof HOLD_POINTS)[number];

export type StepKind =
  /** Tell people. */
  | "tell"
  /** Measure and write down before the work. */
  | "record"
  /** Breakers off, locked. */
  | "isolate"
  /** Stop until what it asks is done and signed. */
  | "hold"
  | "photograph"
  | "take-out"
  | "detach"
  | "survey"
  | "box"
  | "cable"
  | "join"
  | "attach"
  | "connector"
  | "mark"
  | "read-again"
  | "torque"
  | "fold"
  | "dead-test"
  | "close-up"
  | "energise"
  | "test"
  | "label"
  | "write-down";

/** A value to be found by measuring, and how far off it may be. */
export interface StepReading {
  /** Stable inside its step. */
  readonly id: string;
  /** What is measured, in words: "R3 hot to neutral". */
  readonly what: string;
  /** The same beneath its instruction, where that has said the rest: "R3 hot to neutral" of "R3 hot to neutral, loaded". */
  readonly brief?: string;
  /** Outlet, device or box, as the test record names points. */
  readonly point?: OutletKey | DeviceId | EnclosureId;
  readonly name?: string;
  readonly test?:
    | "hot-neutral"
    | "hot-ground"
    | "neutral-ground"
    | "polarity"
    | "works"
    | "own-test"
    | "reset"
    | "plug-in-button"
    | "dead"
    | "continuity"
    | "note";
  readonly expected?: ExpectedTest;
  /** The same in words: "121.9 V, within 5 V", "open", "0 V". */
  readonly expect: string;
}

/** One instruction: at most one conductor end. */
export interface WorkStep {
  /** Stable: the same as long as it is about the same thing, so that it can be ticked. */
  readonly id: string;
  /** Counts up through the whole job: 1, 2, 3. */
  readonly number: number;
  /** Class of instruction, 1 to 15, in the order of the work. */
  readonly stage: number;
  readonly kind: StepKind;
  readonly hold?: HoldPoint;
  /** Box or panel that it is done in; absent for what concerns the whole job. */
  readonly box?: { readonly id: EnclosureId; readonly name: string };
  /** What it touches: pressing it shows them. */
  readonly items: readonly ScopeItem[];
  readonly text: string;
  /** More sentences: how, and what to look for. */
  readonly details: readonly string[];
  readonly readings: readonly StepReading[];
  /** What a wrong result points to. */
  readonly ifNot?: string;
  /** "CM11": number of a commissioning test. */
  readonly test?: string;
  /** Ids of cautions that stand beside it. */
  readonly cautions: readonly string[];
  /** It is signed with name, date and time: hold points, which are never ticked all together, and the hand-over. */
  readonly sign: boolean;
}

export interface Caution {
  readonly id: string;
  readonly text: string;
}

/** A place on the card of a circuit where somebody signs. */
export interface SignOff {
  readonly step: string;
  readonly what: string;
  readonly fields: readonly ("name" | "date" | "time" | "instrument" | "signature")[];
}

export interface ScopeFindings {
  readonly repaired: readonly Finding[];
  readonly inherited: readonly Finding[];
  readonly inheritedTouched: readonly Finding[];
  readonly introduced: readonly Finding[];
}

/** The difference of the two states, by box, with what it counts. */
export interface ScopeDifference {
  /** Boxes and panels in which anything is other, in the order of the drawing. */
  readonly boxes: readonly ScopeBox[];
  /** Cables that come, go or are changed, and what lies in no box. */
  readonly elsewhere: readonly ScopeChange[];
  readonly elsewhereLines: readonly ScopeLine[];
  readonly totals: ScopeCounts & { readonly boxes: number };
}

/** The work instructions that a difference leads to. */
export interface ScopeWork {
  readonly steps: readonly WorkStep[];
  readonly signOffs: readonly SignOff[];
  readonly cautions: readonly Caution[];
  /** What the numbers of the tests rest on, as sentences. */
  readonly assumptions: readonly string[];
}

/** What the difference leads to before any figure of a test is computed. */
export interface ScopePart extends ScopeDifference {
  readonly findings: ScopeFindings;
  readonly labels: readonly ScopeLabel[];
  readonly materials: readonly ScopeMaterial[];
  readonly removed: readonly ScopeRemoved[];
  /** Every breaker to be opened for the job. */
  readonly breakers: readonly ScopeBreaker[];
}

/** Everything that the difference of as found and proposed leads to. Plain data. */
export interface ScopeAnswer extends ScopePart, ScopeWork {}

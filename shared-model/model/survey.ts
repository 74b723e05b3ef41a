import type { CableId, ConductorKey, DeviceId, EnclosureId, OutletKey } from "./ids.ts";

/**
 * How the wires of a surveyed box stand while something is read.
 * `A0`: as found, power on, nothing opened. `A1`: power off and proved dead, every cable apart and capped singly. `A2`:
 * apart and power on, caps on but for the pair that is read. `A3`: the supply joined to one or two other cables, capped,
 * and power on to see what works. `A4`: as A3 or A2, with a switch between the two wires of a cable. Every change of
 * arrangement passes through A1.
 */
export const SURVEY_ARRANGEMENTS = ["A0", "A1", "A2", "A3", "A4"] as const;
export type SurveyArrangement = (typeof SURVEY_ARRANGEMENTS)[number];

/** What lies at the far end of a cable, as far as a person can see it work. */
export const SURVEY_ITEM_KINDS = ["outlet", "light"] as const;
export const SURVEY_LAMPS = ["filament", "led", "none"] as const;
export type SurveyLamp = (typeof SURVEY_LAMPS)[number];

/** An outlet or a light that exists somewhere and that some cable of the box may feed. */
export interface SurveyItem {
  /** Key of the outlet where the drawing has it, else the name. */
  readonly id: string;
  readonly name: string;
  readonly kind: (typeof SURVEY_ITEM_KINDS)[number];
  /** What is screwed into a light; absent is not known. */
  readonly lamp?: SurveyLamp;
  /** Switches away from this box that must be on for it to work: an id of the drawing, or a name. */
  readonly switches?: readonly string[];
}

/** Outlets and lights that hang on one cable, whichever that is. */
export type SurveyGroup = readonly SurveyItem[];

/** Position of a switch away from the box, by what `SurveyItem.switches` names. */
export interface SurveySwitch {
  readonly switch: string;
  readonly on: boolean;
}

/** What a person knows of a cable without a reading at this box, and from what. */
export interface SurveyKnown {
  readonly cable: CableId;
  /** It brings the supply from a panel, or leads to all of these outlets and lights. */
  readonly leadsTo: "panel" | readonly string[];
  /** How it is known: "followed along the joist to the panel". */
  readonly how: string;
}

/** What a person says about a box before its cables are known. Absent where nothing was said. */
export interface SurveyFacts {
  /** What the cables may lead to, in place of what the drawing tells; for cables whose far ends are not drawn. */
  readonly groups?: readonly SurveyGroup[];
  /** Switches of this box that control a light each, in place of those drawn. */
  readonly switchesHere?: number;
  /** Lamps that were looked at, by item: a drawing does not tell. */
  readonly lamps?: readonly { readonly item: string; readonly lamp: SurveyLamp }[];
  /** How the reference of readings to ground was proved, where no cable has a ground: "water pipe, 120 V to the hot of R2". */
  readonly referenceProved?: string;
  /** Cables of which a person knows where they lead; the latest of a cable counts. */
  readonly known?: readonly SurveyKnown[];
}

/** One wire of a cable at the box, or the grounds of the box: what a lead of an instrument touches. */
export type SurveyPoint = { readonly cable: CableId; readonly conductor: ConductorKey } | "ground";

/** What was read at a surveyed box. A figure or "open" stands in the value of the reading itself. */
export type SurveyTest =
  /** Volts with a meter, ohms with the power off, between two points. */
  | { readonly kind: "pair"; readonly from: SurveyPoint; readonly to: SurveyPoint }
  /** Every outlet and light that worked, by item; those not named did not. */
  | { readonly kind: "works"; readonly items: readonly string[] }
  /** Amperes in one wire, by clamp meter. */
  | { readonly kind: "current"; readonly cable: CableId; readonly conductor: ConductorKey }
  /**
   * A lamp of about 60 W across the two wires of a cable through a fused lead, put on while dead: volts across it once it
   * is energised, and whether the light beyond glowed.
   */
  | { readonly kind: "test-lamp"; readonly cable: CableId; readonly lightGlows: boolean }
  /** Looked into the luminaire's box with the power off: is the feed there, with white spliced to black? */
  | { readonly kind: "look"; readonly cable: CableId; readonly feedThere: boolean }
  /** Whether every live wire of a cable went dead with one breaker off. */
  | { readonly kind: "breaker"; readonly cable: CableId; readonly breaker: DeviceId; readonly wentDead: boolean };

/** What makes a reading part of the survey of a box, or of the map of circuits. */
export interface SurveyedReading {
  /** Absent for what is seen in the whole house. */
  readonly box?: EnclosureId;
  /** Absent for facts and for the map of circuits. */
  readonly arrangement?: SurveyArrangement;
  readonly test: SurveyTest | SurveyTold;
  /** Cables joined to each other, black to black, white to white, ground to ground (A3, A4). */
  readonly joined?: readonly CableId[];
  readonly switches?: readonly SurveySwitch[];
  /** Breakers that were off. */
  readonly off?: readonly DeviceId[];
  /** Whether somebody made sure that nothing was plugged in anywhere behind these cables. */
  readonly nothingPlugged?: boolean;
}

/** What is kept with the survey and is no reading at the wires of a box. */
export type SurveyTold =
  /** What is said about a box; the latest counts. */
  | { readonly kind: "facts"; readonly facts: SurveyFacts }
  /** With one breaker off: what was seen dead, and what was seen live. What is in neither was not looked at. */
  | {
      readonly kind: "breaker-off";
      readonly breaker: DeviceId;
      readonly dead: readonly OutletKey[];
      readonly stillLive?: readonly OutletKey[];
    }
  /** Volts lost at an outlet while a load is on at another: what they share of the circuit. */
  | { readonly kind: "drop"; readonly loadAt: OutletKey; readonly at: OutletKey; readonly volts: number }
  /** With the joints in the box of an outlet opened, these went dead. */
  | { readonly kind: "opened"; readonly at: OutletKey; readonly dead: readonly OutletKey[] };

/** Instruments of a survey; `continuity` measures ohms, `meter` is one of high impedance. */
export const SURVEY_INSTRUMENTS = [
  "low-impedance-meter",
  "meter",
  "plug-in-tester",
  "noncontact",
  "continuity",
  "clamp-meter",
  "test-lamp",
  "by-eye",
] as const;
export type SurveyInstrument = (typeof SURVEY_INSTRUMENTS)[number];

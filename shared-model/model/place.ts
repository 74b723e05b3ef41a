import type { Colour } from "../units/colour.ts";
import type { Inches, Ohms } from "../units/quantity.ts";
import type { WithEvidence } from "./evidence.ts";
import type { DeviceId, SpliceId, TerminalName } from "./ids.ts";

/** Where a conductor end is. There is no other record of connections. */
export type At =
  /** In a hole of a terminal; a side screw has one hole, 1. Two ends may wrongly share one: that is a finding, not an error. */
  | { readonly kind: "terminal"; readonly device: DeviceId; readonly terminal: TerminalName; readonly hole: number }
  | { readonly kind: "splice"; readonly splice: SpliceId }
  /** On the grounding screw or clip of the metal of this enclosure. */
  | { readonly kind: "bond" }
  /** Insulated alone under a connector. */
  | { readonly kind: "capped" }
  /** Bare and unattached. */
  | { readonly kind: "loose" };

export type EndCondition = "good" | "nicked" | "brittle" | "burnt";

/** The place of one end, and what is known of the end itself. */
export interface Place extends WithEvidence {
  readonly at: At;
  readonly freeLengthIn?: Inches;
  readonly outsideOpeningIn?: Inches;
  readonly condition?: EndCondition;
  /** Left capped on purpose. */
  readonly spare?: boolean;
  /** Colour it is re-identified as, with tape or paint, at this end. */
  readonly markedAs?: Colour;
  /** Resistance of a bad joint at this end; absent means a good one. */
  readonly jointOhm?: Ohms;
  /** What a person wrote on its tag; a label, not a place. */
  readonly tag?: string;
}

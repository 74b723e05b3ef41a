import type { SurveyRoleKind } from "../../answers/survey.ts";
import type { SurveyItem, SurveyLamp } from "../../model/survey.ts";

/** What one cable may lead to: one of the ways in which a circuit may go on beyond it. */
export interface Lead {
  /** Two leads with one key are the same. */
  readonly key: string;
  readonly kind: SurveyRoleKind;
  /** Outlets and lights beyond, where they are told apart. */
  readonly items: readonly SurveyItem[];
  readonly reversed?: true;
  readonly openNeutral?: true;
  readonly off?: true;
  /** Of a switched supply of three wires: hot on one of two travellers or the other, as a three-way switch elsewhere stands. */
  readonly travels?: true;
  /** Place among the groups that were listed; absent for what may be there any number of times. */
  readonly group?: number;
}

/** Brings power to the box, or would with its breaker on. */
export const isSource = ({ kind }: Lead): boolean => SOURCES.has(kind);
const SOURCES: ReadonlySet<SurveyRoleKind> = new Set(["supply", "multiwire-supply", "switched-supply", "loop-fed"]);

/** The ways in which things that are not known may be, with their shares; nothing in it names an item. */
export interface LeadVariant {
  readonly share: number;
  /** Lamps of lights that are on, by place among the items; absent lights are off at a switch. */
  readonly lamps: readonly SurveyLamp[];
  /** A resistive load behind it. */
  readonly load?: true;
  /** Contacts beyond: of a loop's switch, of a distant switch that feeds, of the far three-way. */
  readonly closed?: true;
  /** A second hot that stands on the same leg as the first. */
  readonly sameLeg?: true;
}

/** A wire of a cable by what it usually is: first hot, white, second hot. */
export type Wire = "b" | "w" | "r";

import { COLOURS } from "../../units/colour.ts";
import { WIRE_SIZES } from "../../units/wire-size.ts";
import type { DeviceTrait } from "./device-traits.ts";
import { choiceWords, fieldWords, wording } from "./property-words.ts";

/** A value that a person can pick, with the words for it. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** What a field takes, and so what control edits it. */
export type PropertyKind =
  | { readonly kind: "text"; readonly longest: number; readonly lines?: "many" }
  /** A finite number from `least` to `most`, ends included, in `unit` ("" for a count). */
  | {
      readonly kind: "number";
      readonly unit: string;
      readonly least: number;
      readonly most: number;
      readonly whole?: true;
    }
  | { readonly kind: "flag" }
  | { readonly kind: "choice"; readonly choices: readonly Choice[] }
  /** Several of the choices, each once; with `repeats`, a list in which one may stand several times. */
  | { readonly kind: "choices"; readonly choices: readonly Choice[]; readonly repeats?: true }
  /** Marked, from the table of standard boxes, or unknown. */
  | { readonly kind: "volume" }
  /** Id of a room of the document. */
  | { readonly kind: "room" }
  /** Id of another breaker of the same panel. */
  | { readonly kind: "breaker" };

export interface Property {
  readonly field: string;
  readonly label: string;
  readonly takes: PropertyKind;
  /** It may be absent, and null takes it away. */
  readonly optional: boolean;
  /** Where it lies inside the entity when that is not its own field. */
  readonly path?: readonly string[];
  /** Enclosures of one kind only. */
  readonly only?: "box" | "panel";
  /** Devices with one of these traits only; absent means every device. */
  readonly traits?: readonly DeviceTrait[];
}

export type Where = Pick<Property, "only" | "traits">;

/** What is no word: a system, a letter. */
export const asWritten = (value: string): string => value;

/** Choices in the order of their values. */
export const choicesBy = <V extends string>(values: readonly V[], label: (value: V) => string): readonly Choice[] =>
  values.map((value) => ({ value, label: label(value) }));

type ChoiceValue = keyof typeof choiceWords;
/** Words of values that mean something else in this field than elsewhere. */
type OwnWords = Readonly<Partial<Record<ChoiceValue, string>>>;

const choices = (values: readonly ChoiceValue[], own: OwnWords = {}): readonly Choice[] =>
  choicesBy(values, (value) => own[value] ?? choiceWords[value]);

export const may = (field: keyof typeof fieldWords, takes: PropertyKind, where: Where = {}): Property => ({
  field,
  label: fieldWords[field],
  takes,
  optional: true,
  ...where,
});
export const must = (field: keyof typeof fieldWords, takes: PropertyKind, where: Where = {}): Property => ({
  ...may(field, takes, where),
  optional: false,
});

export const text = (longest: number): PropertyKind => ({ kind: "text", longest });
export const prose: PropertyKind = { kind: "text", longest: 10_000, lines: "many" };
export const number = (unit: string, least: number, most: number): PropertyKind => ({
  kind: "number",
  unit,
  least,
  most,
});
export const count = (least: number, most: number): PropertyKind => ({
  kind: "number",
  unit: "",
  least,
  most,
  whole: true,
});
export const choice = (values: readonly ChoiceValue[], own?: OwnWords): PropertyKind => ({
  kind: "choice",
  choices: choices(values, own),
});
export const several = (values: readonly ChoiceValue[]): PropertyKind => ({
  kind: "choices",
  choices: choices(values),
});
export const flag: PropertyKind = { kind: "flag" };
export const gauges: readonly Choice[] = choicesBy(WIRE_SIZES, wording.awg);
export const gauge: PropertyKind = { kind: "choice", choices: gauges };
export const colour: PropertyKind = choice(COLOURS);
export const material: PropertyKind = choice(["copper", "aluminium", "copper-clad-aluminium"]);
export const priority: PropertyKind = choice(["none", "freezer", "medical", "alarm", "fire-alarm-system", "sump-pump"]);

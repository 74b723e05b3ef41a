import { COLOURS } from "../../units/colour.ts";
import { WIRE_SIZES } from "../../units/wire-size.ts";
import type { DeviceTrait } from "./device-traits.ts";

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

const words = (value: string): string => {
  const text = value.replaceAll("-", " ");
  return text.charAt(0).toUpperCase() + text.slice(1);
};
export const choices = (values: readonly string[], labels: Readonly<Record<string, string>> = {}): readonly Choice[] =>
  values.map((value) => ({ value, label: labels[value] ?? words(value) }));

export const may = (field: string, label: string, takes: PropertyKind, where: Where = {}): Property => ({
  field,
  label,
  takes,
  optional: true,
  ...where,
});
export const must = (field: string, label: string, takes: PropertyKind, where: Where = {}): Property => ({
  ...may(field, label, takes, where),
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
export const choice = (values: readonly string[], labels?: Readonly<Record<string, string>>): PropertyKind => ({
  kind: "choice",
  choices: choices(values, labels),
});
export const several = (values: readonly string[], labels?: Readonly<Record<string, string>>): PropertyKind => ({
  kind: "choices",
  choices: choices(values, labels),
});
export const flag: PropertyKind = { kind: "flag" };
export const gauge: PropertyKind = choice(
  WIRE_SIZES,
  Object.fromEntries(WIRE_SIZES.map((size) => [size, `${size} AWG`])),
);
export const colour: PropertyKind = choice(COLOURS);
export const material: PropertyKind = choice(["copper", "aluminium", "copper-clad-aluminium"]);
export const priority: PropertyKind = choice(
  ["none", "freezer", "medical", "alarm", "fire-alarm-system", "sump-pump"],
  { alarm: "Smoke or other alarm of a dwelling", "fire-alarm-system": "Fire alarm system (Article 760)" },
);

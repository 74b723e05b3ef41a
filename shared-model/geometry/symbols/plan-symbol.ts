import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Point } from "../../model/project.ts";
import type { SymbolSet } from "../../model/symbol-set.ts";

/** What stands for itself on a plan; several types of the catalogue may share one. */
export const SYMBOL_KINDS = [
  "receptacle",
  "receptacle-single",
  "receptacle-two-slot",
  "receptacle-switch",
  "gfci",
  "afci-receptacle",
  "dual-function",
  "gfci-blank",
  "switch",
  "switch-double-pole",
  "switch-3way",
  "switch-4way",
  "switch-pilot",
  "switch-two",
  "dimmer",
  "timer",
  "luminaire",
  "fan",
  "fan-light",
  "alarm",
  "appliance",
  "disconnect",
  "breaker",
  "breaker-gfci",
  "breaker-afci",
  "breaker-dual",
  "fuse",
  "neutral-bar",
  "ground-bar",
  "lugs",
  "panel",
  "junction",
] as const;
export type SymbolKind = (typeof SYMBOL_KINDS)[number];

/** Side of the square that a symbol is drawn in, and the grid that its ports lie on. */
export const SYMBOL_SIZE = 24;
export const PORT_GRID = 2;
/** Width of its lines, of that square. */
export const SYMBOL_STROKE = 1.6;

/**
 * A part of a symbol, in a square of `SYMBOL_SIZE` with the origin at its upper left corner. Angles in degrees from the
 * right, clockwise.
 */
export type SymbolPart =
  | { readonly line: readonly number[]; readonly closed?: true; readonly filled?: true }
  | { readonly ring: readonly [x: number, y: number, radius: number]; readonly filled?: true }
  | { readonly arc: readonly [x: number, y: number, radius: number, from: number, to: number] }
  | { readonly word: string; readonly at: readonly [x: number, y: number]; readonly high: number };

export interface PlanSymbol {
  readonly id: SymbolKind;
  readonly name: string;
  readonly parts: readonly SymbolPart[];
  /** Where cables may meet it. */
  readonly ports: readonly Point[];
}

const wording = catalogue({
  basis: "drawn by us, not verified against the standard",
  international: "International plan symbols",
  internationalAfter: (basis: Part) =>
    `after the usual shapes of installation plans as in IEC 60617, from memory; ${basis}`,
  us: "US plan symbols",
  usAfter: (basis: Part) => `after the usual shapes of US electrical plans, from memory; ${basis}`,
});

/** How far the shapes are backed: nobody has held them beside the standard. */
export const SYMBOL_BASIS = wording.basis;

/** The open conventions that a set is drawn after. */
export const SET_WORDS: Readonly<Record<SymbolSet, { readonly title: string; readonly after: string }>> = {
  us: { title: wording.us, after: wording.usAfter(SYMBOL_BASIS) },
  international: { title: wording.international, after: wording.internationalAfter(SYMBOL_BASIS) },
};

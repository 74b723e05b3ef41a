import type { FillItem, FillLine } from "../../answers/fill.ts";
import type { Support } from "../../model/enclosure.ts";
import type { Millilitres } from "../../units/millilitres.ts";
import { type CubicInches, timesVolume } from "../../units/volume.ts";
import { compareWireSize, type WireSize } from "../../units/wire-size.ts";
import type { EditionValues } from "../editions/edition-data.ts";

/** How a conductor stands in a box: see the fill worksheet in the README. */
export const CONDUCTOR_STANDINGS = ["ends", "through", "loop", "inside", "canopy"] as const;
export type ConductorStanding = (typeof CONDUCTOR_STANDINGS)[number];

/** What a box holds, as far as box fill asks. Counts are whole and may be 0. */
export interface BoxContents {
  readonly conductors: readonly { readonly awg: WireSize; readonly count: number; readonly as: ConductorStanding }[];
  readonly grounds: readonly { readonly awg: WireSize; readonly count: number; readonly isolated: boolean }[];
  /** At least one internal clamp is present, used or not. */
  readonly clamps: boolean;
  readonly supports: readonly Support[];
  /** Per yoke: the largest conductor on it, the gangs that it covers, and how far its body reaches in, where it is known. */
  readonly devices: readonly { readonly awg: WireSize; readonly gangs: number; readonly depthCm?: number }[];
  /** Per terminal block assembly, the largest conductor on it. */
  readonly terminalBlocks: readonly WireSize[];
  /** Insulated connectors, by the largest conductor under them. */
  readonly connectors?: readonly { readonly awg: WireSize; readonly count: number }[];
}

export type CountedFill =
  | {
      readonly applies: true;
      readonly lines: readonly FillLine[];
      readonly total: CubicInches;
      /** The total by the table in millilitres, where the rule set has one. */
      readonly totalMl?: Millilitres;
    }
  | { readonly applies: false; readonly reason: string };

/** A line of so many allowances of a size. */
export function allowanceLine(
  item: FillItem,
  awg: WireSize,
  count: number,
  section: string,
  values: EditionValues,
): FillLine {
  const each = allowanceOf(awg, values);
  const eachMl = values.conductorMl?.value[awg];
  return {
    item,
    awg,
    count,
    each,
    volume: timesVolume(each, count),
    section,
    ...(eachMl !== undefined && { ml: { each: eachMl, volume: (eachMl * count) as Millilitres } }),
  };
}

/** A line for each size that is counted, from the thickest down. */
export function linesBySize(
  item: FillItem,
  counts: ReadonlyMap<WireSize, number>,
  section: string,
  values: EditionValues,
): readonly FillLine[] {
  return thickestFirst(counts)
    .filter(([, count]) => count > 0)
    .map(([awg, count]) => allowanceLine(item, awg, count, section, values));
}

export function allowanceOf(awg: WireSize, values: EditionValues): CubicInches {
  const allowance = values.conductorAllowance.value[awg];
  if (allowance === undefined) throw new Error(`No allowance for ${awg} AWG.`);
  return allowance;
}

export const thickestFirst = (counts: ReadonlyMap<WireSize, number>): readonly (readonly [WireSize, number])[] =>
  [...counts].sort(([a], [b]) => compareWireSize(b, a));

export const addCount = (counts: Map<WireSize, number>, awg: WireSize, count: number): void => {
  counts.set(awg, (counts.get(awg) ?? 0) + count);
};

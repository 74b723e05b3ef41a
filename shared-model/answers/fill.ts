import type { Millilitres } from "../units/millilitres.ts";
import type { CubicInches } from "../units/volume.ts";
import type { WireSize } from "../units/wire-size.ts";

export type FillItem =
  | "conductors"
  | "clamps"
  | "supports"
  | "devices"
  | "grounds"
  | "terminal-blocks"
  /** Only by CSA C22.1: insulated connectors, and devices that reach far into the box. */
  | "connectors"
  | "deep-devices";

/** One line of the box-fill ledger: `count` allowances of `each`, which may be a quarter for grounds past the fourth. */
export interface FillLine {
  readonly item: FillItem;
  readonly awg: WireSize;
  readonly count: number;
  readonly each: CubicInches;
  readonly volume: CubicInches;
  readonly section: string;
  /** The same by the table in millilitres, where the rule set has one. */
  readonly ml?: { readonly each: Millilitres; readonly volume: Millilitres };
}

export type FillVerdict = "fits" | "overfull" | "volume-unknown" | "not-applicable";

export interface FillLedger {
  readonly lines: readonly FillLine[];
  readonly total: CubicInches;
  readonly available?: CubicInches;
  readonly spare?: CubicInches;
  readonly verdict: FillVerdict;
  /** The total by the table in millilitres, where the rule set has one. Judged is what is told in cubic inches. */
  readonly totalMl?: Millilitres;
  /** Why the counting rule does not apply, or what is missing. */
  readonly reason?: string;
}

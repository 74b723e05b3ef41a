import type { CubicInches } from "../units/volume.ts";
import type { WireSize } from "../units/wire-size.ts";

export type FillItem = "conductors" | "clamps" | "supports" | "devices" | "grounds" | "terminal-blocks";

/** One line of the box-fill ledger: `count` allowances of `each`, which may be a quarter for grounds past the fourth. */
export interface FillLine {
  readonly item: FillItem;
  readonly awg: WireSize;
  readonly count: number;
  readonly each: CubicInches;
  readonly volume: CubicInches;
  readonly section: string;
}

export type FillVerdict = "fits" | "overfull" | "volume-unknown" | "not-applicable";

export interface FillLedger {
  readonly lines: readonly FillLine[];
  readonly total: CubicInches;
  readonly available?: CubicInches;
  readonly spare?: CubicInches;
  readonly verdict: FillVerdict;
  /** Why the counting rule does not apply, or what is missing. */
  readonly reason?: string;
}

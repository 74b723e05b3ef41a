import type { DeviceId, OutletKey } from "../../model/ids.ts";
import type { HandlePosition, OutletStanding } from "../section.ts";

export type Verdict = "pass" | "fail" | "cannot-tell";

/** P1 isolation, P2 balance, P3 detection, P4 power, P5 class and direction, P6 quiet. */
export const PROOF_TESTS = ["P1", "P2", "P3", "P4", "P5", "P6"] as const;
export type ProofTest = (typeof PROOF_TESTS)[number];

/**
 * A share of a current that a sensor may see, or miss, and still be said to see none, or all of it: one part in a hundred.
 * Chosen; a resistance to earth that opens a device of 6 mA still does.
 */
export const LEAST_SHARE = 0.01;

/** An outlet whose own use makes a difference of current at a device, and how great it is: amperes per ampere. */
export interface Offender {
  readonly outlet: OutletKey;
  readonly share: number;
}

/** What one sensing device does for one outlet, over all settings in which the outlet is live. */
export interface DeviceProof {
  readonly device: DeviceId;
  readonly tests: Readonly<Record<ProofTest, Verdict>>;
  /** P1: with its contacts open a source still reaches the hot of the outlet, or a neutral that it should open. */
  readonly hotReached: boolean;
  readonly neutralReached: boolean;
  /** P1: with its contacts open the outlet is live through something that hangs between a live conductor and it. */
  readonly reachedThroughLoad: boolean;
  /** P2: greatest difference that it sees for each ampere from hot to neutral of the outlet; 0 when it sees none. */
  readonly balance: number;
  /** P2: in some setting the neutral of the outlet is joined to nothing. */
  readonly neutralAdrift: boolean;
  /** P3: what it sees of each ampere from the hot to the ground outside, where that is farthest from all of it. */
  readonly detection: number;
  readonly powered: boolean;
  readonly personnelClass: boolean;
  readonly fedOnLine: boolean;
  /** P6: what makes it trip in use. Sorted by outlet. */
  readonly offenders: readonly Offender[];
  /** Positions in which one of P1 to P5 fails first; empty when they fail in every setting, or in none. */
  readonly failsWhen: readonly HandlePosition[];
  /** P1 to P5 pass in every setting in which the outlet is live. */
  readonly protects: boolean;
}

export interface OutletProof {
  readonly standing: OutletStanding;
  /** One for each sensing device of the section, sorted by device. */
  readonly devices: readonly DeviceProof[];
  /**
   * "all": each of `protectedBy` protects it in every setting in which it is live. "by-setting": one or another of them
   * does, according to the switches. "none": in some setting no device does. "not-live": no setting brings a source to its
   * hot. "cannot-tell": more switches bear on it than are tried.
   */
  readonly verdict: "all" | "by-setting" | "none" | "not-live" | "cannot-tell";
  readonly protectedBy: readonly DeviceId[];
}

export const byOutlet = (p: Offender, q: Offender): number => (p.outlet < q.outlet ? -1 : p.outlet > q.outlet ? 1 : 0);

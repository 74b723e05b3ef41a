import type { EndKey, JumperId, SpliceId } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { JointGroup } from "./joint-group.ts";
import type { Landing } from "./landing.ts";

/** Where an end is to be: in a splice of the plan, or at a place that exists. */
export type PlannedAt = { readonly splice: number } | { readonly at: At };

export interface PlannedSplice {
  readonly group: string;
  /** Its word on the card: the name of its group, numbered where the group has several. */
  readonly word: string;
  /** The splice that it is now; absent for one to make. */
  readonly home?: SpliceId;
  readonly connector: string;
  readonly connectorChanges: boolean;
  /** Ends of cables and of jumpers that exist. */
  readonly ends: readonly EndKey[];
  /** Conductor ends in it when all is done, new jumpers included. */
  readonly count: number;
}

export interface PlannedJumper {
  readonly group: string;
  readonly awg: WireSize;
  readonly colour: Colour;
  readonly sides: readonly [PlannedAt, PlannedAt];
}

/** Moves of conductor ends, as counted by hand: one to take an end off, one to put it on. */
export interface MoveCount {
  readonly detach: number;
  readonly attach: number;
  readonly newSplices: number;
}

export interface JointPlan {
  readonly landings: readonly {
    readonly group: JointGroup;
    readonly landing: Landing;
    readonly splices: readonly number[];
  }[];
  readonly splices: readonly PlannedSplice[];
  readonly newJumpers: readonly PlannedJumper[];
  readonly removedJumpers: readonly JumperId[];
  /** Jumpers that serve on, moved or not. */
  readonly keptJumpers: readonly JumperId[];
  /** Ends that exist and change their place, with where they go. */
  readonly moved: ReadonlyMap<EndKey, PlannedAt>;
  readonly moves: MoveCount;
}

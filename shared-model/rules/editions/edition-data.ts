import type { SectionConfidence } from "../../answers/finding.ts";
import type { Material } from "../../model/cable.ts";
import type { Edition } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import type { Amps, Inches } from "../../units/quantity.ts";
import type { CubicInches } from "../../units/volume.ts";
import type { WireSize } from "../../units/wire-size.ts";

/** A value of an edition with the section it stands in, where we have it from, and how well that is backed. */
export interface Sourced<T> {
  readonly value: T;
  readonly section: string;
  readonly source: string;
  readonly confidence: SectionConfidence;
}

/** Greatest breaker or fuse ahead of a small conductor, by material and size. A size that is not named has no row. */
export type SmallConductorLimits = Readonly<Record<Material, Readonly<Partial<Record<WireSize, Amps>>>>>;

export interface EditionValues {
  /** Volume of one allowance by size, exact; sizes from 4 AWG up have none. */
  readonly conductorAllowance: Sourced<Readonly<Partial<Record<WireSize, CubicInches>>>>;
  /** Length of an unbroken loop inside the box from which it counts more, inches. */
  readonly loopLengthIn: Sourced<Inches>;
  /** Allowances of a conductor with such a loop. */
  readonly loopAllowances: Sourced<number>;
  /** How many wires thinner than 14 AWG from a luminaire canopy are left out. */
  readonly canopyWiresLeftOut: Sourced<number>;
  /** Allowances for all internal clamps together, of the largest conductor in the box. */
  readonly clampAllowances: Sourced<number>;
  /** Allowances for each kind of support fitting, of the largest conductor in the box. */
  readonly supportAllowances: Sourced<number>;
  /** Allowances for each gang that a device covers, of the largest conductor on it. */
  readonly deviceAllowancesPerGang: Sourced<number>;
  /** How many equipment grounding conductors the first allowance covers, where later ones count. */
  readonly groundsInFirstAllowance: Sourced<number>;
  /** Quarters of an allowance for each ground past those; 0 where all of them share one allowance. */
  readonly quartersPerFurtherGround: Sourced<number>;
  /** Allowances for a set of isolated grounds of its own; 0 where they count with the rest. */
  readonly isolatedSetAllowances: Sourced<number>;
  /** Allowances for each terminal block assembly, of the largest conductor on it. */
  readonly terminalBlockAllowances: Sourced<number>;
  /** Conductors that one terminal screw holds unless it is marked for more. */
  readonly wiresPerScrew: Sourced<number>;
  /** Conductors that one hole of a clamp plate holds. */
  readonly wiresPerHole: Sourced<number>;
  /** Farthest fastening of a cable from a single-gang nonmetallic box that does not clamp it, inches. */
  readonly unclampedFastenedWithinIn: Sourced<Inches>;
  /** Least sheath inside such a box, inches. */
  readonly unclampedSheathInsideIn: Sourced<Inches>;
  readonly smallConductorAmps: Sourced<SmallConductorLimits>;
  /** Kinds of place whose receptacles need ground-fault protection; absent where the edition is held for counting only. */
  readonly protectedPlaces?: Sourced<readonly RoomKind[]>;
  /** Of those, the kinds that count only with a floor at or below grade. */
  readonly placesAtOrBelowGrade?: Sourced<readonly RoomKind[]>;
  /** Greatest face rating of a receptacle that the table covers, amperes; absent when any. */
  readonly protectedUpToA?: Sourced<Amps>;
  /** Kinds of place whose lighting outlets need it too. */
  readonly protectedLightingPlaces?: Sourced<readonly RoomKind[]>;
  /** Kinds of place whose hard-wired outlets need it too. */
  readonly protectedHardWiredPlaces?: Sourced<readonly RoomKind[]>;
}

/** One dated set of tables and clauses. */
export interface EditionData {
  readonly year: Edition;
  /** False where another edition's text stands in for one that nobody has checked. */
  readonly verified: boolean;
  /** The edition whose text the values are. */
  readonly textOf: Edition;
  /** Box fill alone is held for it. */
  readonly countingOnly: boolean;
  readonly values: EditionValues;
}

/** Name of a value, as rules, amendments and help pages write it. */
export type ValueName = keyof EditionValues;

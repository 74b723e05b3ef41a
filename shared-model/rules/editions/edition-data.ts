import type { SectionConfidence } from "../../answers/finding.ts";
import type { Material } from "../../model/cable.ts";
import type { Edition } from "../../model/project.ts";
import type { RoomKind } from "../../model/room.ts";
import type { Millilitres } from "../../units/millilitres.ts";
import type { Amps, Feet, Inches } from "../../units/quantity.ts";
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

/** Least equipment grounding conductor up to a rating of the breaker; clad aluminium counts as aluminium. */
export interface EquipmentGroundRow {
  readonly upToA: Amps;
  readonly copper: WireSize;
  readonly aluminium: WireSize;
}

/** Volume that a size of box is credited with by a table in millilitres, and the cubic inches that these were made from. */
export interface TableBox {
  readonly in3: CubicInches;
  readonly ml: Millilitres;
}

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
  /** Volume of one allowance as a table in millilitres prints it; CSA C22.1 alone has one, and the four that follow. */
  readonly conductorMl?: Sourced<Readonly<Partial<Record<WireSize, Millilitres>>>>;
  /** Boxes of known volume, by the name of their size; where it is absent the sizes of the stock hold. */
  readonly tableBoxes?: Sourced<Readonly<Record<string, TableBox>>>;
  /** Insulated connectors that make one allowance together; what is left over counts nothing. */
  readonly connectorsPerAllowance?: Sourced<number>;
  /** Depth behind its strap from which a device takes room by its depth, inches, and how much: millilitres per centimetre. */
  readonly deepDeviceFromIn?: Sourced<Inches>;
  readonly deepDeviceMlPerCm?: Sourced<number>;
  /** Allowances of all grounds together, where they are not counted as above. */
  readonly groundAllowances?: Sourced<number>;
  /** Conductors that one terminal screw holds unless it is marked for more. */
  readonly wiresPerScrew: Sourced<number>;
  /** Conductors that one hole of a clamp plate holds. */
  readonly wiresPerHole: Sourced<number>;
  /** Farthest fastening of a cable from a single-gang nonmetallic box that does not clamp it, inches. */
  readonly unclampedFastenedWithinIn: Sourced<Inches>;
  /** Least sheath inside such a box, inches. */
  readonly unclampedSheathInsideIn: Sourced<Inches>;
  /** Recommended most of the voltage to lose on a branch circuit, and with its feeder, per cent of it. */
  readonly branchDropPercent?: Sourced<number>;
  readonly totalDropPercent?: Sourced<number>;
  /** Load for which that is told: per cent of the rating of the breaker. */
  readonly statedLoadPercent?: Sourced<number>;
  /** Least sheath of a cable inside a nonmetallic box, inches. */
  readonly sheathInsideIn: Sourced<Inches>;
  /** Least free length of a conductor that is spliced or ends in a box, from where it leaves its sheath, inches. */
  readonly freeLengthIn: Sourced<Inches>;
  /** Least length past the opening of a box whose opening is small, inches. */
  readonly outsideOpeningIn: Sourced<Inches>;
  /** An opening is small below this, in any dimension, inches. */
  readonly smallOpeningIn: Sourced<Inches>;
  /** Room that must be left behind a device that projects far, inches. */
  readonly behindDeviceIn: Sourced<Inches>;
  /** Projection of a device past which that room is asked for, whatever supplies it, inches. */
  readonly deepDeviceIn: Sourced<Inches>;
  /** The same where 12 or 10 AWG supplies it, inches. */
  readonly deepDeviceOnThickIn: Sourced<Inches>;
  /** Farthest that the front of a box may be behind a noncombustible surface, and a combustible one, inches. */
  readonly setbackIn: Sourced<Inches>;
  readonly setbackCombustibleIn: Sourced<Inches>;
  /** Heaviest luminaire on an outlet box that is not marked for another weight, pounds. */
  readonly luminaireOnBoxLb: Sourced<number>;
  /** Heaviest luminaire that any box in a wall may hold, pounds. */
  readonly luminaireOnAnyBoxLb: Sourced<number>;
  /** Heaviest fan on a box listed for fans that is not marked with a weight, and on any box, pounds. */
  readonly fanUnmarkedLb: Sourced<number>;
  readonly fanOnBoxLb: Sourced<number>;
  /** Spare conductors with a switch of their own from which a ceiling box must be listed for fans; 0 when without any. */
  readonly spareConductorsForFanBox: Sourced<number>;
  /** Rooms in whose ceiling a fan is expected. */
  readonly fanPlaces: Sourced<readonly RoomKind[]>;
  /** Greatest rating of receptacles that need a cover which protects in use, amperes. */
  readonly inUseCoverUpToA: Sourced<Amps>;
  /** Greatest height above the floor of what is operated without a ladder, inches. */
  readonly readilyReachedToIn: Sourced<Inches>;
  readonly smallConductorAmps: Sourced<SmallConductorLimits>;
  /** Thickest neutral whose insulation must be white or grey by make. */
  readonly whiteByMakeToAwg: Sourced<WireSize>;
  /** Thickest equipment ground whose insulation, where it has any, must be green by make. */
  readonly greenByMakeToAwg: Sourced<WireSize>;
  /** Kinds of place whose lighting switches need a neutral at hand. */
  readonly neutralAtSwitchPlaces: Sourced<readonly RoomKind[]>;
  /** Least equipment grounding conductor by the rating of the breaker, rising. */
  readonly equipmentGrounds: Sourced<readonly EquipmentGroundRow[]>;
  /** How far from its entry into the building a metal water pipe may be used as a grounding electrode, feet. */
  readonly pipeFromEntryFt: Sourced<Feet>;
  /** Thinnest conductor that may be run in parallel. */
  readonly parallelFromAwg: Sourced<WireSize>;
  /** Ratings of receptacles by the rating of a circuit that feeds several; a rating that is not named has no row. */
  readonly receptacleAmps: Sourced<Readonly<Record<number, readonly Amps[]>>>;
  /** Most that a motor may draw through a snap switch, per cent of its rating. */
  readonly motorLoadPercent: Sourced<number>;
  /** Most that continuous loads may draw, per cent of the breaker. */
  readonly continuousPercent: Sourced<number>;
  /** Most that equipment fastened in place may draw on a circuit that feeds other things too, per cent of the breaker. */
  readonly fastenedSharePercent: Sourced<number>;
  /** Height up to which a receptacle must be tamper-resistant, inches above the floor. */
  readonly tamperResistantToIn: Sourced<Inches>;
  readonly weatherResistantPlaces: Sourced<readonly RoomKind[]>;
  /** Kinds of place whose outlets need arc-fault protection; absent where the edition is held for counting only. */
  readonly arcFaultPlaces?: Sourced<readonly RoomKind[]>;
  /** Greatest circuit that it is asked of, amperes. */
  readonly arcFaultToA?: Sourced<Amps>;
  /** Length to which existing conductors may be extended without it, feet. */
  readonly extensionFreeFt?: Sourced<Feet>;
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
  /** How box fill is counted. */
  readonly countsBy: "nfpa-70" | "csa-c22.1";
  /** Rules that it covers; absent where every rule runs. */
  readonly covers?: ReadonlySet<string>;
  readonly values: EditionValues;
}

/** Name of a value, as rules, amendments and help pages write it. */
export type ValueName = keyof EditionValues;

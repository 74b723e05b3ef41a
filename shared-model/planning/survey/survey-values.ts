/*
 * What the inference about cables rests on besides the circuits themselves. All are modelling values of ours, to be tuned,
 * none is measured: how often boxes are wired so, how often people and instruments err, what lamps do.
 */

/** How likely structures are before anything is read. A person may put other numbers. */
export interface SurveyPriors {
  /** Cables that bring power: none live now (breaker off, broken upstream), one, two. */
  readonly sources: { readonly none: number; readonly one: number; readonly two: number };
  /** Odds of a live cable against a plain supply. */
  readonly reversed: number;
  readonly openNeutral: number;
  /** Of a cable with two hots: three conductors, or two of them with the white as a hot. */
  readonly multiwireOfThree: number;
  readonly multiwireOfTwo: number;
  readonly switched: number;
  /** This box as the switch end of a loop: where a switch is here, and where none is. */
  readonly loopFed: number;
  readonly loopFedWithoutSwitch: number;
  /** Odds of a dead cable against one that leads to something listed; ten times as high where the list is short. */
  readonly dead: number;
  readonly loop: number;
  readonly travellersOfThree: number;
  readonly otherNeutral: number;
  /** It feeds something that nobody listed: where the list could fill all cables, and where it cannot. */
  readonly unlisted: number;
  readonly unlistedWhereListIsShort: number;
  /** For each light too many or too few against the switches of this box. */
  readonly legMiscount: number;
  /** For something listed that is on none of the cables, where there is room for it. */
  readonly omitted: number;
}

export const USUAL_PRIORS: SurveyPriors = {
  sources: { none: 0.03, one: 0.9, two: 0.07 },
  reversed: 0.03,
  openNeutral: 0.01,
  multiwireOfThree: 3,
  multiwireOfTwo: 0.003,
  switched: 0.02,
  loopFed: 0.3,
  loopFedWithoutSwitch: 0.01,
  dead: 0.005,
  loop: 0.005,
  travellersOfThree: 0.3,
  otherNeutral: 0.3,
  unlisted: 0.005,
  unlistedWhereListIsShort: 1,
  legMiscount: 0.05,
  omitted: 0.05,
};

/** Roles rarer than this against the usual one are not counted among the assignments, as long as others are left. */
export const RARE = 0.1;

/** How often a reading is not what the circuit gives. */
export const ERRORS = { meter: 0.01, plugIn: 0.05, highImpedance: 0.15, mislabel: 0.02 } as const;
/** A meter of high impedance never settles: its likelihood counts by this power, and never below the least. */
export const HIGH_IMPEDANCE_POWER = 0.5;
export const HIGH_IMPEDANCE_LEAST = 0.05;
/** Less likely than this against the best: ruled out. Every arrangement below the other: the readings contradict. */
export const REJECTED_BELOW = 0.001;
export const CONTRADICTED_BELOW = 0.05;

/** A resistive load left plugged in behind a cable, after somebody made sure of it and without. */
export const LEFT_PLUGGED = 0.02;
export const LEFT_PLUGGED_UNCHECKED = 0.3;
export const PLUGGED_OHM = [5, 300] as const;

/** A cable counts as live from this low-impedance reading on. */
export const LIVE_FROM_V = 100;
/** Supplies of a house are seldom what is written on them: shares of the nominal voltage. */
export const SUPPLY_SHARES = [0.95, 1.05] as const;
/** How far beyond the computed band a reading still agrees: of what is live, and of what is about nothing. */
export const AGREES_WITHIN_LIVE_V = 15;
export const AGREES_WITHIN_DEAD_V = 10;

/** What wires that hang on nothing may show on a meter of high impedance, at least. */
export const MOST_FLOATING_V = 90;

/** Two wires that read less are one: a contact that is closed, or a short. Half an ohm of leads and contacts among it. */
export const CLOSED_BELOW_OHM = 2;

/** Filament lamps of 40, 60 and 100 W, hot; cold they have about a thirteenth. From memory. */
export const FILAMENT_OHM = [360, 240, 144] as const;
export const COLD_SHARE = 1 / 13;
/** How far a resistance may be off and agree, as a factor. */
export const OHM_FACTOR = 1.6;
/** What an LED lamp passes while it does not light, and from what voltage it lights. */
export const LED_OHM = [10_000, 1_000_000] as const;
/** A lamp of about 60 W as a test lamp. */
export const TEST_LAMP_OHM = 240;
/** Filament resistance falls when cooler: two alike in series may share unevenly. */
export const TEST_LAMP_WITHIN_V = 12;
/** A light or an appliance is seen to work from this share of its voltage. */
export const WORKS_FROM_SHARE = 0.8;

/** A cable of a house, and how many live neighbours may run beside it. */
export const CABLE_FT = 30;
export const NEIGHBOURS = [0, 5] as const;
/** There and back in a cable of 12 AWG of that length and the breaker. */
export const CONDUCTOR_OHM = 0.05;
/** Nothing in a branch circuit may draw more: a short. */
export const SHORT_FROM_A = 100;
/** Volts on a load of 120 V from which it is harmed. */
export const HARMED_FROM_V = 180;

/** Shown of those that are left. */
export const MOST_SHOWN = 24;
/** More cables or groups than this are not taken apart. */
export const MOST_CABLES = 10;
export const MOST_GROUPS = 10;

/** A test must tell at least this much to be worth its trouble. */
export const LEAST_BITS = 1e-5;
/** Minutes of work, and what a cycle of the power and a class of exposure weigh against them. */
export const COSTS = { powerCycle: 5, exposureClass: 20 } as const;

/** Whether a device opens: certainly not, perhaps, certainly. */
export type Trips = "no" | "may" | "yes";

/** Seconds between which a device opens. */
export interface TripTime {
  readonly earliestS: number;
  readonly latestS: number;
}

interface Limits {
  /** Milliamperes above which it may open, and from which it must. Absent: no claim. */
  readonly mayAboveMa: number;
  readonly mustFromMa?: number;
}

/**
 * Class A opens at 6 mA and not at 4 mA. Source: UL 943, restated at https://profengineering.com/glossary/gfci/ .
 * Equipment protection opens at 30 mA; half of it is a modelling value, after residual-current devices. Arc-fault devices
 * promise nothing about leaks, and many open at 30 mA; both from memory.
 */
export const RESIDUAL_LIMITS = {
  personnel: { mayAboveMa: 4, mustFromMa: 6 },
  equipment: { mayAboveMa: 15, mustFromMa: 30 },
  "arc-fault": { mayAboveMa: 30 },
} as const satisfies Readonly<Record<string, Limits>>;

/** Whether what a sensor sees opens its device, were it powered. */
export function byResidual(kind: keyof typeof RESIDUAL_LIMITS, residualMa: number): Trips {
  const { mayAboveMa, mustFromMa = Infinity }: Limits = RESIDUAL_LIMITS[kind];
  return residualMa >= mustFromMa ? "yes" : residualMa > mayAboveMa ? "may" : "no";
}

/** Ends of the curve below, mA: its shortest time stands at the second, 25 ms. */
const CURVE_MA = [6, 264] as const;

/**
 * The longest time in which a Class A device must open, seconds: (20 / I)^1.43 with I in mA, from 6 mA to 264 mA, and
 * what it is at 264 mA beyond. Real devices are faster. Source: UL 943, restated at
 * http://www.electrical-contractor.net/forums/ubbthreads.php/posts/37797.html .
 */
export function classALimitS(residualMa: number): number {
  const [least, most] = CURVE_MA;
  return Math.max(0.025, (20 / Math.min(Math.max(residualMa, least), most)) ** 1.43);
}

/**
 * Ohms of the way around a sensor from LOAD neutral to LINE neutral, outside the device: at most 2 must open it, with or
 * without load. The 2 ohm are published, at medium confidence
 * (https://forums.mikeholt.com/threads/just-learned-about-gfci.42382/post-653956); 4 is a modelling value.
 */
export const GROUNDED_NEUTRAL_OHM = { must: 2, may: 4 } as const;

/** Volts that the electronics of a ground-fault device need, in whole volts: a modelling value, not known any closer. */
export const SUPPLY_V = 70;

/** Times its rating from which a breaker opens at once: a modelling value, typical of small breakers. */
export const INSTANT_TIMES = 10;
const INSTANT: TripTime = { earliestS: 0, latestS: 0.05 };

/**
 * A typical inverse-time curve, as corners of two bands between which it is straight on double logarithmic paper. At 1.35
 * times the rating a breaker opens within an hour and at twice within two minutes (UL 489, up to 30 A; from memory); that
 * it may open in 10 s at twice, and all beyond, are modelling values.
 */
const CORNERS: readonly { readonly times: number; readonly earliestS: number; readonly latestS: number }[] = [
  { times: 1, earliestS: 3600, latestS: Infinity },
  { times: 1.35, earliestS: 300, latestS: 3600 },
  { times: 2, earliestS: 10, latestS: 120 },
  { times: INSTANT_TIMES, earliestS: 0.4, latestS: 5 },
];

/** What a current does to a breaker or fuse: carried for good up to its rating, and certain to open it from 1.35 times on. */
export function byOvercurrent(amps: number, ratingA: number): { readonly trips: Trips; readonly time?: TripTime } {
  const times = amps / ratingA;
  if (times >= INSTANT_TIMES) return { trips: "yes", time: INSTANT };
  for (let above = CORNERS.length - 1; above > 0; above--) {
    const [low, high] = [CORNERS[above - 1], CORNERS[above]];
    if (low === undefined || high === undefined || times <= low.times) continue;
    const share = Math.log(times / low.times) / Math.log(high.times / low.times);
    const along = (from: number, to: number): number =>
      share === 1 ? to : from === Infinity ? Infinity : from * (to / from) ** share;
    const time = { earliestS: along(low.earliestS, high.earliestS), latestS: along(low.latestS, high.latestS) };
    return { trips: time.latestS === Infinity ? "may" : "yes", time };
  }
  return { trips: "no" };
}

/**
 * Volume as an exact count of 1/10 000 cubic inch, so that a quarter of 2.25 in³ (0.5625) and a 30.3 in³ box are both
 * integers and "exactly full" is exact. Files and messages show decimal cubic inches.
 */
export type CubicInches = number & { readonly __unit: "in3/10000" };

const STEP = 10_000;

/** From decimal cubic inches. Throws when the value is not a multiple of 0.0001: check with `isExactVolume` at a border. */
export function cubicInches(decimal: number): CubicInches {
  if (!isExactVolume(decimal)) throw new Error(`${decimal} in³ is not a multiple of 0.0001 in³.`);
  return Math.round(decimal * STEP) as CubicInches;
}

/** True for a finite decimal with at most four places, of magnitude at most 1 000 000 in³. */
export function isExactVolume(decimal: number): boolean {
  if (!Number.isFinite(decimal) || Math.abs(decimal) > 1_000_000) return false;
  return Math.round(decimal * STEP) / STEP === decimal;
}

/** Decimal cubic inches, the nearest double: 303000 gives 30.3. */
export const toDecimal = (volume: CubicInches): number => volume / STEP;

export const addVolumes = (...volumes: readonly CubicInches[]): CubicInches =>
  volumes.reduce((sum, v) => sum + v, 0) as CubicInches;

export const subtractVolume = (from: CubicInches, what: CubicInches): CubicInches => (from - what) as CubicInches;

/** `volume` times a whole number. */
export const timesVolume = (volume: CubicInches, count: number): CubicInches => (volume * count) as CubicInches;

/** A quarter of a volume. Every allowance of the tables divides by four without a rest. */
export const quarterOf = (volume: CubicInches): CubicInches => {
  if (volume % 4 !== 0) throw new Error(`${volume}/10000 in³ has no exact quarter.`);
  return (volume / 4) as CubicInches;
};

/** Strictly more; equal volumes fit. */
export const exceedsVolume = (needed: CubicInches, available: CubicInches): boolean => needed > available;

/** "30.3", "32.0625", "22.50" with `places`: at least that many decimals, never more than are there. */
export function formatVolume(volume: CubicInches, places = 0): string {
  const [whole = "0", fraction = ""] = toDecimal(volume).toFixed(4).split(".");
  const kept = fraction.replace(/0+$/, "").padEnd(places, "0");
  return kept === "" ? whole : `${whole}.${kept}`;
}

/** Volume as an exact count of 1/10 millilitre, the step in which CSA C22.1 Table 22 is printed. */
export type Millilitres = number & { readonly __unit: "mL/10" };

const STEP = 10;

/** From decimal millilitres. Throws when the value is not a multiple of 0.1: check with `isExactMillilitres` at a border. */
export function millilitres(decimal: number): Millilitres {
  if (!isExactMillilitres(decimal)) throw new Error(`${decimal} mL is not a multiple of 0.1 mL.`);
  return Math.round(decimal * STEP) as Millilitres;
}

/** True for a finite decimal with at most one place, of magnitude at most 16 000 000 mL. */
export function isExactMillilitres(decimal: number): boolean {
  if (!Number.isFinite(decimal) || Math.abs(decimal) > 16_000_000) return false;
  return Math.round(decimal * STEP) / STEP === decimal;
}

/** Decimal millilitres, the nearest double: 246 gives 24.6. */
export const toDecimalMl = (volume: Millilitres): number => volume / STEP;

export const addMillilitres = (...volumes: readonly Millilitres[]): Millilitres =>
  volumes.reduce((sum, volume) => sum + volume, 0) as Millilitres;

/** "24.6", "451". */
export const formatMillilitres = (volume: Millilitres): string => String(toDecimalMl(volume));

/** An inch is 25.4 mm exactly, so a cubic inch is 16.387064 mL exactly. */
export const ML_PER_IN3 = 16.387064;

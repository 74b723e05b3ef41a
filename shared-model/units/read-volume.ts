import { ML_PER_IN3 } from "./millilitres.ts";
import { type CubicInches, cubicInches, isExactVolume } from "./volume.ts";

const TEN_THOUSANDTHS = 10_000;
const WRITTEN = /^(\d+(?:[.]\d+)?|[.]\d+)\s*(ml|cm3|cm³|in3|in³|cu\.? ?in\.?)?$/i;

/**
 * Reads the volume that is marked in a box: "30.3", "30.3 in³", "497 mL". Millilitres are rounded down to 0.0001 in³, so
 * that a box never gets more than it is marked with. A decimal comma is a decimal point.
 * @returns Undefined where the text is no volume above zero, or has more than four decimals of a cubic inch.
 */
export function readVolume(text: string): CubicInches | undefined {
  const [, figure, unit = ""] = WRITTEN.exec(text.trim().replace(/^(\d+),(\d+)/, "$1.$2")) ?? [];
  if (figure === undefined) return undefined;
  const isMetric = /^(ml|cm)/i.test(unit);
  const volume = isMetric
    ? Math.floor((Number(figure) / ML_PER_IN3) * TEN_THOUSANDTHS) / TEN_THOUSANDTHS
    : Number(figure);
  return isExactVolume(volume) && volume > 0 ? cubicInches(volume) : undefined;
}

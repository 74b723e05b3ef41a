import { catalogue } from "../lib/catalogue.ts";
import { INCHES, inchFigure, inchWords } from "./inch-words.ts";

const wording = catalogue({
  feet: "ft",
});

/** What stands behind a number of feet. */
export const FEET = wording.feet;

/** How a person reads and enters lengths; what is stored stays in feet and inches, the units of the code's own text. */
export type LengthSystem = "feet-inches" | "metres";

/** Units in which lengths are stored. */
export type LengthUnit = "ft" | "in";

/** An inch is 25.4 mm exactly, a foot 12 inches (international yard and pound agreement of 1959). */
const MM_PER_INCH = 25.4;
const INCHES_PER_FOOT = 12;
const MM_PER: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH, ft: MM_PER_INCH * INCHES_PER_FOOT };

/** What a bare number means: the unit of the field, or its neighbour among metric units. */
export const bareUnit = (unit: LengthUnit, system: LengthSystem): string => {
  if (system === "feet-inches") return unit;
  return unit === "ft" ? "m" : "mm";
};

/**
 * A stored length as it stands in a field, without the unit that stands beside the field where a bare number has it:
 * "12", "12 ft 6 in.", "3.81", "165". A millimetre is the finest step in metres.
 */
export function lengthInField(length: number, unit: LengthUnit, system: LengthSystem): string {
  if (system === "metres") {
    const mm = length * MM_PER[unit];
    return trimmed(unit === "ft" ? mm / 1000 : mm, unit === "ft" ? 3 : 0);
  }
  if (unit === "in") return inchFigure(length);
  return Number.isInteger(length) ? String(length) : lengthWords(length, unit, system);
}

/** A stored length in a sentence: "12 ft", "12 ft 6 in.", "6-1/2 in.", "3.81 m", "165 mm". */
export function lengthWords(length: number, unit: LengthUnit, system: LengthSystem): string {
  if (system === "metres") return `${lengthInField(length, unit, system)} ${bareUnit(unit, system)}`;
  if (unit === "in") return inchWords(length);
  const feet = Math.trunc(length);
  const inches = Math.abs(length - feet) * INCHES_PER_FOOT;
  // A sixteenth is what a rule shows; a length that came from metres has no better one.
  const sixteenths = Math.round(inches * 16);
  if (sixteenths === 0) return `${feet} ${FEET}`;
  if (sixteenths === 16 * INCHES_PER_FOOT) return `${feet + Math.sign(length)} ${FEET}`;
  return `${feet} ${FEET} ${inchWords(sixteenths / 16)}`;
}

const trimmed = (value: number, places: number): string => String(Number(value.toFixed(places)));

const NUMBER = String.raw`(\d+(?:[.]\d+)?|[.]\d+)`;
/** "6", "6.5", "1/2", "6 1/2", "6-1/2". */
const MIXED = String.raw`(?:(\d+)(?:\s+|-))?(\d+)/(\d+)|${NUMBER}`;
const ownSign = (sign: string): string => sign.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
/** As English has them, and as they are written here. */
const FOOT = `(?:'|′|’|ft[.]?|feet|foot|${ownSign(FEET)})`;
const INCH = `(?:"|″|”|''|in[.]?|inch|inches|${ownSign(INCHES)})`;
const FEET_AND_INCHES = new RegExp(`^(?:${NUMBER}\\s*${FOOT})?(?:\\s*-?\\s*(?:${MIXED})\\s*${INCH})?$`, "i");
const METRIC = new RegExp(`^${NUMBER}\\s*(mm|cm|m)$`, "i");
const BARE = new RegExp(`^(?:${MIXED})$`);
const MM_IN_METRIC: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/**
 * Reads a length as people write it: `1' 6 1/2"`, "18-1/2 in.", "12 ft", "3.2 m", "45 cm", "165 mm", or a bare number or
 * fraction in the unit of `bareUnit`. A decimal comma is a decimal point.
 * @returns The length in `unit`, or undefined where the text is none. Never below zero.
 */
export function readLength(typed: string, unit: LengthUnit, system: LengthSystem): number | undefined {
  const text = typed.trim().replace(/^(\d+),(\d+)/, "$1.$2");
  if (text === "") return undefined;
  const bare = BARE.exec(text);
  if (bare !== null) {
    const value = mixed(bare.slice(1));
    if (value === undefined) return undefined;
    return system === "feet-inches" ? value : toUnit(value * (MM_IN_METRIC[bareUnit(unit, system)] ?? 1), unit);
  }
  const metric = METRIC.exec(text);
  if (metric !== null) {
    const [, value, name = ""] = metric;
    return toUnit(Number(value) * (MM_IN_METRIC[name.toLowerCase()] ?? 1), unit);
  }
  const parts = FEET_AND_INCHES.exec(text);
  if (parts === null) return undefined;
  const [, feet, ...inchParts] = parts;
  const inches = inchParts.some((part) => part !== undefined) ? mixed(inchParts) : 0;
  if (inches === undefined) return undefined;
  const all = Number(feet ?? 0) * INCHES_PER_FOOT + inches;
  return unit === "in" ? all : all / INCHES_PER_FOOT;
}

/** @param parts Whole, upper and lower part of a fraction, or a number alone. */
function mixed([whole, upper, lower, alone]: readonly (string | undefined)[]): number | undefined {
  if (alone !== undefined) return Number(alone);
  if (Number(lower) === 0) return undefined;
  return Number(whole ?? 0) + Number(upper) / Number(lower);
}

/** A length typed in metres is kept to a hundred-thousandth, which shows the same millimetre again. */
const toUnit = (mm: number, unit: LengthUnit): number => Math.round((mm / MM_PER[unit]) * 1e5) / 1e5;

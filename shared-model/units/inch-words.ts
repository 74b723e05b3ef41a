import { catalogue } from "../lib/catalogue.ts";

const wording = catalogue({
  inches: "in.",
});

/** What stands behind a number of inches. */
export const INCHES = wording.inches;

/** Parts of an inch that a rule is divided into. */
const PARTS = 16;

/** A length as it is read off a rule: "1/4 in.", "2-1/8 in.", "6 in."; a decimal where no sixteenth says it. */
export const inchWords = (length: number): string => `${inchFigure(length)} ${INCHES}`;

/** The same without its unit: "1/4", "2-1/8", "6". */
export function inchFigure(length: number): string {
  const sixteenths = length * PARTS;
  if (!Number.isInteger(sixteenths)) return String(Math.round(length * 1000) / 1000);
  const whole = Math.trunc(length);
  let above = Math.abs(sixteenths) % PARTS;
  if (above === 0) return String(whole);
  let below = PARTS;
  while (above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const sign = length < 0 ? "-" : "";
  return whole === 0 ? `${sign}${above}/${below}` : `${whole}-${above}/${below}`;
}

/** Parts of an inch that a rule is divided into. */
const PARTS = 16;

/** A length as it is read off a rule: "1/4 in.", "2-1/8 in.", "6 in."; a decimal where no sixteenth says it. */
export function inchWords(length: number): string {
  const sixteenths = length * PARTS;
  if (!Number.isInteger(sixteenths)) return `${Math.round(length * 1000) / 1000} in.`;
  const whole = Math.trunc(length);
  let above = Math.abs(sixteenths) % PARTS;
  if (above === 0) return `${whole} in.`;
  let below = PARTS;
  while (above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const sign = length < 0 ? "-" : "";
  return whole === 0 ? `${sign}${above}/${below} in.` : `${whole}-${above}/${below} in.`;
}

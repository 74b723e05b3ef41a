/** Units in which the plain numbers of an edition are told, by the end of their name. A name without one is a count. */
const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ["In", "in."],
  ["Ft", "ft"],
  ["Lb", "lb"],
  ["Percent", "%"],
  ["MlPerCm", "mL for each cm"],
  ["A", "A"],
];

/** "in." for `loopLengthIn`; undefined for a count. */
export const unitOfValue = (name: string): string | undefined => UNITS.find(([ending]) => name.endsWith(ending))?.[1];

/** What has a unit is measured and takes fractions; a count is whole. */
export const takesFractions = (name: string): boolean => unitOfValue(name) !== undefined;

/** "Loop length" for `loopLengthIn`: the name in words, without its unit. */
export function valueWords(name: string): string {
  const ending = UNITS.find(([one]) => name.endsWith(one))?.[0] ?? "";
  const words = name.slice(0, name.length - ending.length).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

import type { Cable } from "../../model/cable.ts";
import type { Edition } from "../../model/project.ts";
import { getEdition } from "../../rules/editions/editions.ts";

/**
 * The rating that the thinnest circuit conductor of a cable bears, amperes, by the table of small conductors of the edition;
 * undefined for what is not in it. `smaller` are the smaller ratings of circuits with outlets, falling.
 */
export function breakerRating(
  edition: Edition,
  { conductors }: Cable,
): { readonly ratingA: number | undefined; readonly smaller: readonly number[] } {
  const { smallConductorAmps, receptacleAmps } = getEdition(edition).values;
  const limits = Object.values(conductors)
    .filter(({ grounding }) => !grounding)
    .map(({ material, awg }) => smallConductorAmps.value[material][awg]);
  const known = limits.flatMap((limit) => limit ?? []);
  if (known.length < limits.length || known.length === 0) return { ratingA: undefined, smaller: [] };
  const ratingA = Math.min(...known);
  const ofCircuits = Object.keys(receptacleAmps.value).map(Number);
  return { ratingA, smaller: ofCircuits.filter((one) => one < ratingA).sort((a, b) => b - a) };
}

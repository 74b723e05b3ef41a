import type { SortedReadings } from "./sort-readings.ts";
import type { NotedReading } from "./taken-reading.ts";

/** Sets that are told, and readings that are tried in pairs: each try is an inference of its own. */
const MOST_SETS = 4;
const MOST_IN_PAIRS = 14;

/**
 * The smallest sets of readings without which the others fit: one reading where that is enough, else two. Empty where it
 * takes more, so that nothing can be said of which.
 * @param suspects Those that speak against what fits least badly, the likeliest slips first: they are tried first.
 * @param fits Whether what is left without some readings contradicts no longer.
 */
export function smallestDoubt(
  all: readonly NotedReading[],
  suspects: readonly NotedReading[],
  fits: (without: ReadonlySet<NotedReading>) => boolean,
): readonly (readonly NotedReading[])[] {
  const inOrder = [...new Set([...suspects, ...all])];
  const alone = inOrder.filter((one) => fits(new Set([one])));
  if (alone.length > 0) return alone.slice(0, MOST_SETS).map((one) => [one]);
  const some = inOrder.slice(0, MOST_IN_PAIRS);
  const pairs: (readonly NotedReading[])[] = [];
  for (const [index, one] of some.entries())
    for (const other of some.slice(index + 1)) {
      if (pairs.length === MOST_SETS) return pairs;
      if (fits(new Set([one, other]))) pairs.push([one, other]);
    }
  return pairs;
}

/** The same readings but for some. */
export function withoutReadings(sorted: SortedReadings, without: ReadonlySet<NotedReading>): SortedReadings {
  const isKept = ({ taken }: { readonly taken: NotedReading }): boolean => !without.has(taken);
  return {
    ...sorted,
    taken: sorted.taken.filter((taken) => !without.has(taken)),
    atCable: sorted.atCable.map((reads) => reads.filter(isKept)),
    joinings: sorted.joinings.filter(isKept),
    between: sorted.between.filter(isKept),
  };
}

/** Every reading that counts. */
export const readingsThatCount = ({ atCable, joinings, between }: SortedReadings): readonly NotedReading[] => [
  ...new Set([...atCable.flat(), ...joinings, ...between].map(({ taken }) => taken)),
];

/** American wire gauge sizes that a dwelling branch circuit or its panel can hold, thinnest first. */
export const WIRE_SIZES = [
  "18",
  "16",
  "14",
  "12",
  "10",
  "8",
  "6",
  "4",
  "3",
  "2",
  "1",
  "1/0",
  "2/0",
  "3/0",
  "4/0",
] as const;

export type WireSize = (typeof WIRE_SIZES)[number];

const RANK = new Map<string, number>(WIRE_SIZES.map((size, index) => [size, index]));

/** Below 0 when `a` is thinner than `b`, 0 when equal, above 0 when thicker. */
export const compareWireSize = (a: WireSize, b: WireSize): number => (RANK.get(a) ?? 0) - (RANK.get(b) ?? 0);

export const isThicker = (a: WireSize, b: WireSize): boolean => compareWireSize(a, b) > 0;

/** The thickest of some sizes; undefined when there are none. */
export function thickestOf(sizes: Iterable<WireSize>): WireSize | undefined {
  let best: WireSize | undefined;
  for (const size of sizes) if (best === undefined || isThicker(size, best)) best = size;
  return best;
}

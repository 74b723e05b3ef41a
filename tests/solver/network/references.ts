import { analyse, type Network, type Phasors } from "../../../shared-model/solver/network/network.ts";

/** Floating islands tied down where the factor says that it does so, for references that need a path everywhere. */
export function tiedDown(network: Network): Network {
  const factor = analyse(network);
  const seen = new Set<number>();
  const at: number[] = [];
  const ends = [...network.sources.map(({ plus, minus }) => (minus >= 0 ? minus : plus)), ...network.b];
  for (const node of [...ends, ...Array.from({ length: network.nodeCount }, (_, i) => i)]) {
    const island = factor.islandOf[node] ?? -1;
    if (node < 0 || !factor.floating(node) || seen.has(island)) continue;
    seen.add(island);
    at.push(node);
  }
  return {
    ...network,
    a: Int32Array.from([...network.a, ...at]),
    b: Int32Array.from([...network.b, ...at.map(() => -1)]),
    g: Float64Array.from([...network.g, ...at.map(() => 1)]),
    bS: Float64Array.from([...network.bS, ...at.map(() => 0)]),
  };
}

/** The largest distance between voltages, as a share of the expected one or of `floor` volts. */
export function worstDifference(
  { re, im }: Phasors,
  expected: readonly (readonly [number, number])[],
  floor: number,
): number {
  let worst = 0;
  for (const [node, [vRe, vIm]] of expected.entries()) {
    const error = Math.hypot((re[node] ?? Number.NaN) - vRe, (im[node] ?? Number.NaN) - vIm);
    if (!(error <= 0))
      worst = Math.max(worst, Number.isNaN(error) ? Infinity : error / Math.max(floor, Math.hypot(vRe, vIm)));
  }
  return worst;
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse, type Network, type Phasors } from "../../../shared-model/solver/network/network.ts";
import { randomWiring } from "./random-network.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 500 : 60;

const wiring = fc
  .record({ seed: fc.integer({ min: 1, max: 1_000_000 }), nodes: fc.integer({ min: 5, max: 300 }) })
  .map(({ seed, nodes }) => randomWiring(seed, { nodes }));

const check = (property: fc.IRawProperty<unknown>) => fc.assert(property, { numRuns: RUNS });

type Complex = readonly [number, number];
const at = ({ re, im }: Phasors, node: number): Complex =>
  node < 0 ? [0, 0] : [re[node] ?? Number.NaN, im[node] ?? Number.NaN];
const minus = (x: Complex, y: Complex): Complex => [x[0] - y[0], x[1] - y[1]];
const times = (x: Complex, y: Complex): Complex => [x[0] * y[0] - x[1] * y[1], x[0] * y[1] + x[1] * y[0]];
const size = (x: Complex): number => Math.hypot(x[0], x[1]);

/** Every element with its admittance, and the current through it from its first to its second end. */
function currents(network: Network, volts: Phasors): { from: number; to: number; y: Complex; current: Complex }[] {
  const { a, b, g, bS, sources } = network;
  return [
    ...Array.from(a, (from, i) => {
      const to = b[i] ?? -1;
      const y: Complex = [g[i] ?? 0, bS[i] ?? 0];
      return { from, to, y, current: times(y, minus(at(volts, from), at(volts, to))) };
    }),
    ...sources.map(({ plus, minus: to, re, im, g: conductance, bS: susceptance }) => {
      const y: Complex = [conductance, susceptance];
      return { from: plus, to, y, current: times(y, minus(minus(at(volts, plus), at(volts, to)), [re, im])) };
    }),
  ];
}

/** The largest distance between voltages, in volts. */
function distance(x: Phasors, y: Phasors, nodeOf = (node: number) => node): number {
  let worst = 0;
  for (let node = 0; node < x.re.length; node++) {
    const error = size(minus(at(x, node), at(y, nodeOf(node))));
    if (!(error <= worst)) worst = Number.isNaN(error) ? Infinity : error;
  }
  return worst;
}

describe("laws of the solver", () => {
  it("keeps Kirchhoff's current law at every node, to the rounding of the voltages", () => {
    check(
      fc.property(wiring, (network) => {
        const volts = analyse(network).operatingPoint();
        const missing = Array.from({ length: network.nodeCount }, (): [number, number, number] => [0, 0, 0]);
        const highest = Math.max(0, ...Array.from(volts.re, (re, node) => Math.hypot(re, volts.im[node] ?? 0)));
        for (const { from, to, y, current } of currents(network, volts)) {
          for (const [node, sign] of [
            [from, 1],
            [to, -1],
          ] as const) {
            const sum = missing[node];
            if (sum === undefined) continue;
            sum[0] += sign * current[0];
            sum[1] += sign * current[1];
            sum[2] += size(y) * highest * 1e-14;
          }
        }
        for (const [node, [re, im, allowed]] of missing.entries()) {
          expect(Math.hypot(re, im), `node ${node}`).toBeLessThanOrEqual(allowed);
        }
      }),
    );
  });

  it("balances power: what the sources give is what the branches take", () => {
    check(
      fc.property(wiring, (network) => {
        const volts = analyse(network).operatingPoint();
        const all = currents(network, volts);
        const branches = network.a.length;
        let given: Complex = [0, 0];
        let taken: Complex = [0, 0];
        let scale = 0;
        for (const [i, { from, to, current }] of all.entries()) {
          const conjugate: Complex = [current[0], -current[1]];
          const across = minus(at(volts, from), at(volts, to));
          const source = network.sources[i - branches];
          const inside = source === undefined ? across : minus(across, [source.re, source.im]);
          const power = times(inside, conjugate);
          taken = [taken[0] + power[0], taken[1] + power[1]];
          if (source === undefined) continue;
          const emf = times([source.re, source.im], [-conjugate[0], -conjugate[1]]);
          given = [given[0] + emf[0], given[1] + emf[1]];
          scale += size([source.re, source.im]) ** 2 * size([source.g, source.bS]);
        }
        expect(size(minus(given, taken))).toBeLessThan(1e-12 * scale);
      }),
    );
  });

  it("adds up: all sources together do what they do one by one", () => {
    check(
      fc.property(wiring, (network) => {
        const factor = analyse(network);
        const together = factor.operatingPoint();
        const sum = { re: new Float64Array(network.nodeCount), im: new Float64Array(network.nodeCount) };
        for (const chosen of network.sources.keys()) {
          const sources = network.sources.map((source, i) => (i === chosen ? source : { ...source, re: 0, im: 0 }));
          const alone = factor.refactor({ ...network, sources }).operatingPoint();
          for (let node = 0; node < network.nodeCount; node++) {
            sum.re[node] = (sum.re[node] ?? 0) + (alone.re[node] ?? 0);
            sum.im[node] = (sum.im[node] ?? 0) + (alone.im[node] ?? 0);
          }
        }
        expect(distance(together, sum)).toBeLessThan(1e-8);
      }),
    );
  });

  it("does not depend on how nodes are numbered", () => {
    check(
      fc.property(wiring, fc.infiniteStream(fc.nat()), (network, random) => {
        const order = Array.from({ length: network.nodeCount }, (_, node) => ({ node, key: random.next().value ?? 0 }));
        const place = new Int32Array(network.nodeCount);
        for (const [now, { node }] of order.sort((x, y) => x.key - y.key).entries()) place[node] = now;
        const moved = (node: number) => (node < 0 ? -1 : (place[node] ?? -1));
        const renumbered = {
          ...network,
          a: network.a.map(moved),
          b: network.b.map(moved),
          sources: network.sources.map((source) => ({
            ...source,
            plus: moved(source.plus),
            minus: moved(source.minus),
          })),
        };
        const [first, second] = [analyse(network), analyse(renumbered)];
        expect(distance(first.operatingPoint(), second.operatingPoint(), moved)).toBeLessThan(1e-8);
        for (let node = 0; node < network.nodeCount; node++) {
          expect(second.floating(moved(node))).toBe(first.floating(node));
          expect(second.sourced(moved(node))).toBe(first.sourced(node));
        }
        expect(second.islandCount).toBe(first.islandCount);
      }),
    );
  });

  it("is not changed by a part that is joined to nothing", () => {
    check(
      fc.property(wiring, wiring, (network, part) => {
        const more = network.nodeCount;
        const shifted = (node: number) => node + more;
        const inert = [...part.a.keys()].filter((i) => (part.a[i] ?? -1) >= 0 && (part.b[i] ?? -1) >= 0);
        const both = {
          nodeCount: more + part.nodeCount,
          a: Int32Array.from([...network.a, ...inert.map((i) => shifted(part.a[i] ?? 0))]),
          b: Int32Array.from([...network.b, ...inert.map((i) => shifted(part.b[i] ?? 0))]),
          g: Float64Array.from([...network.g, ...inert.map((i) => part.g[i] ?? 0)]),
          bS: Float64Array.from([...network.bS, ...inert.map((i) => part.bS[i] ?? 0)]),
          sources: network.sources,
        };
        const alone = analyse(network).operatingPoint();
        const factor = analyse(both);
        const volts = factor.operatingPoint();
        expect(distance(alone, volts)).toBeLessThan(1e-8);
        for (let node = more; node < both.nodeCount; node++) {
          expect([volts.re[node], volts.im[node]]).toEqual([0, 0]);
          expect(factor.floating(node)).toBe(true);
          expect(factor.sourced(node)).toBe(false);
        }
      }),
    );
  });

  it("gives the same for a few nodes as for all, and both ways alike", () => {
    check(
      fc.property(wiring, fc.nat(), fc.nat(), fc.nat(), (network, one, two, three) => {
        const factor = analyse(network);
        const [from, to, wanted] = [one, two, three].map((number) => number % network.nodeCount) as [
          number,
          number,
          number,
        ];
        const injection = { nodes: [from, to, -1], re: [1, -0.5, 3], im: [0.25, 0, 3] };
        const all = factor.solve(injection);
        const few = factor.transfer(injection, [wanted, -1, from]);
        const scale = 1e-9 * Math.max(1e-6, size(at(all, wanted)), size(at(all, from)));
        expect(size(minus(at(few, 0), at(all, wanted)))).toBeLessThan(scale);
        expect(at(few, 1)).toEqual([0, 0]);
        expect(size(minus(at(few, 2), at(all, from)))).toBeLessThan(scale);
        // Reciprocity: what a current here does there, it does here from there.
        const there = at(factor.transfer({ nodes: [from], re: [1], im: [0] }, [to]), 0);
        const back = at(factor.transfer({ nodes: [to], re: [1], im: [0] }, [from]), 0);
        expect(size(minus(there, back))).toBeLessThanOrEqual(1e-9 * Math.max(1e-12, size(there)));
        // A second transfer starts from nothing.
        expect(factor.transfer(injection, [wanted])).toEqual({ re: few.re.slice(0, 1), im: few.im.slice(0, 1) });
      }),
    );
  });

  it("refactors to what an analysis from scratch gives, whatever opens and closes", () => {
    check(
      fc.property(wiring, fc.integer({ min: 2, max: 9 }), fc.nat(), (network, every, phase) => {
        const open = (_: number, i: number) => (i + phase) % every === 0;
        const changed = {
          ...network,
          g: network.g.map((value, i) => (open(value, i) ? 0 : value * (1 + (i % 7)))),
          bS: network.bS.map((value, i) => (open(value, i) ? 0 : value)),
        };
        const warm = analyse(network).refactor(changed);
        const cold = analyse(changed);
        expect(distance(warm.operatingPoint(), cold.operatingPoint())).toBeLessThan(1e-8);
        expect(warm.islandCount).toBe(cold.islandCount);
        const closedAgain = warm.refactor(network);
        expect(distance(closedAgain.operatingPoint(), analyse(network).operatingPoint())).toBeLessThan(1e-8);
      }),
    );
  });
});

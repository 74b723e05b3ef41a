import { describe, expect, it } from "vitest";
import { analyse } from "../../../shared-model/solver/network/network.ts";
import { Picker } from "../../builders/picker.ts";
import { denseOf, solveDense, solveExactly } from "./dense.ts";
import { NetworkBuilder, randomWiring } from "./random-network.ts";
import { tiedDown, worstDifference } from "./references.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const CIRCUITS = LONG ? 200 : 25;

describe("the sparse solver against dense references", () => {
  // Elimination in doubles is off by up to 1e-5 here, where parts hang by picofarads, so the reference has more digits.
  it.each([1e-3, 1e-5])(
    "keeps its digits on wiring with joints from %d Ω up, against 400-bit arithmetic",
    (leastJoint) => {
      for (let seed = 1; seed <= (LONG ? 60 : 10); seed++) {
        const network = tiedDown(randomWiring(seed, { nodes: 10 + seed * 4, leastJoint }));
        const worst = worstDifference(analyse(network).operatingPoint(), solveExactly(network), 1e-3);
        expect(worst, `seed ${seed}`).toBeLessThan(1e-8);
      }
    },
  );

  it("holds a net of 10 µΩ joints on a picofarad to twelve digits", () => {
    const builder = new NetworkBuilder();
    const [hot, first] = [builder.node(), builder.node()];
    builder.source(hot, -1, 120, 0.05);
    builder.farads(hot, first, 2e-12);
    let last = first;
    for (let i = 0; i < 30; i++) {
      const next = builder.node();
      builder.ohms(last, next, 1e-5);
      last = next;
    }
    builder.farads(last, -1, 1e-12);
    const { re } = analyse(builder.network()).operatingPoint();
    // Two capacitors divide 120 V by 2 : 3, whatever the joints between them.
    expect(Math.abs((re[last] ?? 0) - 80) / 80).toBeLessThan(1e-9);
    expect(
      worstDifference(analyse(builder.network()).operatingPoint(), solveExactly(builder.network()), 1e-3),
    ).toBeLessThan(1e-12);
  });

  it("solves meshes, where the factor fills", () => {
    const pick = new Picker(7);
    const builder = new NetworkBuilder();
    const side = 12;
    for (let i = 0; i < side * side; i++) builder.node();
    for (let i = 0; i < side * side; i++) {
      if (i % side < side - 1) builder.branch(i, i + 1, pick.next(), pick.next());
      if (i + side < side * side) builder.branch(i, i + side, pick.next(), pick.next());
    }
    builder.source(0, side * side - 1, 120, 0.05);
    builder.ohms(5, -1, 3);
    const network = builder.network();
    const { matrix, currents } = denseOf(network);
    expect(worstDifference(analyse(network).operatingPoint(), solveDense(matrix, currents), 1e-3)).toBeLessThan(1e-8);
  });

  // Against 400-bit arithmetic here too: a voltage of a millivolt or none beside others of 100 V keeps ten digits fewer than
  // they do, and elimination in doubles is then off by up to 2e-8 of it, this solver by 2e-10.
  it("solves random graphs of every density", () => {
    for (let seed = 1; seed <= CIRCUITS; seed++) {
      const pick = new Picker(seed);
      const builder = new NetworkBuilder();
      const count = 2 + pick.below(60);
      for (let i = 0; i < count; i++) builder.node();
      const edges = Math.floor(count * (0.5 + pick.next() * 6));
      for (let i = 0; i < edges; i++) {
        const g = pick.chance(0.2) ? 0 : 10 ** (pick.next() * 6 - 3);
        builder.branch(pick.below(count), pick.below(count + 1) - 1, g, pick.chance(0.5) ? pick.next() : 0);
      }
      builder.source(pick.below(count), pick.below(count), 100, 0.1, 30);
      builder.source(pick.below(count), -1, 50, 0.2);
      const network = tiedDown(builder.network());
      const worst = worstDifference(analyse(network).operatingPoint(), solveExactly(network), 1e-3);
      expect(worst, `seed ${seed}`).toBeLessThan(1e-9);
    }
  });
});

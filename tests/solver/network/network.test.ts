import { describe, expect, it } from "vitest";
import { analyse, type Network, NetworkError } from "../../../shared-model/solver/network/network.ts";
import { NetworkBuilder } from "./random-network.ts";

const EMPTY: Network = {
  nodeCount: 0,
  a: new Int32Array(0),
  b: new Int32Array(0),
  g: new Float64Array(0),
  bS: new Float64Array(0),
  sources: [],
};

function build(draw: (builder: NetworkBuilder) => void): Network {
  const builder = new NetworkBuilder();
  draw(builder);
  return builder.network();
}

/** 120 V behind 1 Ω at node 0, 119 Ω from there to node 1, node 1 to earth by 0 Ω or as said. */
const divider = (ohm: number) =>
  build((builder) => {
    const [hot, far] = [builder.node(), builder.node()];
    builder.source(hot, -1, 120, 1);
    builder.ohms(hot, far, 59);
    builder.ohms(far, -1, ohm);
  });

const volts = (network: Network) => {
  const { re, im } = analyse(network).operatingPoint();
  return Array.from(re, (value, node) => [value, im[node] ?? Number.NaN]);
};

describe("networks worked out by hand", () => {
  it("divides a voltage", () => {
    const answer = volts(divider(60));
    expect(answer[0]?.[0]).toBeCloseTo(119, 12);
    expect(answer[1]?.[0]).toBeCloseTo(60, 12);
    expect(answer.map(([, im]) => im)).toEqual([0, 0]);
  });

  it("opens a shared neutral: the legs divide 240 V by their loads", () => {
    const network = build((builder) => {
      const [one, two, middle] = [builder.node(), builder.node(), builder.node()];
      builder.source(one, -1, 120, 1e-9);
      builder.source(-1, two, 120, 1e-9);
      builder.ohms(one, middle, 240);
      builder.ohms(middle, two, 12);
    });
    const { re } = analyse(network).operatingPoint();
    // 240 × 240 / 252 and 240 × 12 / 252.
    expect((re[0] ?? 0) - (re[2] ?? 0)).toBeCloseTo(228.571_428_57, 6);
    expect((re[2] ?? 0) - (re[1] ?? 0)).toBeCloseTo(11.428_571_43, 6);
  });

  it("turns the phase in a capacitor", () => {
    const network = build((builder) => {
      const [hot, far] = [builder.node(), builder.node()];
      builder.source(hot, -1, 100, 0.5);
      builder.ohms(hot, far, 0.5);
      builder.branch(far, -1, 0, 1);
    });
    // 100 V through 1 Ω into -j1 Ω: (50 - j50) V.
    const answer = volts(network)[1];
    expect(answer?.[0]).toBeCloseTo(50, 12);
    expect(answer?.[1]).toBeCloseTo(-50, 12);
  });

  it("measures between two places with the power off", () => {
    const network = build((builder) => {
      const [a, b, c, apart] = [builder.node(), builder.node(), builder.node(), builder.node()];
      builder.ohms(a, b, 2);
      builder.ohms(b, c, 3);
      builder.ohms(a, c, 5);
      builder.ohms(apart, -1, 7);
    });
    const factor = analyse(network);
    expect(factor.impedance(0, 2)?.re).toBeCloseTo(2.5, 12);
    expect(factor.impedance(3, -1)?.re).toBeCloseTo(7, 12);
    expect(factor.impedance(0, 3)).toBeUndefined();
    expect(factor.impedance(1, -1)).toBeUndefined();
    expect(factor.impedance(1, 1)).toEqual({ re: 0, im: 0 });
  });
});

describe("parts that hang in the air", () => {
  const floating = build((builder) => {
    const [plus, minus, far, lone] = [builder.node(), builder.node(), builder.node(), builder.node()];
    builder.ohms(far, plus, 1);
    builder.source(plus, minus, 24, 1);
    builder.ohms(minus, far, 10);
    builder.node();
    builder.branch(lone, lone, 1, 1);
  });

  it("takes the minus end of the first source as 0 V", () => {
    const factor = analyse(floating);
    const { re } = factor.operatingPoint();
    expect(re[1]).toBeCloseTo(0, 12);
    expect(re[0]).toBeCloseTo(22, 12);
    expect(re[2]).toBeCloseTo(20, 12);
    expect([0, 1, 2, 3, 4].map((node) => factor.floating(node))).toEqual([true, true, true, true, true]);
    expect([0, 1, 2, 3, 4].map((node) => factor.sourced(node))).toEqual([true, true, true, false, false]);
    expect([...factor.tiedNodes]).toContain(1);
    expect(factor.islandCount).toBe(3);
  });

  it("stands at 0 V without a source", () => {
    const { re, im } = analyse(floating).operatingPoint();
    expect([re[3], im[3], re[4], im[4]]).toEqual([0, 0, 0, 0]);
  });

  it("floats no longer once a capacitor leads to the reference", () => {
    const network = build((builder) => {
      const [a, b] = [builder.node(), builder.node()];
      builder.ohms(a, b, 1);
      builder.farads(b, -1, 1e-12);
    });
    expect(analyse(network).floating(0)).toBe(false);
  });

  it("follows a branch that opens and closes", () => {
    const closed = divider(60);
    const opened = { ...closed, g: Float64Array.of(0, 1 / 60) };
    const factor = analyse(closed).refactor(opened);
    expect([...factor.operatingPoint().re]).toEqual([120, 0]);
    expect(factor.islandCount).toBe(2);
    const apart = { ...closed, g: Float64Array.of(0, 0) };
    const twice = factor.refactor(apart);
    expect(twice.floating(1)).toBe(true);
    expect([...twice.operatingPoint().re]).toEqual([120, 0]);
    expect(twice.refactor(closed).operatingPoint().re[1]).toBeCloseTo(60, 12);
  });

  it("divides by capacitors alone", () => {
    const network = build((builder) => {
      const [hot, middle] = [builder.node(), builder.node()];
      builder.sources.push({ plus: hot, minus: -1, re: 120, im: 0, g: 0, bS: 1 });
      builder.farads(hot, middle, 1e-12);
      builder.farads(middle, -1, 3e-12);
    });
    expect(volts(network)[1]?.[0]).toBeCloseTo(30, 6);
  });
});

describe("what a drawing may hold and must not break on", () => {
  it("solves nothing", () => {
    expect(analyse(EMPTY).operatingPoint()).toEqual({ re: new Float64Array(0), im: new Float64Array(0) });
    expect(analyse({ ...EMPTY, nodeCount: 3 }).operatingPoint().re).toEqual(new Float64Array(3));
  });

  it("gives tied nodes one voltage, and the reference's where they are tied to it", () => {
    const network = build((builder) => {
      const [hot, one, two, three] = [builder.node(), builder.node(), builder.node(), builder.node()];
      builder.source(hot, -1, 120, 1);
      builder.ohms(hot, one, 9);
      builder.ohms(three, -1, 10);
      builder.ohms(two, one, 5);
    });
    const joined = analyse({ ...network, ties: Int32Array.of(3, 2, 1, 3) });
    const { re } = joined.operatingPoint();
    expect(re[1]).toBeCloseTo(60, 12);
    expect([re[2], re[3]]).toEqual([re[1], re[1]]);
    expect([joined.nameOf(3), joined.nameOf(0), joined.islandOf[2]]).toEqual([1, 0, joined.islandOf[1]]);
    const earthed = analyse({ ...network, ties: Int32Array.of(2, -1, 1, 2) });
    expect([earthed.operatingPoint().re[1], earthed.nameOf(1), earthed.islandOf[1]]).toEqual([0, -1, -1]);
    expect(earthed.floating(1)).toBe(false);
  });

  it("short-circuits a source", () => {
    const network = { ...divider(60), ties: Int32Array.of(0, -1) };
    expect([...analyse(network).operatingPoint().re]).toEqual([0, 0]);
  });

  it("leaves out a source that is not connected, and one whose ends are one", () => {
    const network = build((builder) => {
      const node = builder.node();
      builder.ohms(node, -1, 1);
      builder.sources.push({ plus: node, minus: -1, re: 120, im: 0, g: 0, bS: 0 });
      builder.source(node, node, 120, 1);
    });
    const factor = analyse(network);
    expect(volts(network)).toEqual([[0, 0]]);
    expect(factor.sourced(0)).toBe(true);
  });

  it("adds parallel branches and forgets loops", () => {
    const network = build((builder) => {
      const node = builder.node();
      builder.source(node, -1, 100, 1);
      for (let i = 0; i < 9; i++) builder.ohms(i % 2 === 0 ? node : -1, i % 2 === 0 ? -1 : node, 9);
      builder.ohms(node, node, 1e-5);
      builder.ohms(-1, -1, 1);
    });
    expect(volts(network)[0]?.[0]).toBeCloseTo(50, 12);
  });

  it("joins ten thousand branches at one splice", () => {
    const network = build((builder) => {
      const centre = builder.node();
      builder.source(centre, -1, 120, 1 / 10_000);
      for (let i = 0; i < 10_000; i++) {
        const end = builder.node();
        builder.ohms(centre, end, 0.5);
        builder.ohms(end, -1, 0.5);
        if (i > 0) builder.farads(end, end - 1, 1e-12);
      }
    });
    const { re } = analyse(network).operatingPoint();
    expect(re[0]).toBeCloseTo(60, 6);
    expect(re[5_000]).toBeCloseTo(30, 6);
  });

  it("stays finite where inductance and capacitance cancel without loss, and says so", () => {
    const network = build((builder) => {
      const [hot, node] = [builder.node(), builder.node()];
      builder.source(hot, -1, 120, 1);
      builder.branch(hot, node, 0, 1);
      builder.branch(hot, node, 0, -1);
      builder.branch(node, -1, 0, 2);
      builder.branch(node, -1, 0, -2);
    });
    const factor = analyse(network);
    expect(factor.resonances).toBeGreaterThan(0);
    const { re, im } = factor.operatingPoint();
    expect([...re, ...im].every(Number.isFinite)).toBe(true);
  });
});

describe("what is refused", () => {
  const refusal = (network: Network): NetworkError => {
    try {
      analyse(network);
    } catch (error) {
      if (error instanceof NetworkError) return error;
    }
    throw new Error("Nothing was refused.");
  };
  const network = divider(60);
  const source = { plus: 0, minus: -1, re: 120, im: 0, g: 1, bS: 0 };

  it.each([
    ["not a number", Number.NaN],
    ["infinite", Infinity],
    ["negative", -1],
    ["absurd", 1e40],
  ])("a conductance that is %s, with its branch", (_, value) => {
    const error = refusal({ ...network, g: Float64Array.of(1, value) });
    expect([error.part, error.index]).toEqual(["branch", 1]);
    expect(error.message).toContain("branch 1");
    expect(() => analyse(network).refactor({ ...network, g: Float64Array.of(1, value) })).toThrow(NetworkError);
  });

  it.each([Number.NaN, Infinity, -Infinity])("a susceptance of %s", (value) => {
    expect(refusal({ ...network, bS: Float64Array.of(value, 0) })).toMatchObject({ part: "branch", index: 0 });
  });

  it("sources with values that are not finite", () => {
    for (const wrong of [{ re: Number.NaN }, { im: Infinity }, { g: Number.NaN }, { bS: Infinity }, { g: -1 }]) {
      const error = refusal({ ...network, sources: [source, { ...source, ...wrong }] });
      expect([error.part, error.index]).toEqual(["source", 1]);
    }
  });

  it("ends that are no nodes", () => {
    expect(refusal({ ...network, a: Int32Array.of(0, 2) })).toMatchObject({ part: "branch", index: 1 });
    expect(refusal({ ...network, b: Int32Array.of(-2, 1) })).toMatchObject({ part: "branch", index: 0 });
    expect(refusal({ ...network, sources: [{ ...source, minus: 9 }] })).toMatchObject({ part: "source", index: 0 });
    expect(refusal({ ...network, ties: Int32Array.of(0, 1, 1, 5) })).toMatchObject({ part: "tie", index: 1 });
    expect(refusal({ ...network, ties: Int32Array.of(0) })).toMatchObject({ part: "tie", index: 0 });
    expect(refusal({ ...network, nodeCount: Number.NaN }).part).toBe("network");
    expect(refusal({ ...network, g: Float64Array.of(1) }).part).toBe("network");
  });

  it("another topology for a refactor, unknown nodes and currents that are not finite", () => {
    const factor = analyse(network);
    expect(() => factor.refactor({ ...network, b: Int32Array.of(-1, -1) })).toThrow(/analyse/);
    expect(() => factor.refactor({ ...network, ties: Int32Array.of(0, 1) })).toThrow(/analyse/);
    expect(() => factor.refactor({ ...network, sources: [] })).toThrow(/analyse/);
    expect(() => factor.solve({ nodes: [2], re: [1], im: [0] })).toThrow(/node 2/);
    expect(() => factor.transfer({ nodes: [0], re: [Number.NaN], im: [0] }, [0])).toThrow(/finite/);
    expect(() => factor.transfer({ nodes: [0], re: [1], im: [0] }, [7])).toThrow(/node 7/);
    // A refused question leaves nothing behind.
    expect(factor.transfer({ nodes: [1], re: [1], im: [0] }, [1]).re[0]).toBeCloseTo(30, 12);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { minimumDegreeOrder } from "../../../shared-model/solver/network/ordering.ts";
import { type Graph, graphOf } from "../../../shared-model/solver/network/sparse-graph.ts";
import { patternOf } from "../../../shared-model/solver/network/sparse-symbolic.ts";
import { Picker } from "../../builders/picker.ts";

type Edge = readonly [number, number];

const graph = (count: number, edges: readonly Edge[]): Graph =>
  graphOf(
    count,
    Int32Array.from(edges, ([a]) => a),
    Int32Array.from(edges, ([, b]) => b),
  );

/** Entries of the factor for an order, by eliminating on sets. */
function fillOf({ count, start, to }: Graph, order: ArrayLike<number>): Set<number>[] {
  const beside = Array.from({ length: count }, (_, node) => new Set(to.slice(start[node], start[node + 1])));
  const columns: Set<number>[] = [];
  for (let k = 0; k < count; k++) {
    const node = order[k] ?? -1;
    const left = beside[node] ?? new Set();
    columns[node] = new Set(left);
    for (const one of left) {
      for (const other of left) if (one !== other) beside[one]?.add(other);
      beside[one]?.delete(node);
    }
  }
  return columns;
}

const entries = (graph: Graph, order: ArrayLike<number>): number =>
  fillOf(graph, order).reduce((sum, column) => sum + column.size, 0);

const randomGraph = fc
  .record({
    count: fc.integer({ min: 1, max: 60 }),
    seed: fc.nat(),
    density: fc.double({ min: 0.2, max: 6, noNaN: true }),
  })
  .map(({ count, seed, density }) => {
    const pick = new Picker(seed);
    const edges = Array.from(
      { length: Math.floor(count * density) },
      (): Edge => [pick.below(count), pick.below(count)],
    );
    return graph(count, edges);
  });

const grid = (side: number): Graph => {
  const edges: Edge[] = [];
  for (let i = 0; i < side * side; i++) {
    if (i % side < side - 1) edges.push([i, i + 1]);
    if (i + side < side * side) edges.push([i, i + side]);
  }
  return graph(side * side, edges);
};

describe("the order of elimination", () => {
  it("has every node once, whatever the graph", () => {
    fc.assert(
      fc.property(randomGraph, (graph) => {
        const sorted = [...minimumDegreeOrder(graph)].sort((a, b) => a - b);
        expect(sorted).toEqual(Array.from({ length: graph.count }, (_, node) => node));
      }),
    );
  });

  it("fills nothing in a tree, a star, a ring's first cut apart", () => {
    const pick = new Picker(3);
    const tree = graph(
      500,
      Array.from({ length: 499 }, (_, i): Edge => [i + 1, pick.below(i + 1)]),
    );
    expect(entries(tree, minimumDegreeOrder(tree))).toBe(499);
    const star = graph(
      2_000,
      Array.from({ length: 1_999 }, (_, i): Edge => [i + 1, 0]),
    );
    expect(patternOf(star).row.length).toBe(1_999);
    // Eliminating a ring of n nodes leaves two entries a column but for the last two.
    const ring = graph(
      300,
      Array.from({ length: 300 }, (_, i): Edge => [i, (i + 1) % 300]),
    );
    expect(patternOf(ring).row.length).toBe(2 * 298 + 1);
  });

  it("fills little more than greedy minimum degree on a grid, and far less than the order of numbers", () => {
    const side = grid(20);
    const ours = entries(side, minimumDegreeOrder(side));
    expect(ours).toBeLessThan(1.2 * entries(side, greedy(side)));
    expect(ours).toBeLessThan(
      0.6 *
        entries(
          side,
          Array.from({ length: side.count }, (_, i) => i),
        ),
    );
  });

  it("orders a ladder of a hundred thousand nodes in time near its size", () => {
    const ladder = (count: number): Graph => {
      const edges: Edge[] = [];
      for (let i = 0; i + 3 < count; i++) {
        edges.push([i, i + 3]);
        if (i % 3 !== 2) edges.push([i, i + 1]);
      }
      return graph(count, edges);
    };
    const timeOf = (count: number): number => {
      const built = ladder(count);
      const times = Array.from({ length: 3 }, () => {
        const before = process.cpuUsage();
        minimumDegreeOrder(built);
        const { user } = process.cpuUsage(before);
        return user;
      });
      return Math.min(...times);
    };
    timeOf(10_000);
    // Sixteen times the nodes: 16 times the work if linear, 256 times if quadratic.
    expect(timeOf(96_000)).toBeLessThan(64 * Math.max(1_000, timeOf(6_000)));
  });
});

describe("the pattern of the factor", () => {
  it("is what elimination on sets gives, sorted, with rows and columns agreeing", () => {
    fc.assert(
      fc.property(randomGraph, (graph) => {
        const { columnOf, nodeOf, start, row, parent, rowStart, rowPlace, rowColumn } = patternOf(graph);
        const expected = fillOf(graph, nodeOf);
        for (let k = 0; k < graph.count; k++) {
          const rows = [...row.slice(start[k], start[k + 1])];
          const wanted = [...(expected[nodeOf[k] ?? -1] ?? [])]
            .map((node) => columnOf[node] ?? -1)
            .sort((a, b) => a - b);
          expect(rows).toEqual(wanted);
          expect(parent[k]).toBe(rows[0] ?? -1);
          for (let q = rowStart[k] ?? 0; q < (rowStart[k + 1] ?? 0); q++) {
            expect(row[rowPlace[q] ?? -1]).toBe(k);
            const column = rowColumn[q] ?? -1;
            expect(rowPlace[q]).toBeGreaterThanOrEqual(start[column] ?? Infinity);
            expect(rowPlace[q]).toBeLessThan(start[column + 1] ?? -1);
          }
        }
        expect(rowStart[graph.count]).toBe(row.length);
      }),
    );
  });
});

/** Always the node with the fewest neighbours, on sets. */
function greedy({ count, start, to }: Graph): number[] {
  const beside = Array.from({ length: count }, (_, node) => new Set(to.slice(start[node], start[node + 1])));
  const left = new Set(beside.keys());
  const order: number[] = [];
  while (left.size > 0) {
    let best = -1;
    for (const node of left) if (best === -1 || (beside[node]?.size ?? 0) < (beside[best]?.size ?? 0)) best = node;
    const around = beside[best] ?? new Set();
    for (const one of around) {
      for (const other of around) if (one !== other) beside[one]?.add(other);
      beside[one]?.delete(best);
    }
    left.delete(best);
    order.push(best);
  }
  return order;
}

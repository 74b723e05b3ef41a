/** An undirected graph over 0..count-1 without loops or parallel edges: the neighbours of i are `to[start[i]..start[i+1]-1]`. */
export interface Graph {
  readonly count: number;
  readonly start: Int32Array;
  readonly to: Int32Array;
}

/**
 * The graph of the edges `from[i] - to[i]`. Edges with a negative end, loops and repeated edges are left out.
 * Linear in nodes and edges.
 */
export function graphOf(count: number, from: Int32Array, to: Int32Array): Graph {
  const start = new Int32Array(count + 1);
  for (let i = 0; i < from.length; i++) {
    const a = from[i] as number;
    const b = to[i] as number;
    if (a < 0 || b < 0 || a === b) continue;
    start[a] = (start[a] as number) + 1;
    start[b] = (start[b] as number) + 1;
  }
  let total = 0;
  for (let node = 0; node <= count; node++) {
    const here = start[node] as number;
    start[node] = total;
    total += here;
  }
  const neighbours = new Int32Array(total);
  const fill = start.slice();
  for (let i = 0; i < from.length; i++) {
    const a = from[i] as number;
    const b = to[i] as number;
    if (a < 0 || b < 0 || a === b) continue;
    neighbours[fill[a] as number] = b;
    fill[a] = (fill[a] as number) + 1;
    neighbours[fill[b] as number] = a;
    fill[b] = (fill[b] as number) + 1;
  }
  return { count, start, to: withoutRepeats(count, start, neighbours) };
}

/** Closes up the lists in place, and returns the part of `to` that is left in use. */
function withoutRepeats(count: number, start: Int32Array, to: Int32Array): Int32Array {
  const seenBy = new Int32Array(count).fill(-1);
  let write = 0;
  let read = 0;
  for (let node = 0; node < count; node++) {
    const end = start[node + 1] as number;
    start[node] = write;
    for (; read < end; read++) {
      const other = to[read] as number;
      if (seenBy[other] === node) continue;
      seenBy[other] = node;
      to[write++] = other;
    }
  }
  start[count] = write;
  return to.slice(0, write);
}

/** Joins integers 0..count-1 into sets; typed, for inner loops. */
export class Sets {
  private readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = new Int32Array(count);
    for (let i = 0; i < count; i++) this.parent[i] = i;
  }

  find(item: number): number {
    const { parent } = this;
    let walk = item;
    while ((parent[walk] as number) !== walk) {
      const above = parent[parent[walk] as number] as number;
      parent[walk] = above;
      walk = above;
    }
    return walk;
  }

  /** The lower of the two representatives stays the representative. */
  join(first: number, second: number): void {
    const a = this.find(first);
    const b = this.find(second);
    if (a < b) this.parent[b] = a;
    else this.parent[a] = b;
  }
}

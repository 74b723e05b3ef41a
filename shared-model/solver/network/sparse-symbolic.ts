import { minimumDegreeOrder } from "./ordering.ts";
import type { Graph } from "./sparse-graph.ts";

/**
 * Where the factor L has entries, below the diagonal, column by column. Columns are numbered in the order of elimination,
 * which is a postorder of the elimination tree, so a part of the circuit and its ancestors lie together.
 */
export interface Pattern {
  readonly count: number;
  /** Column of each node, and node of each column. */
  readonly columnOf: Int32Array;
  readonly nodeOf: Int32Array;
  /** Entries of column k: places `start[k]..start[k+1]-1`, in `row` ascending. */
  readonly start: Int32Array;
  readonly row: Int32Array;
  /** The column that k's elimination changes first; -1 for the last of an island. */
  readonly parent: Int32Array;
  /** Places in row k, columns ascending: `rowPlace[rowStart[k]..rowStart[k+1]-1]`, with their columns. */
  readonly rowStart: Int32Array;
  readonly rowPlace: Int32Array;
  readonly rowColumn: Int32Array;
}

/** Orders the graph and finds the pattern of its factor. Time and memory near the number of entries of the factor. */
export function patternOf(graph: Graph): Pattern {
  const { count } = graph;
  const first = minimumDegreeOrder(graph);
  const firstPlace = inverse(first);
  const post = postorder(eliminationTree(graph, first, firstPlace));
  const nodeOf = new Int32Array(count);
  for (let k = 0; k < count; k++) nodeOf[k] = first[post[k] as number] as number;
  const columnOf = inverse(nodeOf);
  const parent = eliminationTree(graph, nodeOf, columnOf);
  return { count, columnOf, nodeOf, parent, ...sorted(count, columns(graph, nodeOf, columnOf, parent)) };
}

function inverse(order: Int32Array): Int32Array {
  const place = new Int32Array(order.length);
  for (let k = 0; k < order.length; k++) place[order[k] as number] = k;
  return place;
}

/** Parent of each column; -1 for a root. Method: J. Liu, with shortcuts to the highest ancestor known. */
function eliminationTree({ count, start, to }: Graph, nodeOf: Int32Array, columnOf: Int32Array): Int32Array {
  const parent = new Int32Array(count).fill(-1);
  const ancestor = new Int32Array(count).fill(-1);
  for (let k = 0; k < count; k++) {
    const node = nodeOf[k] as number;
    for (let p = start[node] as number; p < (start[node + 1] as number); p++) {
      let walk = columnOf[to[p] as number] as number;
      while (walk !== -1 && walk < k) {
        const above = ancestor[walk] as number;
        ancestor[walk] = k;
        if (above === -1) parent[walk] = k;
        walk = above;
      }
    }
  }
  return parent;
}

/** The columns with every subtree together and children before parents. */
function postorder(parent: Int32Array): Int32Array {
  const count = parent.length;
  const firstChild = new Int32Array(count).fill(-1);
  const sibling = new Int32Array(count).fill(-1);
  for (let k = count - 1; k >= 0; k--) {
    const above = parent[k] as number;
    if (above === -1) continue;
    sibling[k] = firstChild[above] as number;
    firstChild[above] = k;
  }
  const order = new Int32Array(count);
  const stack = new Int32Array(count);
  let filled = 0;
  for (let root = 0; root < count; root++) {
    if (parent[root] !== -1) continue;
    let top = 0;
    stack[0] = root;
    while (top >= 0) {
      const k = stack[top] as number;
      const child = firstChild[k] as number;
      if (child === -1) {
        order[filled++] = k;
        top--;
      } else {
        firstChild[k] = sibling[child] as number;
        stack[++top] = child;
      }
    }
  }
  return order;
}

/** A column holds its node's later neighbours and what its children hold beyond it. Rows unsorted. */
function columns({ count, start, to }: Graph, nodeOf: Int32Array, columnOf: Int32Array, parent: Int32Array) {
  const begin = new Int32Array(count + 1);
  let row = new Int32Array(2 * to.length + 16);
  let filled = 0;
  const seenBy = new Int32Array(count).fill(-1);
  const lastChild = new Int32Array(count).fill(-1);
  const sibling = new Int32Array(count).fill(-1);
  for (let k = 0; k < count; k++) {
    begin[k] = filled;
    const node = nodeOf[k] as number;
    let most = (start[node + 1] as number) - (start[node] as number);
    for (let c = lastChild[k] as number; c !== -1; c = sibling[c] as number) {
      most += (begin[c + 1] as number) - (begin[c] as number);
    }
    if (filled + most > row.length) {
      const longer = new Int32Array(2 * (filled + most));
      longer.set(row);
      row = longer;
    }
    seenBy[k] = k;
    for (let p = start[node] as number; p < (start[node + 1] as number); p++) {
      const other = columnOf[to[p] as number] as number;
      if (other <= k || seenBy[other] === k) continue;
      seenBy[other] = k;
      row[filled++] = other;
    }
    for (let c = lastChild[k] as number; c !== -1; c = sibling[c] as number) {
      for (let p = begin[c] as number; p < (begin[c + 1] as number); p++) {
        const other = row[p] as number;
        if (seenBy[other] === k) continue;
        seenBy[other] = k;
        row[filled++] = other;
      }
    }
    begin[k + 1] = filled;
    const above = parent[k] as number;
    if (above === -1) continue;
    sibling[k] = lastChild[above] as number;
    lastChild[above] = k;
  }
  return { begin, row, filled };
}

/** Sorts the rows of each column by going through the columns of each row, and keeps both directions. */
function sorted(count: number, { begin, row, filled }: { begin: Int32Array; row: Int32Array; filled: number }) {
  const rowStart = new Int32Array(count + 1);
  for (let p = 0; p < filled; p++) {
    const above = (row[p] as number) + 1;
    rowStart[above] = (rowStart[above] as number) + 1;
  }
  for (let k = 0; k < count; k++) rowStart[k + 1] = (rowStart[k + 1] as number) + (rowStart[k] as number);
  const rowColumn = new Int32Array(filled);
  const next = rowStart.slice(0, count);
  for (let k = 0; k < count; k++) {
    for (let p = begin[k] as number; p < (begin[k + 1] as number); p++) {
      const r = row[p] as number;
      rowColumn[next[r] as number] = k;
      next[r] = (next[r] as number) + 1;
    }
  }
  const ascending = new Int32Array(filled);
  const rowPlace = new Int32Array(filled);
  next.set(begin.subarray(0, count));
  for (let r = 0; r < count; r++) {
    for (let q = rowStart[r] as number; q < (rowStart[r + 1] as number); q++) {
      const k = rowColumn[q] as number;
      const place = next[k] as number;
      next[k] = place + 1;
      ascending[place] = r;
      rowPlace[q] = place;
    }
  }
  return { start: begin, row: ascending, rowStart, rowPlace, rowColumn };
}

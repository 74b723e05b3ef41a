import { graphOf, Sets } from "./sparse-graph.ts";
import { type Pattern, patternOf } from "./sparse-symbolic.ts";

/** A linear circuit at one frequency: nodes 0..nodeCount-1; node -1 is the reference (earth). */
export interface Network {
  readonly nodeCount: number;
  /**
   * Admittance branches, as parallel arrays: branch i lies between nodes `a[i]` and `b[i]` (either may be -1) with
   * conductance `g[i]` (at least 0) and susceptance `bS[i]` (positive: capacitive), in siemens. 0 and 0 is an open branch.
   */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly g: Float64Array;
  readonly bS: Float64Array;
  readonly sources: readonly NetworkSource[];
  /** Nodes joined without any impedance, in pairs: `ties[0]` with `ties[1]` and so on; either may be -1. */
  readonly ties?: Int32Array;
}

/** A voltage source behind an impedance; kept as its Norton equivalent. */
export interface NetworkSource {
  readonly plus: number;
  readonly minus: number;
  /** Volts of plus against minus with nothing connected, as a phasor. */
  readonly re: number;
  readonly im: number;
  /** Admittance of its impedance in siemens: conductance (at least 0) and susceptance. 0 and 0: not connected. */
  readonly g: number;
  readonly bS: number;
}

/** A network that cannot be read; says which branch, source or tie, and what to do. */
export class NetworkError extends Error {
  readonly part: "network" | "branch" | "source" | "tie";
  readonly index: number;

  constructor(part: NetworkError["part"], index: number, message: string) {
    super(message);
    this.name = "NetworkError";
    this.part = part;
    this.index = index;
  }
}

/** Above this, in siemens or volts, a value is a mistake; below its inverse a branch is open. */
const LARGEST = 1e30;
const SMALLEST = 1e-30;

/**
 * What does not change with the values. Elements are the branches, then the sources. Tied nodes are one *column*.
 */
export interface Topology {
  readonly elements: number;
  readonly pattern: Pattern;
  /** Column of each node; -1 for one that is tied to the reference. */
  readonly columnOfNode: Int32Array;
  /** The first node of each column. */
  readonly nodeOfColumn: Int32Array;
  /** Columns of both ends of each element; -1 is the reference. */
  readonly columnA: Int32Array;
  readonly columnB: Int32Array;
  /** Where an element's admittance goes: a place of the pattern; -1 to the reference; -2 nowhere (a loop). */
  readonly placeOf: Int32Array;
}

/** Checks nodes and ties, merges what is tied, and orders the elimination. */
export function readTopology(network: Network): Topology {
  checkShape(network);
  const { nodeCount, a, b, sources } = network;
  const elements = a.length + sources.length;
  const { count, junctionOf } = junctions(network);
  const columnA = new Int32Array(elements);
  const columnB = new Int32Array(elements);
  for (let e = 0; e < elements; e++) {
    const source = e < a.length ? undefined : sources[e - a.length];
    const from = source === undefined ? (a[e] as number) : source.plus;
    const to = source === undefined ? (b[e] as number) : source.minus;
    columnA[e] = from < 0 ? -1 : (junctionOf[from] as number);
    columnB[e] = to < 0 ? -1 : (junctionOf[to] as number);
  }
  const pattern = patternOf(graphOf(count, columnA, columnB));
  const { columnOf } = pattern;
  const columnOfNode = new Int32Array(nodeCount);
  const nodeOfColumn = new Int32Array(count);
  for (let node = nodeCount - 1; node >= 0; node--) {
    const junction = junctionOf[node] as number;
    columnOfNode[node] = junction < 0 ? -1 : (columnOf[junction] as number);
    if (junction >= 0) nodeOfColumn[columnOf[junction] as number] = node;
  }
  const placeOf = new Int32Array(elements);
  for (let e = 0; e < elements; e++) {
    const from = columnA[e] as number;
    const to = columnB[e] as number;
    const x = from < 0 ? -1 : (columnOf[from] as number);
    const y = to < 0 ? -1 : (columnOf[to] as number);
    columnA[e] = x;
    columnB[e] = y;
    placeOf[e] = x === y ? -2 : x < 0 || y < 0 ? -1 : placeIn(pattern, Math.min(x, y), Math.max(x, y));
  }
  return { elements, pattern, columnOfNode, nodeOfColumn, columnA, columnB, placeOf };
}

/** Numbers the sets of tied nodes; -1 for those tied to the reference. */
function junctions({ nodeCount, ties }: Network): { readonly count: number; readonly junctionOf: Int32Array } {
  const junctionOf = new Int32Array(nodeCount);
  if (ties === undefined || ties.length === 0) {
    for (let node = 0; node < nodeCount; node++) junctionOf[node] = node;
    return { count: nodeCount, junctionOf };
  }
  const sets = new Sets(nodeCount + 1);
  for (let i = 0; i < ties.length; i += 2) sets.join((ties[i] as number) + 1, (ties[i + 1] as number) + 1);
  let count = 0;
  for (let node = 0; node < nodeCount; node++) {
    const first = sets.find(node + 1) - 1;
    junctionOf[node] = first < 0 ? -1 : first === node ? count++ : (junctionOf[first] as number);
  }
  return { count, junctionOf };
}

function placeIn({ start, row }: Pattern, column: number, wanted: number): number {
  let low = start[column] as number;
  let high = (start[column + 1] as number) - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((row[middle] as number) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

function checkShape({ nodeCount, a, b, g, bS, sources, ties }: Network): void {
  if (!Number.isInteger(nodeCount) || nodeCount < 0) {
    throw new NetworkError("network", -1, `A network has a whole number of nodes, not ${nodeCount}.`);
  }
  if (b.length !== a.length || g.length !== a.length || bS.length !== a.length) {
    const lengths = `${a.length}, ${b.length}, ${g.length}, ${bS.length}`;
    throw new NetworkError("network", -1, `The four arrays of branches must be equally long, not ${lengths}.`);
  }
  const isNode = (node: number): boolean => Number.isInteger(node) && node >= -1 && node < nodeCount;
  const check = (part: NetworkError["part"], index: number, node: number): void => {
    if (isNode(node)) return;
    throw new NetworkError(
      part,
      index,
      `The ${part} ${index} ends at node ${node}, but ${nodeCount === 0 ? "only the reference, -1, exists" : `nodes are -1 to ${nodeCount - 1}`}.`,
    );
  };
  for (let i = 0; i < a.length; i++) {
    check("branch", i, a[i] as number);
    check("branch", i, b[i] as number);
  }
  for (const [i, { plus, minus }] of sources.entries()) {
    check("source", i, plus);
    check("source", i, minus);
  }
  if (ties === undefined) return;
  if (ties.length % 2 === 1) throw new NetworkError("tie", ties.length >> 1, "The last tie has only one node.");
  for (let i = 0; i < ties.length; i++) check("tie", i >> 1, ties[i] as number);
}

/** Whether another network's elements lie between other nodes, so that it needs an analysis of its own. */
export function topologyChanged(was: Network, now: Network): boolean {
  if (was === now) return false;
  return (
    was.nodeCount !== now.nodeCount ||
    was.sources.length !== now.sources.length ||
    differ(was.a, now.a) ||
    differ(was.b, now.b) ||
    differ(was.ties ?? NO_TIES, now.ties ?? NO_TIES) ||
    was.sources.some((source, i) => source.plus !== now.sources[i]?.plus || source.minus !== now.sources[i]?.minus)
  );
}

const NO_TIES = new Int32Array(0);

function differ(was: Int32Array, now: Int32Array): boolean {
  if (was === now) return false;
  if (was.length !== now.length) return true;
  for (let i = 0; i < was.length; i++) if (was[i] !== now[i]) return true;
  return false;
}

/** Values of an element, checked. Open ones are 0 and 0. */
export function checkAdmittance(part: "branch" | "source", index: number, g: number, bS: number): boolean {
  const most = Math.max(g, Math.abs(bS));
  if (g >= 0 && most <= LARGEST) return most > SMALLEST;
  throw new NetworkError(
    part,
    index,
    `The ${part} ${index} has ${g} S conductance and ${bS} S susceptance: ${g < 0 ? "a passive part has no negative conductance" : "give finite values, and join nodes without impedance by a tie"}.`,
  );
}

/** Refuses a source's voltage that is not finite. */
export function checkVolts(index: number, { re, im }: NetworkSource): void {
  if (Math.abs(re) <= LARGEST && Math.abs(im) <= LARGEST) return;
  throw new NetworkError("source", index, `The source ${index} has ${re} + j${im} V: give a finite voltage.`);
}

import { factorise, type SparseFactor, solveInPlace } from "./sparse-factor.ts";
import { findIslands, type Islands, TIE } from "./sparse-islands.ts";
import { PathSolver } from "./sparse-paths.ts";
import { refineWhereNeeded, type Solved } from "./sparse-refine.ts";
import {
  checkAdmittance,
  checkVolts,
  type Network,
  NetworkError,
  type NetworkSource,
  readTopology,
  type Topology,
  topologyChanged,
} from "./sparse-topology.ts";

export { type Network, NetworkError, type NetworkSource };

/** Phasors by node: volts, or amperes where they are injected. */
export interface Phasors {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Currents in amperes into a few nodes, out of the reference; into -1 is nothing. A node may come twice. */
export interface Injection {
  readonly nodes: ArrayLike<number>;
  readonly re: ArrayLike<number>;
  readonly im: ArrayLike<number>;
}

export interface Phasor {
  readonly re: number;
  readonly im: number;
}

/** A network ready to answer for its values. Not for two callers at once: it reuses its work space. */
export interface Factor {
  readonly network: Network;
  /**
   * Island of each node, numbered from 0: nodes joined by closed elements or ties without passing the reference. -1 for
   * a node that is tied to the reference.
   */
  readonly islandOf: Int32Array;
  readonly islandCount: number;
  /**
   * Whether nothing, not even a capacitance, leads from the node to the reference. Its island then stands at a defined
   * voltage: the minus end of its first listed source is taken as 0 V; without source, an end of its first listed branch.
   */
  floating(node: number): boolean;
  /** Whether a connected source lies in the node's island. */
  sourced(node: number): boolean;
  /** The first of the nodes that are tied together with this one, -1 for the reference: they have one voltage. */
  nameOf(node: number): number;
  /** The node that is taken as 0 V in each island that floats. */
  readonly tiedNodes: Int32Array;
  /** Pivots moved because inductance and capacitance cancelled without loss: the answer is then only finite, not true. */
  readonly resonances: number;
  /**
   * The same topology with new values, without ordering again; a branch may open (0 S) or close. Throws a `NetworkError`
   * for bad values and for another topology.
   */
  refactor(network: Network): Factor;
  /** Node voltages with all sources at work. */
  operatingPoint(): Phasors;
  /** Node voltages for injected currents, the sources short-circuited behind their impedances. */
  solve(injection: Injection | Phasors): Phasors;
  /** As `solve`, for the wanted nodes alone and in their order: costs only their way up the elimination tree. */
  transfer(injection: Injection, wanted: ArrayLike<number>): Phasors;
  /** Ohms between two places with the sources short-circuited behind their impedances; `undefined` where nothing joins them. */
  impedance(from: number, to: number): Phasor | undefined;
}

/** Orders, analyses and factorises a network. Throws a `NetworkError` naming the branch, source or tie that cannot be. */
export function analyse(network: Network): Factor {
  return new NetworkFactor(network, readTopology(network), undefined);
}

class NetworkFactor implements Factor, Solved {
  readonly network: Network;
  readonly islandOf: Int32Array;
  readonly islandCount: number;
  readonly resonances: number;
  readonly topology: Topology;
  readonly islands: Islands;
  readonly closed: Uint8Array;
  readonly factor: SparseFactor;
  readonly inductive: boolean;
  private readonly x: Float64Array;
  private readonly injected: Float64Array;
  private readonly error: Float64Array;
  private paths: PathSolver | undefined;

  constructor(network: Network, topology: Topology, before: NetworkFactor | undefined) {
    this.network = network;
    this.topology = topology;
    const { pattern, columnA, columnB, placeOf } = topology;
    const { a, g, bS, sources } = network;
    const y = new Float64Array(2 * pattern.row.length);
    const earth = new Float64Array(2 * pattern.count);
    const closed = new Uint8Array(topology.elements);
    let inductive = false;
    const add = (e: number, re: number, im: number): void => {
      if (im < 0) inductive = true;
      closed[e] = 1;
      const place = placeOf[e] as number;
      if (place === -2) return;
      const at = place >= 0 ? 2 * place : 2 * Math.max(columnA[e] as number, columnB[e] as number);
      const into = place >= 0 ? y : earth;
      into[at] = (into[at] as number) + re;
      into[at + 1] = (into[at + 1] as number) + im;
    };
    for (let i = 0; i < a.length; i++) {
      const re = g[i] as number;
      const im = bS[i] as number;
      if (checkAdmittance("branch", i, re, im)) add(i, re, im);
    }
    for (const [i, source] of sources.entries()) {
      checkVolts(i, source);
      if (checkAdmittance("source", i, source.g, source.bS)) add(a.length + i, source.g, source.bS);
    }
    const sameIslands = before !== undefined && same(closed, before.closed);
    this.closed = closed;
    this.islands = sameIslands ? before.islands : findIslands(topology, closed, a.length);
    this.islandOf = sameIslands ? before.islandOf : byNode(topology.columnOfNode, this.islands.islandOf);
    this.islandCount = this.islands.count;
    for (const column of this.islands.tied) earth[2 * column] = (earth[2 * column] as number) + TIE;
    this.factor = factorise(pattern, y, earth);
    this.resonances = this.factor.moved;
    this.inductive = inductive;
    this.x = before?.x ?? new Float64Array(2 * pattern.count);
    this.injected = before?.injected ?? new Float64Array(2 * pattern.count);
    this.error = before?.error ?? new Float64Array(pattern.count);
  }

  floating(node: number): boolean {
    const island = this.islandOf[node];
    return island !== undefined && island >= 0 && this.islands.referenced[island] === 0;
  }

  sourced(node: number): boolean {
    const island = this.islandOf[node];
    return island !== undefined && island >= 0 && this.islands.sourced[island] === 1;
  }

  nameOf(node: number): number {
    const column = this.columnOf(node, this.topology.columnOfNode);
    return column < 0 ? -1 : (this.topology.nodeOfColumn[column] as number);
  }

  get tiedNodes(): Int32Array {
    return this.islands.tied.map((column) => this.topology.nodeOfColumn[column] as number);
  }

  refactor(network: Network): Factor {
    if (topologyChanged(this.network, network)) {
      throw new NetworkError("network", -1, "The branches lie between other nodes: analyse this network anew.");
    }
    return new NetworkFactor(network, this.topology, this);
  }

  operatingPoint(): Phasors {
    const { x } = this;
    x.fill(0);
    const { columnA, columnB } = this.topology;
    const branches = this.network.a.length;
    for (const [i, source] of this.network.sources.entries()) {
      if (this.closed[branches + i] === 0) continue;
      const re = source.re * source.g - source.im * source.bS;
      const im = source.re * source.bS + source.im * source.g;
      this.inject(columnA[branches + i] as number, re, im);
      this.inject(columnB[branches + i] as number, -re, -im);
    }
    return this.finish();
  }

  solve(injection: Injection | Phasors): Phasors {
    this.x.fill(0);
    const { columnOfNode } = this.topology;
    const { re, im } = injection;
    const nodes = "nodes" in injection ? injection.nodes : undefined;
    for (let i = 0; i < re.length; i++) {
      const node = nodes === undefined ? i : (nodes[i] as number);
      this.inject(this.columnOf(node, columnOfNode), re[i] as number, im[i] as number);
    }
    return this.finish();
  }

  transfer({ nodes, re, im }: Injection, wanted: ArrayLike<number>): Phasors {
    const { columnOfNode } = this.topology;
    this.paths ??= new PathSolver(this.factor);
    const { paths } = this;
    const injected = new Int32Array(nodes.length);
    for (let i = 0; i < nodes.length; i++) {
      const column = this.columnOf(nodes[i] as number, columnOfNode);
      injected[i] = column;
      if (column >= 0) paths.inject(column, finite(re[i] as number), finite(im[i] as number));
    }
    const columns = new Int32Array(wanted.length);
    for (let i = 0; i < wanted.length; i++) columns[i] = this.columnOf(wanted[i] as number, columnOfNode);
    const out = new Float64Array(2 * wanted.length);
    paths.solveFor(injected, columns, out);
    const answer = { re: new Float64Array(wanted.length), im: new Float64Array(wanted.length) };
    for (let i = 0; i < wanted.length; i++) {
      answer.re[i] = out[2 * i] as number;
      answer.im[i] = out[2 * i + 1] as number;
    }
    return answer;
  }

  impedance(from: number, to: number): Phasor | undefined {
    const { columnOfNode } = this.topology;
    const first = this.columnOf(from, columnOfNode);
    const second = this.columnOf(to, columnOfNode);
    if (first === second) return { re: 0, im: 0 };
    const apart = first < 0 || second < 0 || this.islandOf[from] !== this.islandOf[to];
    if (apart && ((first >= 0 && this.floating(from)) || (second >= 0 && this.floating(to)))) return undefined;
    const { re, im } = this.transfer({ nodes: [from, to], re: [1, -1], im: [0, 0] }, [from, to]);
    return { re: (re[0] as number) - (re[1] as number), im: (im[0] as number) - (im[1] as number) };
  }

  private columnOf(node: number, columnOfNode: Int32Array): number {
    if (node === -1) return -1;
    const column = columnOfNode[node];
    if (column === undefined) throw new RangeError(`There is no node ${node} in a network of ${columnOfNode.length}.`);
    return column;
  }

  private inject(column: number, re: number, im: number): void {
    if (column < 0) return;
    this.x[2 * column] = (this.x[2 * column] as number) + finite(re);
    this.x[2 * column + 1] = (this.x[2 * column + 1] as number) + finite(im);
  }

  /** Solves for what is injected in `x`. */
  private finish(): Phasors {
    const { x } = this;
    this.injected.set(x);
    const doubt = solveInPlace(this.factor, x, this.error);
    refineWhereNeeded(this, x, this.injected, this.error, doubt);
    const { columnOfNode } = this.topology;
    const re = new Float64Array(columnOfNode.length);
    const im = new Float64Array(columnOfNode.length);
    for (let node = 0; node < columnOfNode.length; node++) {
      const column = columnOfNode[node] as number;
      if (column < 0) continue;
      re[node] = x[2 * column] as number;
      im[node] = x[2 * column + 1] as number;
    }
    return { re, im };
  }
}

function same(now: Uint8Array, before: Uint8Array): boolean {
  for (let e = 0; e < now.length; e++) if (now[e] !== before[e]) return false;
  return true;
}

function byNode(columnOfNode: Int32Array, ofColumn: Int32Array): Int32Array {
  return columnOfNode.map((column) => (column < 0 ? -1 : (ofColumn[column] as number)));
}

function finite(amperes: number): number {
  if (Number.isFinite(amperes)) return amperes;
  throw new RangeError(`An injected current of ${amperes} A cannot be solved for: give a finite one.`);
}

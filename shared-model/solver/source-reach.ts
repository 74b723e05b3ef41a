import { UnionFind } from "../lib/union-find.ts";
import type { DeviceId } from "../model/ids.ts";
import { alwaysJoined, find, join, joinEdge } from "./always-joined.ts";
import { type ConductionGraph, GROUND, type GraphEdge, HOT, NEUTRAL } from "./conduction-graph.ts";
import { MOST_SWITCHES, type Setting } from "./settings.ts";

/** A ground-fault device with its contacts open, or with all that its sensor sums taken out. */
export interface Opened {
  readonly device: DeviceId;
  readonly what: "contacts" | "sensor";
}

/** Nets whose sources depend on switches that bear on each other, and the paths between them. */
interface Cluster {
  readonly handles: readonly string[];
  readonly nets: readonly number[];
  readonly paths: readonly SwitchPath[];
  /** Source bits of each net in each setting, net by net; undefined while more switches meet than are tried. */
  table?: Uint8Array;
  /** What reaches it when every switch path conducts at once: more than any setting brings. */
  most: number;
  readonly bounded: boolean;
}

interface SwitchPath {
  readonly a: number;
  readonly b: number;
  readonly handle: string;
  readonly position: number;
}

/** Over all settings: what some bring, what each brings, and whether a leg is there in each. */
interface Summary {
  some: number;
  always: number;
  alwaysHot: boolean;
  legsMeet: boolean;
}

/** True when one of the things that a ground-fault device opens or sums lies in this edge. */
export function isOpened(edge: GraphEdge, opened: Opened | undefined): boolean {
  if (opened === undefined || edge.opens === undefined || edge.device?.id !== opened.device) return false;
  return edge.opens === "both" || edge.opens === opened.what;
}

/**
 * Which sources reach which node, in every setting of the switches, with loads removed and breakers on.
 *
 * Nets are first joined over all that conducts in every setting. A net that sources hold then, and that no setting brings
 * another source to, says the same in every setting: it ends the search on both of its sides. What is left falls into
 * clusters that do not bear on each other, each tried setting by setting. So ten lamps on one feed cost ten times two
 * settings, not 2^10.
 */
export class SourceReach {
  readonly graph: ConductionGraph;
  /** Net of each node: equal for nodes joined in every setting. */
  readonly net: Int32Array;
  /** True when some cluster has more switches than are tried. */
  readonly bounded: boolean;
  private readonly fixed: Uint8Array;
  private readonly clusterOf = new Map<number, { readonly cluster: Cluster; readonly row: number }>();
  private readonly summaries = new Map<number, Summary>();

  constructor(graph: ConductionGraph, opened?: Opened) {
    this.graph = graph;
    const { nodes } = graph;
    const { parent: closed, seeds: held, opening, switching } = alwaysJoined(graph);
    const parent = closed.slice();
    const seeds = held.slice();
    for (const edge of opening) if (!isOpened(edge, opened)) joinEdge(graph, edge, parent, seeds);
    this.net = parent.map((_, node) => find(parent, node));
    this.fixed = new Uint8Array(nodes.length);
    for (let node = 0; node < nodes.length; node++) {
      const net = this.net[node] as number;
      this.fixed[net] = (this.fixed[net] as number) | (seeds[node] as number);
    }
    this.bounded = this.clusterAll(switching);
  }

  /** Source bits at a node in one setting. In a cluster that is not tried setting by setting, the most it can be. */
  bitsAt(node: number, setting: Setting): number {
    const net = this.net[node] as number;
    const found = this.clusterOf.get(net);
    if (found === undefined) return this.fixed[net] as number;
    const { cluster, row } = found;
    if (cluster.table === undefined) return cluster.most;
    const column = setting.columnOf(cluster.handles);
    return cluster.table[(row << cluster.handles.length) + column] as number;
  }

  /** Handles that decide what reaches a node; none when no setting changes it. */
  handlesAt(node: number): readonly string[] {
    const found = this.clusterOf.get(this.net[node] as number);
    return found === undefined || found.cluster.most === 0 ? NO_HANDLES : found.cluster.handles;
  }

  isBounded(node: number): boolean {
    return this.clusterOf.get(this.net[node] as number)?.cluster.bounded === true;
  }

  /** Bits that some setting brings to a node. */
  some(node: number): number {
    return this.summary(node).some;
  }

  /** Bits that every setting brings to it. */
  always(node: number): number {
    return this.summary(node).always;
  }

  /** A leg is there in every setting, not necessarily the same one. */
  isAlwaysHot(node: number): boolean {
    return this.summary(node).alwaysHot;
  }

  /** Two legs are there in one setting. */
  doLegsMeet(node: number): boolean {
    return this.summary(node).legsMeet;
  }

  private summary(node: number): Summary {
    const net = this.net[node] as number;
    let summary = this.summaries.get(net);
    if (summary === undefined) {
      summary = this.summarise(net);
      this.summaries.set(net, summary);
    }
    return summary;
  }

  private summarise(net: number): Summary {
    const found = this.clusterOf.get(net);
    if (found === undefined) {
      const held = this.fixed[net] as number;
      return { some: held, always: held, alwaysHot: (held & HOT) !== 0, legsMeet: hasTwoLegs(held) };
    }
    const { cluster, row } = found;
    if (cluster.table === undefined) return { some: cluster.most, always: 0, alwaysHot: false, legsMeet: false };
    const columns = 1 << cluster.handles.length;
    const summary: Summary = { some: 0, always: HOT | NEUTRAL | GROUND, alwaysHot: true, legsMeet: false };
    for (let column = 0; column < columns; column++) {
      const bits = cluster.table[row * columns + column] as number;
      summary.some |= bits;
      summary.always &= bits;
      if ((bits & HOT) === 0) summary.alwaysHot = false;
      if (hasTwoLegs(bits)) summary.legsMeet = true;
    }
    return summary;
  }

  /** A held net that a setting brings another source to is taken into the clusters, and they are made anew. */
  private clusterAll(switching: readonly GraphEdge[]): boolean {
    const paths: SwitchPath[] = [];
    for (const edge of switching) {
      const a = this.net[edge.a] as number;
      const b = this.net[edge.b] as number;
      if (a !== b) paths.push({ a, b, handle: edge.handle ?? "", position: edge.position ?? -1 });
    }
    const opened = new Set<number>();
    for (;;) {
      this.clusterOf.clear();
      const before = opened.size;
      const bounded = this.clusterPaths(paths, opened);
      if (opened.size === before) return bounded;
    }
  }

  private clusterPaths(paths: readonly SwitchPath[], opened: Set<number>): boolean {
    const isMember = (net: number): boolean => this.fixed[net] === 0 || opened.has(net);
    const sets = new UnionFind();
    for (const { a, b } of paths) if (isMember(a) && isMember(b)) sets.join(a, b);
    const groups = new Map<number, SwitchPath[]>();
    const reached: [net: number, bits: number][] = [];
    for (const path of paths) {
      const { a, b } = path;
      if (!isMember(a) && !isMember(b)) {
        reached.push([a, this.fixed[b] as number], [b, this.fixed[a] as number]);
        continue;
      }
      const key = sets.find(isMember(a) ? a : b);
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [path]);
      else group.push(path);
    }
    let bounded = false;
    for (const group of groups.values()) {
      const cluster = this.addCluster(group, isMember);
      if (cluster.bounded) bounded = true;
      else if (cluster.most !== 0) cluster.table = this.tryEach(cluster, reached);
    }
    for (const [net, bits] of reached) if ((bits & ~(this.fixed[net] as number)) !== 0) opened.add(net);
    return bounded;
  }

  private addCluster(paths: readonly SwitchPath[], isMember: (net: number) => boolean): Cluster {
    const handles = [...new Set(paths.map((path) => path.handle))].sort();
    const nets = [...new Set(paths.flatMap(({ a, b }) => [a, b]))].filter(isMember);
    let most = 0;
    for (const { a, b } of paths) most |= (this.fixed[a] as number) | (this.fixed[b] as number);
    const bounded = most !== 0 && handles.length > MOST_SWITCHES;
    const cluster: Cluster = { handles, nets, paths, most, bounded };
    nets.forEach((net, row) => {
      this.clusterOf.set(net, { cluster, row });
    });
    return cluster;
  }

  /** Fills the table of a cluster; notes what the held nets at its edge get, once each. */
  private tryEach({ handles, nets, paths }: Cluster, reached: [net: number, bits: number][]): Uint8Array {
    const columns = 1 << handles.length;
    const table = new Uint8Array(nets.length * columns);
    const rowOf = new Map(nets.map((net, row) => [net, row]));
    const ends = paths.map(({ a, b, handle, position }) => {
      const rowA = rowOf.get(a) ?? -1;
      const rowB = rowOf.get(b) ?? -1;
      return { rowA, rowB, held: rowA < 0 ? a : rowB < 0 ? b : -1, bit: handles.indexOf(handle), position };
    });
    const own = Uint8Array.from(nets, (net) => this.fixed[net] as number);
    const parent = new Int32Array(nets.length);
    const bits = new Uint8Array(nets.length);
    const atEdge = new Map<number, number>();
    for (let column = 0; column < columns; column++) {
      for (let row = 0; row < nets.length; row++) parent[row] = row;
      bits.fill(0);
      const closed = ends.filter((end) => ((column >> end.bit) & 1) === end.position);
      for (const { rowA, rowB, held } of closed) if (held < 0) join(parent, rowA, rowB);
      const give = (row: number, more: number): void => {
        const root = find(parent, row);
        bits[root] = (bits[root] as number) | more;
      };
      for (let row = 0; row < nets.length; row++) if (own[row] !== 0) give(row, own[row] as number);
      for (const { rowA, rowB, held } of closed) if (held >= 0) give(Math.max(rowA, rowB), this.fixed[held] as number);
      for (let row = 0; row < nets.length; row++) table[row * columns + column] = bits[find(parent, row)] as number;
      for (const { rowA, rowB, held } of closed)
        if (held >= 0) atEdge.set(held, (atEdge.get(held) ?? 0) | (bits[find(parent, Math.max(rowA, rowB))] as number));
    }
    reached.push(...atEdge);
    return table;
  }
}

const NO_HANDLES: readonly string[] = [];

function hasTwoLegs(bits: number): boolean {
  const legs = bits & HOT;
  return (legs & (legs - 1)) !== 0;
}

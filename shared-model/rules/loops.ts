import { getDeviceType } from "../catalog/device-types.ts";
import type { Cable } from "../model/cable.ts";
import { type ConductorKey, cableEnd, type EndKey, type Side } from "../model/ids.ts";
import { enclosureGraph } from "../solver/enclosure-graph.ts";
import type { Section } from "../solver/section.ts";
import { keysOf } from "./ground-leads.ts";
import { joinedByWireAndStrap } from "./wire-groups.ts";

/** A conductor of a cable between two enclosures. */
export interface Strand {
  readonly cable: Cable;
  readonly key: ConductorKey;
  readonly a: EndKey;
  readonly b: EndKey;
}

/** Conductors of cables that metal joins into a ring, by straps of devices too; contacts and handles part it. */
export type Loop = readonly Strand[];

const cache = new WeakMap<Section, readonly Loop[]>();

/**
 * Rings of circuit conductors, one for each conductor that closes one; grounds may be joined as they like. The neutrals of
 * several circuits meet on their bar, so that a bar closes a ring only where the section is on one breaker.
 */
export function loopsOf(section: Section): readonly Loop[] {
  let loops = cache.get(section);
  if (loops === undefined) {
    loops = findLoops(section);
    cache.set(section, loops);
  }
  return loops;
}

interface Branch extends Strand {
  readonly from: string;
  readonly to: string;
}

function findLoops(section: Section): readonly Loop[] {
  const pointOf = new Points(section);
  const tree = new Map<string, Branch[]>();
  const parent = new Map<string, string>();
  const rootOf = (node: string): string => {
    let root = node;
    for (let up = parent.get(root); up !== undefined; up = parent.get(root)) root = up;
    return root;
  };
  const loops: Loop[] = [];
  for (const cable of section.cables) {
    for (const key of keysOf(cable)) {
      if (cable.conductors[key]?.grounding === true) continue;
      const [a, b] = [cableEnd(cable.id, key, "a"), cableEnd(cable.id, key, "b")];
      const [from, to] = [pointOf.end(cable, a, "a"), pointOf.end(cable, b, "b")];
      if (from === undefined || to === undefined || from === to) continue;
      const branch: Branch = { cable, key, a, b, from, to };
      const [rootA, rootB] = [rootOf(from), rootOf(to)];
      if (rootA === rootB) loops.push([...wayBetween(tree, from, to), branch]);
      else {
        parent.set(rootA, rootB);
        for (const node of [from, to]) tree.set(node, [...(tree.get(node) ?? []), branch]);
      }
    }
  }
  return loops;
}

function wayBetween(tree: ReadonlyMap<string, readonly Branch[]>, from: string, to: string): readonly Branch[] {
  const cameBy = new Map<string, Branch | undefined>([[from, undefined]]);
  const queue = [from];
  for (const node of queue) {
    if (node === to) break;
    for (const branch of tree.get(node) ?? []) {
      const next = branch.from === node ? branch.to : branch.from;
      if (cameBy.has(next)) continue;
      cameBy.set(next, branch);
      queue.push(next);
    }
  }
  const way: Branch[] = [];
  let at = to;
  for (let branch = cameBy.get(at); branch !== undefined; branch = cameBy.get(at)) {
    way.push(branch);
    at = branch.from === at ? branch.to : branch.from;
  }
  return way;
}

/** Names for what metal joins inside each enclosure. */
class Points {
  private readonly section: Section;
  private readonly oneCircuit: boolean;

  constructor(section: Section) {
    this.section = section;
    this.oneCircuit = section.breakers().length === 1;
  }

  /** Undefined for an end that lies outside the drawing. */
  end(cable: Cable, end: EndKey, side: Side): string | undefined {
    const where = cable.sides[side];
    const enclosure = "enclosure" in where ? this.section.installation.enclosures[where.enclosure] : undefined;
    const at = enclosure?.places[end]?.at;
    if (enclosure === undefined || at === undefined) return undefined;
    if (enclosure.kind === "panel" && at.kind === "terminal") {
      const device = enclosure.devices[at.device];
      const family = device === undefined ? undefined : getDeviceType(device.type).family;
      if (family === "neutral-bar" || family === "ground-bar" || family === "lugs")
        return this.oneCircuit ? [enclosure.id, "bar"].join(" ") : `${enclosure.id} ${end}`;
    }
    const point = enclosureGraph(enclosure).pointOfEnd(end);
    return point === undefined ? undefined : `${enclosure.id} ${joinedByWireAndStrap(enclosure)(point)}`;
  }
}

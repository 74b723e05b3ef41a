import type { Cable } from "../model/cable.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import {
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type SpliceId,
  type TerminalName,
} from "../model/ids.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { findEndFacts } from "../queries/end-facts.ts";
import { findTerminal } from "../queries/terminals-of.ts";
import { enclosureGraph } from "../solver/enclosure-graph.ts";
import type { Section, Spot } from "../solver/section.ts";
import { keptWithWiring } from "../solver/sections.ts";
import { isArmourBonded, keysOf, reachesGround } from "./ground-leads.ts";
import { joinedByWire } from "./wire-groups.ts";

/**
 * Equipment grounds of one box that metal joins inside it, by conductors and what holds them: a yoke is no splice, so no
 * path of a device counts.
 */
export interface GroundGroup {
  /** Ends of the grounds of cables, sorted. */
  readonly ends: readonly EndKey[];
  /** Cables whose armour is the ground and is joined by their connectors to the metal of the box. */
  readonly armour: readonly Cable[];
  readonly splices: readonly SpliceId[];
  /** Terminals at which a ground of a cable ends. */
  readonly terminals: readonly { readonly device: DeviceId; readonly terminal: TerminalName }[];
  /** The metal of the box is in it. */
  readonly bond: boolean;
  /** One capped or loose end and nothing else. */
  readonly free: boolean;
  /** Leads to the ground bar of a panel, or out of the drawing. */
  readonly reachesGround: boolean;
  /** Nothing but grounds, ground screws and metal is joined in it, and no source but the ground is on it: it may be added to. */
  readonly clean: boolean;
}

/** What is known of the grounds of one box. */
export interface BoxGrounds {
  /** Those that lead to ground first, then by their first end. */
  readonly groups: readonly GroundGroup[];
  /** Some ground in the box leads to ground: what has to be grounded here can be. */
  readonly present: boolean;
  groupAtTerminal(device: DeviceId, terminal: TerminalName): GroundGroup | undefined;
  groupAtBond(): GroundGroup | undefined;
  /** Whether the metal of the box may be joined to a ground: nothing on it is a circuit conductor or live. */
  readonly bondIsClean: boolean;
}

const groundsIn = keptWithWiring(() => new Map<EnclosureId, BoxGrounds>());

/** The grounds of a box of the section. Made once for all rules that ask, and kept as long as the wiring is the same. */
export function groundsOf(section: Section, box: Box): BoxGrounds {
  const known = groundsIn(section);
  let grounds = known.get(box.id);
  if (grounds === undefined) {
    grounds = findGrounds(section, box);
    known.set(box.id, grounds);
  }
  return grounds;
}

interface Gathering {
  readonly ends: EndKey[];
  readonly armour: Cable[];
  used: boolean;
}

function findGrounds(section: Section, box: Box): BoxGrounds {
  const groupOf = joinedByWire(box);
  const graph = enclosureGraph(box);
  const gathered = new Map<number, Gathering>();
  const gather = (point: number): Gathering => {
    const root = groupOf(point);
    const known = gathered.get(root) ?? { ends: [], armour: [], used: false };
    gathered.set(root, known);
    return known;
  };
  for (const { cable, side, entry } of cablesInto(section.installation.cables, box.id)) {
    const grounds = keysOf(cable).filter((key) => cable.conductors[key]?.grounding === true);
    const used = isInUse(box, cable, side);
    for (const key of grounds) {
      const end = cableEnd(cable.id, key, side);
      const point = graph.pointOfEnd(end);
      if (point === undefined) continue;
      const group = gather(point);
      group.ends.push(end);
      group.used ||= used || !isFree(box, end);
    }
    if (grounds.length > 0 || !isArmourBonded(box, cable, entry)) continue;
    const metal = gather(graph.bond);
    metal.armour.push(cable);
    metal.used ||= used;
  }
  const byRoot = new Map<number, GroundGroup>();
  for (const [root, { ends, armour, used }] of gathered)
    if (used) byRoot.set(root, makeGroup(section, box, root, groupOf, ends.sort(), armour));
  const groups = [...byRoot.values()].sort(
    (a, b) => Number(b.reachesGround) - Number(a.reachesGround) || ((a.ends[0] ?? "") < (b.ends[0] ?? "") ? -1 : 1),
  );
  let bondIsClean: boolean | undefined;
  const groupAt = (point: number | undefined): GroundGroup | undefined =>
    point === undefined ? undefined : byRoot.get(groupOf(point));
  return {
    groups,
    present: groups.some((group) => group.reachesGround),
    groupAtTerminal: (device, terminal) => groupAt(graph.pointOfNode(device, terminal)),
    groupAtBond: () => groupAt(graph.bond),
    // Asked for fixes alone.
    get bondIsClean() {
      bondIsClean ??= isClean(section, box, groupOf(graph.bond), groupOf, { bond: box.id });
      return bondIsClean;
    },
  };
}

/** Every end and terminal that wires join to a point is made for the ground, and neither a leg nor the neutral reaches it. */
function isClean(section: Section, box: Box, root: number, groupOf: (point: number) => number, spot: Spot): boolean {
  const reach = section.reach();
  if (reach.isLive(spot) || reach.isGrounded(spot)) return false;
  const graph = enclosureGraph(box);
  return (Object.keys(box.places) as EndKey[]).every((end) => {
    const point = graph.pointOfEnd(end);
    if (point === undefined || groupOf(point) !== root) return true;
    const at = box.places[end]?.at;
    const device = at?.kind === "terminal" ? box.devices[at.device] : undefined;
    if (at?.kind === "terminal" && (device === undefined || findTerminal(device, at.terminal)?.purpose !== "ground"))
      return false;
    return findEndFacts(section.installation, box, end)?.grounding === true;
  });
}

function makeGroup(
  section: Section,
  box: Box,
  root: number,
  groupOf: (point: number) => number,
  ends: readonly EndKey[],
  armour: readonly Cable[],
): GroundGroup {
  const graph = enclosureGraph(box);
  const isIn = (point: number | undefined): boolean => point !== undefined && groupOf(point) === root;
  const terminals = new Map<string, GroundGroup["terminals"][number]>();
  for (const end of ends) {
    const at = box.places[end]?.at;
    if (at?.kind !== "terminal") continue;
    terminals.set(`${at.device}.${at.terminal}`, { device: at.device, terminal: at.terminal });
  }
  const bond = isIn(graph.bond);
  const [first] = ends;
  const spot: Spot = bond || first === undefined ? { bond: box.id } : { end: first };
  let clean: boolean | undefined;
  return {
    ends,
    armour,
    splices: Object.keys(box.splices)
      .map((id) => id as SpliceId)
      .filter((id) => isIn(graph.pointOfSplice(id)))
      .sort(),
    terminals: [...terminals.values()],
    bond,
    free: ends.length === 1 && !bond && first !== undefined && isFree(box, first),
    reachesGround: reachesGround(section, spot),
    get clean() {
      clean ??= isClean(section, box, root, groupOf, spot);
      return clean;
    },
  };
}

function isFree(box: Enclosure, end: EndKey): boolean {
  const kind = box.places[end]?.at.kind;
  return kind === "capped" || kind === "loose";
}

/** A cable of which every other conductor is capped or loose here has no part in the circuits of the box. */
function isInUse(box: Box, cable: Cable, side: "a" | "b"): boolean {
  const others = keysOf(cable).filter((key) => cable.conductors[key]?.grounding !== true);
  return others.length === 0 || others.some((key) => !isFree(box, cableEnd(cable.id, key, side)));
}

/** While a box is being surveyed its ends are parted on purpose: grounds that are capped or loose there say nothing. */
export const isParted = (box: Box, { groups }: BoxGrounds): boolean =>
  box.beingSurveyed === true && groups.some(({ free }) => free);

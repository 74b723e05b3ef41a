import type { PathWhen, TerminalType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { TerminalName } from "../model/ids.ts";
import { type PlacedTerminal, terminalsOf } from "./terminals-of.ts";

/** Terminals of a device that are one point while nothing is switched: what is on them was joined by the device. */
export interface TerminalNode {
  readonly kind: "hot" | "switched" | "neutral" | "ground" | "traveller" | "signal";
  readonly terminals: readonly PlacedTerminal[];
  /** On the LOAD side of a ground-fault device, as a point of its own. */
  readonly load: boolean;
  readonly feedsSwitch: boolean;
  readonly feedsOutlet: boolean;
  /** Whether its marking tells supply from switched conductor: the screws of a plain switch do not. */
  readonly marked: boolean;
}

/** A node of the old device and the one of the new device that does the same. */
export interface Correspondence {
  readonly from: TerminalNode;
  readonly to: TerminalNode;
}

const HANDLE: ReadonlySet<PathWhen> = new Set(["on", "off", "up", "down", "straight", "crossed"]);

/**
 * Which terminals of a new device do what terminals of the old one did, by what the catalogue says of them. Nothing is
 * joined that the old device did not join: every node of the new device takes from one node of the old. So the halves
 * of a split duplex never meet, all of a plain device goes to LINE, since what LOAD is to protect is a person's
 * decision, and LINE and LOAD come together only where the new device has no LOAD. What is not listed corresponds to
 * nothing.
 */
export function correspondences(old: Device, next: Device): readonly Correspondence[] {
  const split = hasLoadSide(next);
  const sources = nodesOf(old, split, next);
  const targets = nodesOf(next, true, old);
  const found: Correspondence[] = [];
  for (const load of [false, true]) {
    const from = sources.filter((node) => node.load === load);
    const to = targets.filter((node) => node.load === load);
    found.push(...matchHots(only(from, "hot"), only(to, "hot")));
    for (const kind of ["switched", "neutral", "ground", "traveller", "signal"] as const) {
      const others = only(to, kind);
      only(from, kind).forEach((node, index) => {
        const other = others[index];
        if (other !== undefined) found.push({ from: node, to: other });
      });
    }
  }
  return found;
}

const only = (nodes: readonly TerminalNode[], kind: TerminalNode["kind"]): readonly TerminalNode[] =>
  nodes.filter((node) => node.kind === kind);

const hasLoadSide = (device: Device): boolean => terminalsOf(device).some(({ group }) => group === "LOAD");

/** A supply of outlets stays one, a supply of a switch stays one; only where there is no such pair do they stand in for each other. */
function matchHots(sources: readonly TerminalNode[], targets: readonly TerminalNode[]): readonly Correspondence[] {
  const alike = (from: TerminalNode, to: TerminalNode) =>
    (from.feedsSwitch && to.feedsSwitch) || (from.feedsOutlet && to.feedsOutlet);
  const same = pairUp(sources, targets, alike);
  return same.length > 0 ? same : pairUp(sources, targets, (from) => from.marked);
}

function pairUp(
  sources: readonly TerminalNode[],
  targets: readonly TerminalNode[],
  fits: (from: TerminalNode, to: TerminalNode) => boolean,
): readonly Correspondence[] {
  const free = new Set(targets);
  const pairs: Correspondence[] = [];
  for (const from of sources) {
    const to = [...free].find((one) => fits(from, one));
    if (to === undefined) continue;
    free.delete(to);
    pairs.push({ from, to });
  }
  return pairs;
}

/** `splitAtContacts`: LINE and LOAD of a ground-fault device are two points, as they are when it has tripped. */
function nodesOf(device: Device, splitAtContacts: boolean, other: Device): readonly TerminalNode[] {
  const type = getDeviceType(device.type);
  const terminals = terminalsOf(device);
  const joins = (when: PathWhen): boolean =>
    when === "always" ||
    (when === "hot-tab" && device.hotTab !== "removed") ||
    (when === "neutral-tab" && device.neutralTab !== "removed") ||
    (when === "reset" && !splitAtContacts);
  const groups = new Map<TerminalName, PlacedTerminal[]>(terminals.map((one) => [one.name, [one]]));
  for (const { a, b, when } of type.paths) {
    const one = groups.get(a as TerminalName);
    const two = groups.get(b as TerminalName);
    if (!joins(when) || one === undefined || two === undefined || one === two) continue;
    one.push(...two);
    for (const terminal of two) groups.set(terminal.name, one);
  }
  const feedsSwitch = ({ name }: TerminalType) => type.paths.some(({ a, when }) => a === name && HANDLE.has(when));
  const isSwitched = ({ name }: TerminalType) => type.paths.some(({ b, when }) => b === name && HANDLE.has(when));
  const nodes = [...new Set(groups.values())].map((group): TerminalNode => {
    const purpose = group[0]?.purpose ?? "signal";
    const hot = purpose === "hot" && !group.some(isSwitched);
    return {
      kind: hot || purpose === "common" ? "hot" : purpose === "hot" ? "switched" : purpose,
      terminals: group,
      load: splitAtContacts && group.every(({ group: side }) => side === "LOAD"),
      feedsSwitch: group.some(feedsSwitch),
      feedsOutlet: group.some((one) => !feedsSwitch(one)),
      marked: hot && group.some(({ label }) => !/^\d+$/.test(label)),
    };
  });
  // The conductor of a plain luminaire or fan belongs to that part of a fan-light; anything else to the light.
  const part = getDeviceType(other.type).family === "fan" ? "fan" : "light";
  const isPart = (node: TerminalNode) => Number(node.terminals.some(({ label }) => label === part));
  return nodes.sort((a, b) => isPart(b) - isPart(a));
}

import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import { type CableId, type DeviceId, type EndKey, parseEnd, type TerminalName } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import { boxNets } from "./box-nets.ts";
import { groundPort, guardPorts } from "./device-ports.ts";
import type { FitSide, ReceptacleNets } from "./fit-sides.ts";
import { hotKeysOf, type JointGroup, type Port } from "./joint-group.ts";
import { leastSizes } from "./least-sizes.ts";

/** The nets of LINE, LOAD and ground once a ground-fault device stands in the place of a receptacle. */
export function groupsOfFit(
  project: Project,
  section: Section,
  box: Box,
  old: Device,
  device: Device,
  own: ReceptacleNets,
  sides: readonly FitSide[],
  supply: { readonly hot: EndKey; readonly neutral: EndKey },
): readonly JointGroup[] {
  const guard = guardPorts(device);
  if (guard === undefined) throw new Error("A ground-fault receptacle has LINE and LOAD.");
  const { circuit, ground } = leastSizes(project, section, [supply.hot]);
  const hots = new Set(own.hot.flatMap(({ ends }) => ends));
  const onHot = new Set(own.hot.flatMap(({ terminals }) => terminals.map((one) => `${one.device}.${one.terminal}`)));
  const isMultiwire = own.neutral.some(({ ends }) => ends.some((end) => hasTwoHots(section, end)));
  const make = (side: "LINE" | "LOAD", role: "hot" | "neutral", port: Port): JointGroup => {
    const mine = sides.filter((one) => one.side === side);
    const isHot = (item: string): boolean => hots.has(item as EndKey) || onHot.has(item);
    const wanted = (item: string): boolean => isHot(item) === (role === "hot");
    const ends = mine.flatMap((one) => one.ends).filter(wanted);
    const ports = mine.flatMap(({ terminals }) => terminals.filter(wanted).map(portAt));
    return {
      name: `${role === "hot" ? "H" : "N"}${side === "LINE" ? "L" : "D"}`,
      role,
      ends: inCableOrder(section, ends, role === "hot" ? supply.hot : supply.neutral),
      ports: [...ports, port],
      colour: role === "hot" ? hotColour(section, supply.hot) : "white",
      ...(circuit !== undefined && { leastAwg: circuit }),
      ...(role === "neutral" && isMultiwire && { multiwire: true as const }),
    };
  };
  const groups = [make("LINE", "hot", guard.lineHot), make("LINE", "neutral", guard.lineNeutral)];
  if (sides.some(({ side }) => side === "LOAD"))
    groups.push(make("LOAD", "hot", guard.loadHot), make("LOAD", "neutral", guard.loadNeutral));
  const grounds = groundGroup(section, box, old, device, own, ground, supply.hot);
  return grounds === undefined ? groups : [...groups, grounds];
}

const portAt = (item: string): Port => {
  const dot = item.indexOf(".");
  return { kind: "terminal", device: item.slice(0, dot) as DeviceId, terminals: [item.slice(dot + 1) as TerminalName] };
};

/** The grounds that the receptacle is on, or where it had no screw, those of the box; none where no ground arrives. */
function groundGroup(
  section: Section,
  box: Box,
  old: Device,
  device: Device,
  { ground: own }: ReceptacleNets,
  leastAwg: JointGroup["leastAwg"],
  supply: EndKey,
): JointGroup | undefined {
  const isGround = (end: EndKey): boolean => section.roleOfEnd(end) === "ground";
  const nets = own.length > 0 ? own : [...new Set(boxNets(box).values())].filter(({ ends }) => ends.some(isGround));
  const port = groundPort(device);
  const ends = nets.flatMap((net) => net.ends);
  if (port === undefined || ends.length === 0) return undefined;
  const others = nets.flatMap(({ terminals }) => terminals.filter((one) => one.device !== old.id));
  return {
    name: "E",
    role: "ground",
    ends: inCableOrder(section, ends, supply),
    ports: [
      port,
      ...others.map((one): Port => ({ kind: "terminal", device: one.device, terminals: [one.terminal] })),
      ...(nets.some(({ bond }) => bond) ? [{ kind: "bond" } as const] : []),
    ],
    colour: "bare",
    ...(leastAwg !== undefined && { leastAwg }),
  };
}

/** The cable of an end; undefined for a jumper. */
export const cableOf = (end: EndKey): CableId | undefined => {
  const parsed = parseEnd(end);
  return parsed?.of === "cable" ? parsed.cable : undefined;
};

function hasTwoHots({ installation: { cables } }: Section, end: EndKey): boolean {
  const cable = cables[cableOf(end) ?? ("" as CableId)];
  return cable !== undefined && hotKeysOf(cable).length > 1;
}

function hotColour({ installation: { cables } }: Section, end: EndKey): JointGroup["colour"] {
  const parsed = parseEnd(end);
  const colour = parsed?.of === "cable" ? cables[parsed.cable]?.conductors[parsed.conductor]?.colour : undefined;
  return colour === undefined || colour === "white" || colour === "grey" ? "black" : colour;
}

/** The supply first, then as cables are listed. */
function inCableOrder(
  { installation: { cables } }: Section,
  ends: readonly EndKey[],
  supply: EndKey,
): readonly EndKey[] {
  const first = cableOf(supply);
  const rank = (end: EndKey): number => {
    const id = cableOf(end);
    return id === first ? -1 : (cables[id ?? ("" as CableId)]?.order ?? 0);
  };
  return [...ends].sort((p, q) => rank(p) - rank(q) || (p < q ? -1 : 1));
}

import type { Role } from "../../shared-model/answers/circuit.ts";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type ConductorKey, cableEnd, type EndKey, jumperEnd } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";

/**
 * A second, slow way to the same answers, for random drawings of one service panel: every switch setting of the whole
 * drawing is written out as a list of joined names and searched from each source. It shares no code with the solver.
 */
export interface BruteForce {
  roleOf(name: string): Role;
  isLive(name: string, open?: string): boolean;
  /** By a device whose sensor is taken out, in every setting in which the hot is live. */
  isProtected(hot: string, neutral: string, device: string): boolean;
  nameOfEnd(end: EndKey): string;
  /** Every setting of the switches: position by device. */
  readonly settings: readonly Positions[];
  /** Sources that reach a name in one setting, with the contacts of a device open. */
  sourcesAt(name: string, positions: Positions, open?: string): readonly string[];
}

type Joint = readonly [string, string];
export type Positions = ReadonlyMap<string, string>;

const LEGS = ["@busA", "@busB", "@busC"];
const SOURCES = [...LEGS, "@neutral", "@ground"];

export function bruteForce(installation: Installation): BruteForce {
  const boxes = Object.values(installation.enclosures);
  const devices = boxes.flatMap((box) => Object.values(box.devices));
  const settings = settingsOf(devices.filter((one) => getDeviceType(one.type).positions.length > 0 && !isBreaker(one)));
  const wires = wiresOf(installation);
  const reached = new Map<string, ReadonlyMap<string, ReadonlySet<string>>>();

  const reach = (positions: Positions, open = "", whole = false): ReadonlyMap<string, ReadonlySet<string>> => {
    const key = JSON.stringify([[...positions], open, whole]);
    let found = reached.get(key);
    if (found === undefined) {
      const joints = [
        ...wires,
        ...devices.flatMap((device) =>
          pathsOf(device, positions, open === device.id ? (whole ? "sensor" : "contacts") : undefined),
        ),
      ];
      found = new Map(SOURCES.map((source) => [source, search(source, joints)]));
      reached.set(key, found);
    }
    return found;
  };
  const at = (name: string, found: ReadonlyMap<string, ReadonlySet<string>>): readonly string[] =>
    SOURCES.includes(name) ? [name] : SOURCES.filter((source) => found.get(source)?.has(name) === true);
  const isHot = (names: readonly string[]): boolean => names.some((name) => LEGS.includes(name));

  return {
    nameOfEnd: (end) => nameOfEnd(installation, end),
    settings,
    sourcesAt: (name, positions, open) => at(name, reach(positions, open)),
    isLive: (name, open) => settings.some((positions) => isHot(at(name, reach(positions, open)))),
    roleOf: (name) => {
      const all = settings.map((positions) => at(name, reach(positions)));
      const some = new Set(all.flat());
      const kinds = [isHot([...some]), some.has("@neutral"), some.has("@ground")].filter(Boolean).length;
      if (kinds > 1 || all.some((names) => names.filter((one) => LEGS.includes(one)).length > 1)) return "conflict";
      if (kinds === 0) return "floating";
      if (isHot([...some])) return all.every(isHot) ? "ungrounded" : "switched";
      return some.has("@neutral") ? "grounded" : "ground";
    },
    isProtected: (hot, neutral, id) => {
      const device = devices.find((one) => one.id === id);
      const sensing = device === undefined ? undefined : getDeviceType(device.type).sensing;
      if (device === undefined || sensing?.class !== "personnel") return false;
      const line = (node: string): string => nameOfNode(device, node);
      const live = settings.filter((positions) => isHot(at(hot, reach(positions))));
      const holds = (positions: Positions): boolean => {
        const whole = reach(positions);
        const cut = reach(positions, id, true);
        const lineHot = line(sensing.line.hot[0] ?? "");
        const lineNeutral = line(sensing.line.neutral ?? "");
        return (
          at(hot, cut).length === 0 &&
          at(neutral, cut).length === 0 &&
          isHot(at(lineHot, cut)) &&
          at(lineNeutral, whole).includes("@neutral") &&
          at(lineNeutral, cut).includes("@neutral")
        );
      };
      return live.length > 0 && live.every(holds);
    },
  };
}

const isBreaker = (device: Device): boolean => getDeviceType(device.type).family === "breaker";

function settingsOf(switches: readonly Device[]): readonly Positions[] {
  let settings: readonly (readonly (readonly [string, string])[])[] = [[]];
  for (const device of switches) {
    const { positions } = getDeviceType(device.type);
    settings = settings.flatMap((one) => positions.map((position) => [...one, [device.id, position] as const]));
  }
  return settings.map((one) => new Map(one));
}

export function nameOfNode(device: Device, node: string): string {
  if (node.startsWith("@leg")) return `@bus${device.legs?.[Number(node.slice(4))] ?? "A"}`;
  const { family } = getDeviceType(device.type);
  if (family === "neutral-bar") return "@neutral";
  if (family === "ground-bar") return "@ground";
  return node.startsWith("@") ? node : `${device.id}.${node}`;
}

function placeName(enclosure: Enclosure, end: EndKey): string {
  const at = enclosure.places[end]?.at;
  if (at?.kind === "splice") return `splice ${at.splice}`;
  if (at?.kind === "bond") return `bond ${enclosure.id}`;
  const device = at?.kind === "terminal" ? enclosure.devices[at.device] : undefined;
  if (at?.kind === "terminal" && device !== undefined) return nameOfNode(device, at.terminal);
  return `end ${end}`;
}

function nameOfEnd({ enclosures }: Installation, end: EndKey): string {
  for (const enclosure of Object.values(enclosures)) if (end in enclosure.places) return placeName(enclosure, end);
  return `end ${end}`;
}

function wiresOf(installation: Installation): readonly Joint[] {
  const joints: Joint[] = [];
  const join = (a: EndKey, b: EndKey): unknown => joints.push([nameOfEnd(installation, a), nameOfEnd(installation, b)]);
  for (const { id, conductors } of Object.values(installation.cables))
    for (const key of Object.keys(conductors) as ConductorKey[]) join(cableEnd(id, key, "a"), cableEnd(id, key, "b"));
  for (const { jumpers } of Object.values(installation.enclosures))
    for (const { id } of Object.values(jumpers)) join(jumperEnd(id, "a"), jumperEnd(id, "b"));
  return joints;
}

function pathsOf(device: Device, positions: Positions, open: "contacts" | "sensor" | undefined): readonly Joint[] {
  const conducts = (when: string, sensed: boolean): boolean => {
    if (open === "sensor" && sensed) return false;
    if (open === "contacts" && (when === "reset" || (when === "breaker-on" && sensed))) return false;
    if (open === "contacts" && when === "face") return device.faceContact === "tied-to-load";
    if (when === "hot-tab") return device.hotTab !== "removed";
    if (when === "neutral-tab") return device.neutralTab !== "removed";
    if (["always", "reset", "face", "breaker-on"].includes(when)) return true;
    return positions.get(device.id) === when;
  };
  return getDeviceType(device.type)
    .paths.filter((path) => conducts(path.when, path.sensed === true))
    .map((path) => [nameOfNode(device, path.a), nameOfNode(device, path.b)]);
}

function search(source: string, joints: readonly Joint[]): ReadonlySet<string> {
  const found = new Set([source]);
  let before = 0;
  while (found.size !== before) {
    before = found.size;
    for (const [a, b] of joints) {
      if (found.has(a) && (a === source || !SOURCES.includes(a))) found.add(b);
      if (found.has(b) && (b === source || !SOURCES.includes(b))) found.add(a);
    }
  }
  return found;
}

import type { DeviceNode, DevicePath, DeviceType } from "../../catalog/device-type.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { busOf } from "../enclosure-graph.ts";
import { sensingClass } from "../protection.ts";
import { ASSUMED_LOAD_W, ELECTRONICS_OHM, RATED_V, SMALL_USER_OHM } from "./modelling-values.ts";

const wording = catalogue({
  powerUnknown: (name: Part, watts: Part) => `What ${name} uses is not known: ${watts} W assumed.`,
});

/** A resistance between two nodes of a device that uses something or leaks. */
export interface DeviceUse {
  readonly a: DeviceNode;
  readonly b: DeviceNode;
  readonly ohm: number;
  readonly kind: "load" | "electronics" | "leak";
  /** It cannot be switched off at the device. */
  readonly always: boolean;
}

/** Families whose paths through a load are what they are there for; in a switch, a load path is a pilot lamp or a timer's works. */
const USERS: ReadonlySet<DeviceType["family"]> = new Set(["luminaire", "fan", "alarm", "appliance"]);

/** It is there to use power, as against a switch with a pilot lamp. */
export const isUser = ({ type }: Device): boolean => {
  const known = findDeviceType(type);
  return known !== undefined && USERS.has(known.family);
};

/** What a hard-wired device itself puts between its terminals. A device of an unknown type puts nothing. */
export function usesOf(device: Device): { readonly uses: readonly DeviceUse[]; readonly assumption?: string } {
  const type = findDeviceType(device.type);
  if (type === undefined) return { uses: [] };
  const uses: DeviceUse[] = [];
  const paths = type.paths.filter(({ when }) => when === "load");
  const usesPower = isUser(device);
  const watts = device.loadW ?? type.defaults.loadW;
  const isKnown = device.loadOhm !== undefined || watts !== undefined || !usesPower || paths.length === 0;
  const total = paths.reduce((sum, path) => sum + weightOf(path), 0);
  for (const path of paths) {
    const share = weightOf(path) / total;
    const ohm = usesPower
      ? (device.loadOhm ?? ohmsOfWatts(watts ?? ASSUMED_LOAD_W, ratedV(type, path))) / share
      : (device.loadOhm ?? SMALL_USER_OHM);
    if (Number.isFinite(ohm)) uses.push({ a: path.a, b: path.b, ohm, kind: "load", always: !usesPower });
  }
  uses.push(...leakOf(device, type, paths[0]), ...electronicsOf(device, type));
  if (isKnown) return { uses };
  return { uses, assumption: wording.powerUnknown(device.name, ASSUMED_LOAD_W) };
}

/** What a hard-wired device takes at the voltage that it is made for, W. */
export function ratedWatts(device: Device): number {
  const type = findDeviceType(device.type);
  if (type === undefined) return 0;
  const loads = usesOf(device).uses.filter(({ kind }) => kind === "load");
  return loads.reduce((sum, { a, b, ohm }) => sum + ratedV(type, { a, b }) ** 2 / ohm, 0);
}

/** Infinity for 0 W: it uses nothing. */
export const ohmsOfWatts = (watts: number, volts: number): number => volts ** 2 / watts;

/** Paths of which no watts are told share evenly. */
const weightOf = ({ watts = 1 }: DevicePath): number => watts;

/** Watts of what hangs between two hots are stated for 240 V, also where the supply has 208 V. */
function ratedV({ terminals }: DeviceType, { a, b }: Pick<DevicePath, "a" | "b">): number {
  const hots = terminals.filter(({ name, purpose }) => purpose === "hot" && (name === a || name === b));
  return hots.length === 2 ? 2 * RATED_V : RATED_V;
}

function leakOf(device: Device, { terminals }: DeviceType, path: DevicePath | undefined): readonly DeviceUse[] {
  const milliamps = device.leakMa ?? 0;
  const ground = terminals.find(({ purpose }) => purpose === "ground");
  if (milliamps <= 0 || path === undefined || ground === undefined) return [];
  return [{ a: path.a, b: ground.name, ohm: RATED_V / (milliamps / 1000), kind: "leak", always: false }];
}

function electronicsOf(device: Device, type: DeviceType): readonly DeviceUse[] {
  const { sensing } = type;
  const [hot] = sensing?.line.hot ?? [];
  if (sensing?.line.neutral === undefined || hot === undefined || sensingClass(device, sensing) === "none") return [];
  const at = (node: DeviceNode): DeviceNode => busOf(device, type, node);
  return [{ a: at(hot), b: at(sensing.line.neutral), ohm: ELECTRONICS_OHM, kind: "electronics", always: true }];
}

import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { TerminalName } from "../model/ids.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { Port } from "./joint-group.ts";

/** A ground-fault device with LINE and LOAD terminals. */
export interface GuardPorts {
  readonly lineHot: Port;
  readonly lineNeutral: Port;
  readonly loadHot: Port;
  readonly loadNeutral: Port;
}

const at = (device: Device, ...terminals: readonly TerminalName[]): Port => ({
  kind: "terminal",
  device: device.id,
  terminals,
});

/** LINE and LOAD of a device that protects people; undefined for every other device. */
export function guardPorts(device: Device): GuardPorts | undefined {
  const { sensing, where } = getDeviceType(device.type);
  const [lineHot] = sensing?.line.hot ?? [];
  const [loadHot] = sensing?.load.hot ?? [];
  const lineNeutral = sensing?.line.neutral;
  const loadNeutral = sensing?.load.neutral;
  if (where !== "box" || lineHot === undefined || loadHot === undefined) return undefined;
  if (lineNeutral === undefined || loadNeutral === undefined) return undefined;
  const port = (node: string): Port => at(device, node as TerminalName);
  return {
    lineHot: port(lineHot),
    lineNeutral: port(lineNeutral),
    loadHot: port(loadHot),
    loadNeutral: port(loadNeutral),
  };
}

export const groundPort = (device: Device): Port | undefined => portOf(device, "ground");

/** All terminals of one purpose, as one point: of a duplex whose tab is whole either screw will do. */
export function portOf(device: Device, ...purposes: readonly string[]): Port | undefined {
  const names = terminalsOf(device)
    .filter(({ purpose, group }) => purposes.includes(purpose) && group !== "LOAD")
    .map(({ name }) => name);
  return names.length === 0 ? undefined : at(device, ...names);
}

/** What a switch takes in and gives out; undefined for what is none. */
export interface SwitchPorts {
  readonly kind: "plain" | "3-way" | "4-way" | "double-pole";
  readonly feed: Port | undefined;
  readonly out: readonly Port[];
  readonly neutral: Port | undefined;
  /** Its two screws are alike. */
  readonly alike: boolean;
  /** Pairs of traveller terminals. */
  readonly travellers: readonly (readonly [Port, Port])[];
  /** Feed and output of each pole of a double-pole switch. */
  readonly poles?: readonly (readonly [feed: Port, out: Port])[];
}

const DOUBLE_POLE = "switch-double-pole";

export function switchPorts(device: Device): SwitchPorts | undefined {
  const { positions, id } = getDeviceType(device.type);
  if (positions.length === 0) return undefined;
  const terminals = terminalsOf(device);
  const named = (...purposes: readonly string[]) => terminals.filter(({ purpose }) => purposes.includes(purpose));
  const travellers = named("traveller").map(({ name }) => at(device, name));
  const out = named("switched").map(({ name }) => at(device, name));
  const feeds = named("hot", "common").map(({ name }) => name);
  const [one, two, three, four] = travellers;
  if (one !== undefined && two !== undefined && three !== undefined && four !== undefined)
    return {
      kind: "4-way",
      feed: undefined,
      out: [],
      neutral: undefined,
      alike: false,
      travellers: [
        [one, two],
        [three, four],
      ],
    };
  if (one !== undefined && two !== undefined)
    return {
      kind: "3-way",
      feed: portOf(device, "common"),
      out: [],
      neutral: undefined,
      alike: false,
      travellers: [[one, two]],
    };
  if (out.length === 0 || feeds.length === 0) return undefined;
  if (id === DOUBLE_POLE)
    return {
      kind: "double-pole",
      feed: undefined,
      out: [],
      neutral: undefined,
      alike: false,
      travellers: [],
      poles: feeds.flatMap((name, pole) => {
        const leaves = out[pole];
        return leaves === undefined ? [] : [[at(device, name), leaves] as const];
      }),
    };
  if (feeds.length > 1 && device.hotTab === "removed") return undefined;
  return {
    kind: "plain",
    feed: at(device, ...feeds),
    out,
    neutral: portOf(device, "neutral"),
    alike: id === "switch-single-pole",
    travellers: [],
  };
}

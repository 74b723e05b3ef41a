import { getDeviceType } from "../../catalog/device-types.ts";
import { busOf } from "../enclosure-graph.ts";
import { sensingClass } from "../protection.ts";
import type { SensorCircuit } from "./circuit.ts";
import type { EnclosureNets, LocalSensor } from "./enclosure-nets.ts";

/**
 * A sensing device in the whole network: nets of its enclosure begin at node `base`, branches at `first`. Undefined for a
 * breaker that senses nothing.
 */
export function sensorCircuit(
  { device, summed, contacts }: LocalSensor,
  nets: EnclosureNets,
  base: number,
  first: number,
): SensorCircuit | undefined {
  const type = getDeviceType(device.type);
  const { sensing } = type;
  const kind = sensing === undefined ? "none" : sensingClass(device, sensing);
  if (sensing === undefined || kind === "none") return undefined;
  const reversal = device.reversal ?? type.defaults.reversal;
  const at = (node: string | undefined): number[] => {
    const net = node === undefined ? undefined : nets.netOfNode(device.id, busOf(device, type, node));
    return net === undefined ? [] : [base + net];
  };
  const [lineNeutral] = at(sensing.line.neutral);
  const [loadNeutral] = at(sensing.load.neutral);
  return {
    device: device.id,
    class: kind,
    ...(reversal !== undefined && { reversal }),
    // The catalogue gives paths that are summed from LINE to LOAD.
    summed: summed.map((branch) => ({ branch: first + branch, sign: 1 })),
    contacts: contacts.map((branch) => first + branch),
    lineHot: sensing.line.hot.flatMap(at),
    loadHot: sensing.load.hot.flatMap(at),
    loadTerminals: [...sensing.load.hot, ...(sensing.load.neutral === undefined ? [] : [sensing.load.neutral])],
    ...(lineNeutral !== undefined && { lineNeutral }),
    ...(loadNeutral !== undefined && { loadNeutral }),
  };
}

import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import type { Circuit } from "../../../shared-model/solver/circuit/circuit.ts";
import type { VoltReading } from "../../../shared-model/solver/circuit/instruments.ts";
import { type OutletReading, readOutlets } from "../../../shared-model/solver/circuit/readings.ts";
import { type SensorState, tripStates } from "../../../shared-model/solver/circuit/trip-states.ts";
import { deviceId } from "../../builders/ids.ts";

/** All outlets that are drawn as found. */
export const outletsIn = ({ asFound }: Project): readonly PlacedOutlet[] =>
  Object.values(asFound.enclosures).flatMap(({ devices }) => Object.values(devices).flatMap(outletsOf));

/** The first outlet of a device, by its name. */
export function outletAt(project: Project, name: string): PlacedOutlet {
  const found = outletsIn(project).find(({ device }) => device.id === deviceId(name));
  if (found === undefined) throw new Error(`${name} is no outlet.`);
  return found;
}

export function readOutlet(circuit: Circuit, outlet: PlacedOutlet): OutletReading {
  const [reading] = readOutlets(circuit, [outlet]);
  if (reading === undefined) throw new Error(`${outlet.name} is not in the circuit.`);
  return reading;
}

export function stateOf(circuit: Circuit, device: DeviceId): SensorState {
  const state = tripStates(circuit).devices.find((one) => one.device === device);
  if (state === undefined) throw new Error(`${device} senses nothing.`);
  return state;
}

/** Volts as a table states them; `about`: a floating reading in whole volts. */
export type Expected = number | { readonly about: number };

/** Readings that differ from what a table states: by more than 0.2 V, or in whether they float. */
export function differences(
  { hn, hg, ng }: OutletReading,
  expected: readonly Expected[],
  withinV = 0.2,
): readonly string[] {
  return [hn, hg, ng].flatMap((reading, index) => {
    const wanted = expected[index];
    if (reading === undefined || wanted === undefined) return [`no reading ${index}`];
    return isAsStated(reading, wanted, withinV) ? [] : [`${["HN", "HG", "NG"][index]} ${JSON.stringify(reading)}`];
  });
}

const isAsStated = ({ volts, floating }: VoltReading, wanted: Expected, withinV: number): boolean =>
  typeof wanted === "number"
    ? !floating && Math.abs(volts - wanted) <= withinV
    : floating && Math.abs(volts - wanted.about) <= WHOLE_V;

/** What floats is stated in whole volts: half a volt of rounding more. */
const WHOLE_V = 0.7;

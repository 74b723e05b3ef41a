import type { DeviceId } from "../../model/ids.ts";
import type { Phasors } from "../network/network.ts";
import type { Circuit, SensorCircuit } from "./circuit.ts";
import { throughMeters } from "./instruments.ts";
import { SUPPLY_V } from "./trip-limits.ts";
import { pairOf } from "./two-port.ts";

/** A circuit as it can be energised. */
export interface Energised {
  readonly circuit: Circuit;
  /** Ground-fault devices that are fed on LOAD, in the order in which power reaches them. */
  readonly reversed: readonly SensorCircuit[];
}

/**
 * Resets ground-fault devices in the order in which power reaches them, and leaves open those that are fed on LOAD and
 * are made to stay open or to trip then; devices of before 2003 close.
 */
export function energise(circuit: Circuit): Energised {
  const { setting } = circuit;
  const waiting = new Set(
    circuit.sensors.filter(({ device, reversal }) => reversal !== undefined && !setting.tripped.has(device)),
  );
  const reversed: SensorCircuit[] = [];
  const open = new Set(setting.tripped);
  const withOpen = (): Circuit => circuit.inSetting({ ...setting, tripped: new Set(open) });
  for (const { device } of waiting) open.add(device);
  while (waiting.size > 0) {
    const now = withOpen();
    const at = now.factor.operatingPoint();
    const reached = [...waiting].filter((sensor) => sidesFed(now, at, sensor) !== undefined);
    if (reached.length === 0) break;
    for (const sensor of reached) {
      waiting.delete(sensor);
      const side = sidesFed(now, at, sensor);
      if (side === "load") reversed.push(sensor);
      if (side === "line" || sensor.reversal === "legacy") open.delete(sensor.device);
    }
  }
  // What no power reaches is closed as it was set.
  for (const { device } of waiting) open.delete(device);
  return { circuit: sameItems(open, setting.tripped) ? circuit : withOpen(), reversed };
}

/** Which side of an open device brings power, on a low-impedance meter; both together are taken as LINE. */
function sidesFed(circuit: Circuit, at: Phasors, sensor: SensorCircuit): "line" | "load" | undefined {
  const { lineHot, lineNeutral, loadHot, loadNeutral } = sensor;
  const isFed = (hots: readonly number[], neutral: number | undefined): boolean =>
    Math.round(fedVolts(circuit, at, hots, neutral)) >= SUPPLY_V;
  if (isFed(lineHot, lineNeutral)) return "line";
  return isFed(loadHot, loadNeutral) ? "load" : undefined;
}

/** Most volts between hots and a neutral on a low-impedance meter; none without a neutral. */
export const fedVolts = (
  circuit: Circuit,
  at: Phasors,
  hots: readonly number[],
  neutral: number | undefined,
): number =>
  neutral === undefined
    ? 0
    : Math.max(0, ...hots.map((hot) => throughMeters(...pairOf(circuit, at, hot, neutral)).lowVolts));

const sameItems = (one: ReadonlySet<DeviceId>, other: ReadonlySet<DeviceId>): boolean =>
  one.size === other.size && [...one].every((item) => other.has(item));

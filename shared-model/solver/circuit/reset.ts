import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Circuit, SensorCircuit } from "./circuit.ts";
import { fedVolts } from "./reversed-supply.ts";
import { SUPPLY_V } from "./trip-limits.ts";
import { runTrips, type TripRun } from "./trips.ts";

const wording = catalogue({
  noReset: "It has no RESET.",
  isSet: "It is set: there is nothing to reset.",
  closesAndOpens: (why: Part) => `It closes and opens again. ${why}`,
  closes: "It closes.",
  closesWithoutPower: "It closes without power, and protects nothing until its electronics have some.",
  noPower: (volts: Part, needed: Part) =>
    `It has no power: ${volts} V at its LINE, and RESET needs ${needed} V to hold.`,
});

/** What RESET of an open ground-fault device does. */
export interface ResetDone {
  /** The device stays closed. */
  readonly holds: boolean;
  /** A sentence: why it does not hold, or that it closed. */
  readonly why: string;
  /** As it is then, with whatever opens after it; absent where the device cannot be closed at all. */
  readonly run?: TripRun;
}

/** Presses RESET of a device that is open in the setting of a circuit. */
export function pressReset(circuit: Circuit, device: DeviceId): ResetDone {
  const sensor = circuit.sensors.find((one) => one.device === device);
  if (sensor === undefined) return { holds: false, why: wording.noReset };
  const { setting } = circuit;
  if (!setting.tripped.has(device)) return { holds: true, why: wording.isSet };
  const tripped = new Set(setting.tripped);
  tripped.delete(device);
  const run = runTrips(circuit.inSetting({ ...setting, tripped }));
  const state = run.devices.find((one) => one.device === device);
  if (state?.reversed && run.energised.setting.tripped.has(device)) return { holds: false, why: state.why };
  const unpowered = whyNoReset(circuit, sensor);
  if (unpowered !== undefined) return { holds: false, why: unpowered };
  if (run.outcomes[0]?.circuit.setting.tripped.has(device))
    return { holds: false, why: wording.closesAndOpens(state?.why ?? "").trimEnd(), run };
  return { holds: true, why: state?.powered ? wording.closes : CLOSES_WITHOUT_POWER, run };
}

const CLOSES_WITHOUT_POWER = wording.closesWithoutPower;

/**
 * Why an open device would not close for want of power, as a sentence; undefined where power or its generation lets it.
 * Since 2006 a device tries its own trip at RESET, which takes power; before, RESET is a latch. From memory, as is that all
 * of a generation are alike; the handle of a breaker is a latch.
 */
export function whyNoReset(circuit: Circuit, { reversal, lineHot, lineNeutral }: SensorCircuit): string | undefined {
  if (reversal !== "deny" && reversal !== "deny-first") return undefined;
  const volts = fedVolts(circuit, circuit.factor.operatingPoint(), lineHot, lineNeutral);
  if (Math.round(volts) >= SUPPLY_V) return undefined;
  return wording.noPower(volts.toFixed(1), SUPPLY_V);
}

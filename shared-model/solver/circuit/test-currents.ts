import { findDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Added, Probe } from "./circuit.ts";
import { LEAK_TEST_OHM, TEST_OHM } from "./modelling-values.ts";

/** TEST of a ground-fault device held down: from LOAD hot to LINE neutral, past its sensor. None for other devices. */
export function ownTestOf({ id, type }: Device): Added | undefined {
  const sensing = findDeviceType(type)?.sensing;
  const [hot] = sensing?.load.hot ?? [];
  const neutral = sensing?.line.neutral;
  if (hot === undefined || neutral === undefined) return undefined;
  return { from: at(id, hot), to: at(id, neutral), ohm: TEST_OHM };
}

/** The button of a plug-in tester held down: from hot to ground. None at an outlet without ground contact. */
export function plugInTestAt({ device: { id }, hot, ground }: PlacedOutlet): Added | undefined {
  return ground === undefined ? undefined : { from: at(id, hot), to: at(id, ground), ohm: TEST_OHM };
}

/** A leak from a contact of an outlet to earth away from the house, of 6.3 mA at 120 V unless told. */
export function leakAt(
  outlet: PlacedOutlet,
  contact: "hot" | "neutral" | "ground" = "hot",
  ohm = LEAK_TEST_OHM,
): Added | undefined {
  const node = outlet[contact];
  return node === undefined ? undefined : { from: at(outlet.device.id, node), to: { kind: "earth" }, ohm };
}

const at = (device: Device["id"], node: string): Probe => ({ kind: "device", device, node });

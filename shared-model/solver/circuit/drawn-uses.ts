import { findLoadItem } from "../../catalog/load-items.ts";
import type { Device } from "../../model/device.ts";
import type { OutletKey } from "../../model/ids.ts";
import type { Load } from "../../model/load.ts";
import type { Installation } from "../../model/project.ts";
import { isUser, ratedWatts, usesOf } from "./device-uses.ts";
import { loadsOn } from "./loads-on.ts";
import { ASSUMED_LOAD_W, RATED_V } from "./modelling-values.ts";

/** Something that is drawn and uses power, with what the circuit takes it to use at its rated voltage. */
export interface DrawnUse {
  readonly name: string;
  readonly watts: number;
  /** Nobody said how much. */
  readonly assumed: boolean;
}

/** What is wired in at some outlets and what is plugged into them, in the order of their devices. */
export function usesOn(
  loads: Installation["loads"],
  outlets: ReadonlySet<OutletKey>,
  devices: readonly Device[],
): readonly DrawnUse[] {
  const plugged = loadsOn(loads);
  return devices.flatMap((device) => {
    const own = isUser(device) ? [wiredIn(device)] : [];
    const here = (plugged.get(device.id) ?? []).filter(({ plug }) => outlets.has(plug));
    return [...own, ...here.map(pluggedIn)];
  });
}

const wiredIn = (device: Device): DrawnUse => ({
  name: device.name,
  watts: ratedWatts(device),
  assumed: usesOf(device).assumption !== undefined,
});

function pluggedIn({ name, item, loadW, loadOhm }: Load): DrawnUse {
  const known = loadOhm === undefined ? (loadW ?? findLoadItem(item)?.loadW) : RATED_V ** 2 / loadOhm;
  return { name, watts: known ?? ASSUMED_LOAD_W, assumed: known === undefined };
}

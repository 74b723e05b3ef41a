import type { OutletDropAnswer } from "../../shared-model/answers/outlet-drop.ts";
import type { DeviceId } from "../../shared-model/model/ids.ts";
import type { StateName } from "../../shared-model/model/project.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskDrops = (state: StateName, device: DeviceId) => Promise<readonly OutletDropAnswer[] | undefined>;

let ask: AskDrops | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function tellDropsBy(asked: AskDrops): void {
  ask = asked;
}

/** Voltage drop at the outlets of a device, as the document stands. */
export const askDrops: AskDrops = async (state, device) => ask?.(state, device);

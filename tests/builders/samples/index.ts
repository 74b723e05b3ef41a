import type { Project } from "../../../shared-model/model/project.ts";
import { bathFanLight } from "./bath-fan-light.ts";
import { houseTwelveCircuits } from "./house-twelve-circuits.ts";
import { kitchenMultiwire } from "./kitchen-multiwire.ts";
import { laundryProposed } from "./laundry-proposed.ts";
import { threeWayStair } from "./three-way-stair.ts";
import { twoWireBedroom } from "./two-wire-bedroom.ts";
import { wrongOnPurpose } from "./wrong-on-purpose.ts";

/** Every sample that is drawn by commands, by its name in the list; each makes it anew. */
export const drawnSamples: Readonly<Record<string, () => Project>> = {
  "laundry-proposed": laundryProposed,
  "two-wire-bedroom": twoWireBedroom,
  "kitchen-multiwire": kitchenMultiwire,
  "bath-fan-light": bathFanLight,
  "three-way-stair": threeWayStair,
  "house-twelve-circuits": houseTwelveCircuits,
  "wrong-on-purpose": wrongOnPurpose,
};

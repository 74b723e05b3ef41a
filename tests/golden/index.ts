import type { Project } from "../../shared-model/model/project.ts";
import * as byPlaces from "./by-places.ts";
import * as dangers from "./dangers.ts";
import * as kitchenAndBath from "./kitchen-and-bath.ts";
import * as laundry from "./laundry-slips.ts";
import * as oldHouse from "./old-house.ts";
import * as outside from "./outside-and-below.ts";
import * as power from "./power.ts";
import * as roughIn from "./rough-in.ts";
import * as slips from "./slips-of-the-trade.ts";
import * as switching from "./switching.ts";

const kebab = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Every golden drawing by its name, which is that of its expectation; each makes it anew. */
export const goldenDrawings: ReadonlyMap<string, () => Project> = new Map(
  [laundry, kitchenAndBath, outside, oldHouse, switching, power, slips, roughIn, dangers, byPlaces].flatMap((file) =>
    Object.entries(file).map(([name, draw]) => [kebab(name), draw as () => Project] as const),
  ),
);

import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { StateName } from "../model/project.ts";
import type { RoomKind } from "../model/room.ts";
import { inOrder } from "../queries/in-order.ts";
import { fixBy } from "./fix-parts.ts";
import type { ProjectContext } from "./rule.ts";

const wording = catalogue({
  hangFromBuilding: (device: Part) => `Hang ${device} from the building, so that its box carries nothing`,
});

// What rules about a box and what hangs on it have in common.

/** Sets one fact of a box. */
export const setOnBox = <F extends keyof Box>(box: Box, state: StateName, field: F, value: Box[F]): CommandCall => ({
  command: "set-property",
  args: { state, target: { kind: "enclosure", id: box.id }, field, value },
});

/** The offer to hang something from the building and not from its box. */
export const holdByBuilding = (device: Device, state: StateName): Fix =>
  fixBy(wording.hangFromBuilding(device.name), "set-property", {
    state,
    target: { kind: "device", id: device.id },
    field: "heldByBuilding",
    value: true,
  });

/** Fans that hang by their box and turn there; an exhaust fan has a housing of its own. */
const HANGING_FANS: ReadonlySet<string> = new Set(["fan-light"]);

export const luminairesOn = (box: Box): readonly Device[] =>
  devicesOn(box, ({ type }) => getDeviceType(type).family === "luminaire");

export const fansOn = (box: Box): readonly Device[] => devicesOn(box, ({ type }) => HANGING_FANS.has(type));

/** Devices on a yoke, which screws to the box: not what hangs on it. */
export const yokesOn = (box: Box): readonly Device[] => devicesOn(box, ({ type }) => getDeviceType(type).yokes > 0);

/** In order; most boxes have one or none, and nothing to sort. */
function devicesOn(box: Box, is: (device: Device) => boolean): readonly Device[] {
  const found = Object.values(box.devices).filter(is);
  return found.length < 2 ? found : inOrder(box.devices).filter(is);
}

/** Kinds of place of the room that a box is in; none when it is in no room. */
export const kindsOfRoom = (project: ProjectContext["project"], { roomId }: Box): readonly RoomKind[] =>
  (roomId === undefined ? undefined : project.rooms[roomId])?.kinds ?? [];

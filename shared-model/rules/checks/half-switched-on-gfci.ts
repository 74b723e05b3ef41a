import { getDeviceType } from "../../catalog/device-types.ts";
import { templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import type { Room } from "../../model/room.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { sectionOf } from "../../solver/sections.ts";
import { LIT_BY_RECEPTACLE } from "../editions/circuit-values.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  lost: "{device} in {box} replaces a receptacle whose halves were separate. A ground-fault receptacle has no break-off tabs, so the half that was switched or on a circuit of its own is lost. Keep an ordinary duplex here behind a device before it, or give up the switched half knowingly.",
  onlySwitchedLight:
    "{device} in {box} replaces a receptacle whose halves were separate: a ground-fault receptacle has no break-off tabs, and no other switched lighting outlet of {room} is drawn. The room must keep one: an ordinary duplex here behind a device before it, or a luminaire with a wall switch.",
});

/** A ground-fault receptacle where a split one was. */
export const halfSwitchedOnGfci = defineRule({
  id: "half-switched-on-gfci",
  status: "draft",
  scope: "project",
  severity: "violation",
  summary:
    "A ground-fault receptacle must not take the place of a split one without its switched half being dealt with.",
  why: "The lamp in the corner that the switch at the door used to turn on is then on for good, or dead. A ground-fault receptacle has one pair of contacts for both faces: the red and the black of the old one go under one screw, or one of them is capped. In a bedroom or living room that half may be the only lighting outlet with a switch, and the code wants one. That it was split is recorded when the old one is replaced here, or entered in its details.",
  messages,
  sections: everyEdition("210.70(A)", "from-memory"),
  check({ project, installation, report }) {
    for (const enclosure of Object.values(installation.enclosures)) {
      for (const device of replacedIn(enclosure)) {
        const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
        const isOnly = room !== undefined && isHabitable(room) && !hasSwitchedLight(installation, room, device);
        const shown = { device: device.name, box: enclosure.name };
        report({
          subjects: [subject("device", device)],
          severity: isOnly ? "violation" : "caution",
          message: isOnly
            ? fillIn(messages.onlySwitchedLight, { ...shown, room: room.name })
            : fillIn(messages.lost, shown),
          ...(!isOnly && { section: { section: "110.3(B)", confidence: "unconfirmed" } }),
          ...basisOf(marksOn(device, "type", "wasSplit"), isOnly ? ["assumed"] : [], marksOn(enclosure, "roomId")),
        });
      }
    }
  },
});

const replaced = new WeakMap<Enclosure, readonly Device[]>();

/** Ground-fault receptacles where split ones were. Cached: the rule looks at the whole document after every edit. */
function replacedIn(enclosure: Enclosure): readonly Device[] {
  let found = replaced.get(enclosure);
  if (found === undefined) {
    found = Object.values(enclosure.devices).filter(
      ({ wasSplit, type }) => wasSplit === true && getDeviceType(type).family === "ground-fault-receptacle",
    );
    replaced.set(enclosure, found);
  }
  return found;
}

const isHabitable = ({ kinds }: Room): boolean => LIT_BY_RECEPTACLE.some((kind) => kinds.includes(kind));

/** A luminaire, or a receptacle other than the one that was changed, whose hot comes and goes with a switch. */
function hasSwitchedLight(installation: Installation, room: Room, changed: Device): boolean {
  return Object.values(installation.enclosures).some((enclosure) => {
    if (enclosure.roomId !== room.id) return false;
    const reach = sectionOf(installation, enclosure.id)?.reach();
    return Object.values(enclosure.devices).some(
      (device) =>
        device.id !== changed.id &&
        (getDeviceType(device.type).family === "luminaire" || outletsOf(device).some(({ receptacle }) => receptacle)) &&
        outletsOf(device).some(({ hot }) => {
          const spot = { device: device.id, node: hot };
          return reach?.isLive(spot) === true && !reach.isAlwaysLive(spot);
        }),
    );
  });
}

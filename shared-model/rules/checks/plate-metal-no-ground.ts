import type { DeviceFamily } from "../../catalog/device-type.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { inOrder } from "../../queries/in-order.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import { fixBy, fixIn } from "../fix-parts.ts";
import { hasGround, isGroundFaultFace } from "../no-ground.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  metal:
    "{switch} in {box} has a metal plate, no ground comes to the box, and no ground-fault device is before it. Fit a nonmetallic plate with nonmetallic screws, or protect it.",
});

const wording = catalogue({
  fit: (device: Part) => `Fit a nonmetallic plate and screws at ${device}`,
});

const SWITCHES: ReadonlySet<DeviceFamily> = new Set(["switch", "dimmer", "timer"]);

/** A plate of a material that is not recorded is not judged. */
export const plateMetalNoGround = defineRule({
  id: "plate-metal-no-ground",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A metal plate must be grounded; without a ground a switch has a plastic one, or ground-fault protection.",
  why: "The plate is screwed to the yoke, and what touches the yoke inside the box touches the hand that reaches for the switch. Where old cable brings no ground, a plastic plate with plastic screws takes the metal away. Where a ground comes to the box, joining it is the cure and another rule tells it.",
  messages,
  sections: everyEdition("404.9(B)", "from-memory"),
  check({ section, state, report }) {
    for (const enclosure of section.enclosures) {
      if (enclosure.kind !== "box") continue;
      for (const device of inOrder(enclosure.devices)) {
        const { family, outlets } = getDeviceType(device.type);
        const isSwitch = SWITCHES.has(family) || (family === "combination" && outlets.length === 0);
        const screw = terminalsOf(device).find(({ purpose }) => purpose === "ground");
        if (!isSwitch || device.metalPlate !== true || screw === undefined) continue;
        if (hasGround(section, enclosure, device, screw.name) || isBehindGroundFault(section, device)) continue;
        report({
          subjects: [subject("device", device)],
          message: fillIn(messages.metal, { switch: device.name, box: enclosure.name }),
          ...fixIn(state, () =>
            fixBy(wording.fit(device.name), "set-property", {
              state,
              target: { kind: "device", id: device.id },
              field: "metalPlate",
              value: false,
            }),
          ),
          ...basisOf(marksOn(device, "metalPlate")),
        });
      }
    }
  },
});

/** With the contacts of one device open nothing of the switch is live, and something was. */
function isBehindGroundFault(section: Section, device: Device): boolean {
  const spots = terminalsOf(device)
    .filter(({ purpose }) => purpose !== "ground" && purpose !== "neutral")
    .map(({ name }) => ({ device: device.id, node: name }));
  if (!spots.some((spot) => section.reach().isLive(spot))) return false;
  return section.sensingDevices().some(({ device: sensing }) => {
    if (!isGroundFault(sensing)) return false;
    const open = section.contactsOpen(sensing.id);
    return spots.every((spot) => !open.isLive(spot));
  });
}

/** A breaker says what it does by its function. */
const isGroundFault = (device: Device): boolean =>
  getDeviceType(device.type).family === "breaker" && device.function !== undefined
    ? device.function === "gfci" || device.function === "dual"
    : isGroundFaultFace(device);

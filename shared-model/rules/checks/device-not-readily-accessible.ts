import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  high: "TEST and RESET of {device} in {box} are {height} in. above the floor, {over} in. higher than they are reached without a ladder ({limit} in.). Put {device} lower, or a blank-face device with its buttons where they can be reached, before it.",
  behind:
    "{device} in {box} is behind an appliance: nobody presses TEST every month, and to reset it something must be moved. Put the device where it can be reached, before the outlet, and an ordinary receptacle here.",
});

const wording = catalogue({
  sections: (section: Part, article: Part) => `${section}, Article ${article}`,
});

/** By the height and the place that are recorded; without them nothing is said. */
export const deviceNotReadilyAccessible = defineRule({
  id: "device-not-readily-accessible",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "TEST and RESET of a ground-fault device must be reached without a ladder, a tool, or moving something.",
  why: "A device that cannot be reached is never tested, and after a trip it stays tripped. Commonly it is in the ceiling at the garage-door opener, behind the refrigerator, or under the tub behind a screwed panel. Height above the floor and whether it is behind an appliance are entered in its details; where neither is recorded the rule is silent, because it would ask at every receptacle. The height is that for switches: for these buttons the code only says readily accessible.",
  messages,
  sections: everyEdition(wording.sections("210.8", 100), "from-memory"),
  values: ["readilyReachedToIn"],
  check({ enclosure, edition, report }) {
    const limit = edition.values.readilyReachedToIn.value;
    for (const device of Object.values(enclosure.devices)) {
      const { reachHeightIn: height, behindAppliance } = device;
      if (height === undefined && behindAppliance !== true) continue;
      const { sensing, where } = getDeviceType(device.type);
      if (sensing === undefined || where === "panel") continue;
      const shown = { device: device.name, box: enclosure.name };
      if (behindAppliance === true)
        report({
          subjects: [subject("device", device)],
          message: fillIn(messages.behind, shown),
          ...basisOf(marksOn(device, "type", "behindAppliance")),
        });
      else if (height !== undefined && height > limit)
        report({
          subjects: [subject("device", device)],
          message: fillIn(messages.high, { ...shown, height, limit, over: Number((height - limit).toFixed(2)) }),
          data: { heightIn: height, limitIn: limit },
          ...basisOf(marksOn(device, "type", "reachHeightIn")),
        });
    }
  },
});

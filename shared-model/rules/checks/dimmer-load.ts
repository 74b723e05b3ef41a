import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inOrder } from "../../queries/in-order.ts";
import { RATED_V } from "../../solver/circuit/modelling-values.ts";
import { circuitUses, exceeds, figure, sumOf, throughDevice } from "../circuit-uses.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  load: "{dimmer} in {box} has {load} W on a rating of {rating} W{sections}: {uses}. Part the load, or fit a dimmer of {load} W or more.",
  led: "{dimmer} in {box} has {load} W of LED on an LED rating of {rating} W: {uses}. Part the load, or fit a dimmer for {load} W of LED.",
  ratingUnknown:
    "Cannot tell whether {dimmer} in {box} bears its {load} W: {sections} of it were taken off, which lowers its rating. Read the lower one off its instructions and record it.",
});

const wording = catalogue({
  ratingOf: (dimmer: Part) => `the rating of ${dimmer} as it is mounted`,
  sideSections: (count: number) => counted(count, "side section"),
  takenOff: (count: number) => ` (${counted(count, "side section")} taken off)`,
});

/** Its watts as mounted where they are recorded, else those of its amperes at 120 V. */
export const dimmerLoad = defineRule({
  id: "dimmer-load",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A dimmer must be rated for the watts that it dims.",
  why: "A dimmer sheds its losses as heat through its yoke. Two of them side by side need side sections broken off, and each section taken off lowers the rating: by how much stands in its instructions, not in a table. LED lamps count by the smaller LED rating, whatever the incandescent one allows; where no LED rating is recorded their watts are held against the other one only.",
  messages,
  sections: everyEdition("404.14(E)", "unconfirmed"),
  check({ section, installation, report, cannotTell }) {
    for (const enclosure of section.enclosures) {
      for (const device of inOrder(enclosure.devices)) {
        if (getDeviceType(device.type).family !== "dimmer") continue;
        const uses = throughDevice(circuitUses(section, installation), device.id);
        if (uses.length === 0) continue;
        const load = sumOf(uses, "watts");
        const leds = uses.filter(({ isLed }) => isLed);
        const removed = device.sideSectionsRemoved ?? 0;
        const subjects = [subject("device", device)];
        const shown = { dimmer: device.name, box: enclosure.name };
        const basis = basisOf(
          marksOn(device, "type", "ratingW", "ledRatingW", "ratingA", "sideSectionsRemoved"),
          uses.flatMap(({ marks }) => marks),
        );
        const ofLed = device.ledRatingW;
        if (ofLed !== undefined && exceeds(sumOf(leds, "watts"), ofLed)) {
          const watts = sumOf(leds, "watts");
          report({
            subjects,
            message: fillIn(messages.led, { ...shown, load: figure(watts), rating: ofLed, uses: namesOf(leds) }),
            data: { loadW: watts, ratingW: ofLed },
            ...basis,
          });
          continue;
        }
        const whole = device.ratingA === undefined ? undefined : device.ratingA * RATED_V;
        const rating = device.ratingW ?? whole;
        if (rating === undefined) continue;
        if (exceeds(load, rating)) {
          const sections = removed === 0 ? "" : wording.takenOff(removed);
          report({
            subjects,
            message: fillIn(messages.load, {
              ...shown,
              load: figure(load),
              rating: figure(rating),
              sections,
              uses: namesOf(uses),
            }),
            data: { loadW: load, ratingW: rating },
            ...basis,
          });
        } else if (removed > 0 && device.ratingW === undefined) {
          cannotTell({
            subjects,
            message: fillIn(messages.ratingUnknown, {
              ...shown,
              load: figure(load),
              sections: wording.sideSections(removed),
            }),
            missing: wording.ratingOf(device.name),
          });
        }
      }
    }
  },
});

const namesOf = (uses: readonly { readonly name: string }[]): string => listed(uses.map(({ name }) => name));

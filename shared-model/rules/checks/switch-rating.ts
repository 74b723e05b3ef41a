import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { StateName } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type CircuitUse, circuitUses, exceeds, figure, sumOf, throughDevice } from "../circuit-uses.ts";
import { SWITCH_RATINGS } from "../editions/product-values.ts";
import { fixBy } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  load: "{switch} in {box} is rated {rating} A and switches {load} A: {uses}. Fit one of {needed} A or more, or part the load.",
  motor:
    "{switch} in {box} is rated {rating} A and switches {load} A of motors: {uses}; {percent} % of its rating, {most} A, is the most for them. Fit one of {needed} A or more.",
  ratingUnknown:
    "Cannot tell whether {switch} in {box} bears the {load} A that it switches: its rating is not recorded. Read it off the yoke.",
});

const wording = catalogue({
  fit: (amps: Part, device: Part) => `Fit a switch of ${amps} A at ${device}`,
  ratingOf: (device: Part, box: Part) => `the rating of ${device} in ${box}`,
});

/** Rated figures of what hangs on the ways that lead through it; what has no known watts is left out. */
export const switchRating = defineRule({
  id: "switch-rating",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A switch must be rated for what it switches.",
  why: "Contacts that carry more than their rating heat and weld shut. Heaters and groups of receptacles are what is overlooked, and motors draw several times their current when they start, so that a general-use switch takes less of them. What has no watts recorded is left out of the sum; whether a switch is marked for tungsten lamps is not recorded either, so a sum of lamps is held against its rating as it is.",
  messages,
  sections: everyEdition("404.14", "from-memory"),
  values: ["motorLoadPercent"],
  check({ section, installation, edition, state, report, cannotTell }) {
    const percent = edition.values.motorLoadPercent.value;
    for (const enclosure of section.enclosures) {
      for (const device of inOrder(enclosure.devices)) {
        if (!isSwitch(device)) continue;
        const uses = throughDevice(circuitUses(section, installation), device.id);
        const motors = uses.filter(({ isMotor }) => isMotor);
        const load = sumOf(uses, "amps");
        if (uses.length === 0) continue;
        const subjects = [subject("device", device)];
        const shown = { switch: device.name, box: enclosure.name, uses: listed(uses.map(({ name }) => name)) };
        const rating = device.ratingA;
        if (rating === undefined) {
          const message = fillIn(messages.ratingUnknown, { ...shown, load: figure(load) });
          cannotTell({ subjects, message, missing: wording.ratingOf(device.name, enclosure.name) });
          continue;
        }
        const ofMotors = sumOf(motors, "amps");
        const most = (rating * percent) / 100;
        const isOver = exceeds(load, rating);
        if (!isOver && !exceeds(ofMotors, most)) continue;
        const needed = Math.max(load, (100 * ofMotors) / percent);
        const told = isOver ? load : ofMotors;
        report({
          subjects,
          message: fillIn(isOver ? messages.load : messages.motor, {
            ...shown,
            ...(!isOver && { uses: listed(motors.map(({ name }) => name)) }),
            rating,
            percent,
            most: figure(most),
            load: figure(told),
            needed: figure(needed),
          }),
          data: { ratingA: rating, loadA: Number(figure(told)) },
          offers: state === "proposed" ? ratedOffers(device, needed, state) : [],
          ...basisOf(marksOn(device, "type", "ratingA"), marksOf(uses)),
        });
      }
    }
  },
});

const marksOf = (uses: readonly CircuitUse[]) => uses.flatMap(({ marks }) => marks);

const isSwitch = ({ type }: Device): boolean => {
  const { family, outlets, positions } = getDeviceType(type);
  return (
    family === "switch" ||
    family === "timer" ||
    (family === "combination" && outlets.length === 0 && positions.length > 0)
  );
};

/** The least rating of the stock that bears it. */
function ratedOffers(device: Device, needed: number, state: StateName): readonly Fix[] {
  const rating = SWITCH_RATINGS.find((one) => !exceeds(needed, one));
  if (rating === undefined) return [];
  const target = { kind: "device", id: device.id };
  return [
    fixBy(wording.fit(rating, device.name), "set-property", {
      state,
      target,
      field: "ratingA",
      value: rating,
    }),
  ];
}

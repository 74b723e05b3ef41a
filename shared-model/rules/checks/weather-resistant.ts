import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inOrder } from "../../queries/in-order.ts";
import { roomKindsOf } from "../../queries/outlets-of.ts";
import { fixIn } from "../fix-parts.ts";
import { workAt } from "../new-work.ts";
import { whereWords } from "../place-words.ts";
import { isSmallReceptacle } from "../receptacle-kinds.ts";
import { faceWith, replaceOffer } from "../replace-offers.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, sectionIn, subject } from "../rule-parts.ts";

const messages = templates({
  plain:
    "{outlet} in {box} ({places}) is {what} and is not weather-resistant, which 15 and 20 A receptacles of damp and wet places must be. Fit a weather-resistant one.",
});

const wording = catalogue({
  inPlaceOf: (device: Part) => `in the place of ${device}`,
  isNew: "new",
});

/** New and replaced receptacles. One that is not recorded as weather-resistant is taken for a plain one: the stock says which are. */
export const weatherResistant = defineRule({
  id: "weather-resistant",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A new or replaced 15 or 20 A receptacle of a damp or wet place must be weather-resistant.",
  why: "A plain receptacle rusts and cracks outdoors, under a cover too, and then no longer grips or grounds. It is marked WR beside its TR. The kind of its room, or a zone of the device, says whether the place is outdoors or damp or wet; a box in no room is not judged here.",
  messages,
  sections: everyEdition("406.9", "from-memory"),
  values: ["weatherResistantPlaces"],
  check(context) {
    const { section, project, edition, state, report } = context;
    if (state === "as-found") return;
    for (const enclosure of section.enclosures) {
      for (const device of inOrder(enclosure.devices)) {
        if (!isSmallReceptacle(device) || device.weatherResistant === true) continue;
        const kinds = roomKindsOf(project, enclosure, device);
        const places = edition.values.weatherResistantPlaces.value.filter((place) => kinds.has(place));
        const work = workAt(context, enclosure, device);
        if (places.length === 0 || work.kind === "kept") continue;
        const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
        const type = faceWith(device, { weatherResistant: true });
        report({
          subjects: [subject("device", device)],
          message: fillIn(messages.plain, {
            outlet: device.name,
            box: enclosure.name,
            places: whereWords(room, places),
            what: work.kind === "new" ? wording.isNew : wording.inPlaceOf(work.device.name),
          }),
          ...(work.kind === "replaces" && { section: sectionIn(edition, "406.4(D)(6), 406.9", "from-memory") }),
          data: { places: places.join(" ") },
          ...fixIn(state, () =>
            type === undefined ? undefined : replaceOffer(section, enclosure, device, type, state),
          ),
          ...basisOf(marksOn(enclosure, "roomId"), marksOn(device, "type", "zones", "weatherResistant")),
        });
      }
    }
  },
});

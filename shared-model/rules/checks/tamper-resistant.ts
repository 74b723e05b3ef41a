import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { inOrder } from "../../queries/in-order.ts";
import { fixIn } from "../fix-parts.ts";
import { groundsOf } from "../grounds.ts";
import { workAt } from "../new-work.ts";
import { isSmallReceptacle, takesGroundPin } from "../receptacle-kinds.ts";
import { faceWith, replaceOffer } from "../replace-offers.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, sectionIn, subject } from "../rule-parts.ts";

const messages = templates({
  plain:
    "{outlet} in {box} is {what} and is not tamper-resistant, which 15 and 20 A receptacles of dwellings must be up to {height} in. above the floor. Fit a tamper-resistant one.",
  unknown:
    "Cannot tell whether {outlet} in {box}, which is {what}, is tamper-resistant: it is not recorded. Look for TR on its face, and record it.",
});

const wording = catalogue({
  inPlaceOf: (device: Part) => `in the place of ${device}`,
  isNew: "new",
  whetherResistant: (device: Part, box: Part) => `whether ${device} in ${box} is tamper-resistant`,
});

/** New and replaced receptacles; those that stay were made before. */
export const tamperResistant = defineRule({
  id: "tamper-resistant",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A new or replaced 15 or 20 A receptacle of a dwelling must be tamper-resistant.",
  why: "Shutters behind the slots keep a key or a hairpin in a child's hand from the hot. The same swap that brings ground-fault protection brings this. Free of it are receptacles more than 5 1/2 ft above the floor, those behind an appliance that is not easily moved, and a two-slot receptacle that is put back where there is no ground. A height that is not recorded counts as within reach.",
  messages,
  sections: everyEdition("406.12", "from-memory"),
  values: ["tamperResistantToIn"],
  check(context) {
    const { section, edition, state, report, cannotTell } = context;
    if (state === "as-found") return;
    const height = edition.values.tamperResistantToIn.value;
    for (const enclosure of section.enclosures) {
      for (const device of inOrder(enclosure.devices)) {
        if (!isSmallReceptacle(device) || device.tamperResistant === true) continue;
        const work = workAt(context, enclosure, device);
        if (work.kind === "kept" || isOutOfReach(device, height)) continue;
        const isUngrounded = enclosure.kind === "box" && !groundsOf(section, enclosure).present;
        if (work.kind === "replaces" && isUngrounded && !takesGroundPin(device)) continue;
        const subjects = [subject("device", device)];
        const what = work.kind === "new" ? wording.isNew : wording.inPlaceOf(work.device.name);
        const shown = { outlet: device.name, box: enclosure.name, what };
        if (device.tamperResistant === undefined) {
          const missing = wording.whetherResistant(device.name, enclosure.name);
          cannotTell({ subjects, message: fillIn(messages.unknown, shown), missing });
          continue;
        }
        const type = faceWith(device, { tamperResistant: true });
        report({
          subjects,
          message: fillIn(messages.plain, { ...shown, height }),
          ...(work.kind === "replaces" && { section: sectionIn(edition, "406.4(D)(5), 406.12", "from-memory") }),
          ...fixIn(state, () =>
            type === undefined ? undefined : replaceOffer(section, enclosure, device, type, state),
          ),
          ...basisOf(marksOn(device, "type", "tamperResistant", "reachHeightIn")),
        });
      }
    }
  },
});

const isOutOfReach = ({ reachHeightIn, behindAppliance }: Device, height: number): boolean =>
  behindAppliance === true || (reachHeightIn !== undefined && reachHeightIn > height);

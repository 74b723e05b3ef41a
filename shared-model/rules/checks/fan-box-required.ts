import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import type { StateName } from "../../model/project.ts";
import { fansOn, holdByBuilding, setOnBox } from "../box-parts.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { FAN_BOX_MARKINGS_LB } from "../editions/product-values.ts";
import { fixTogether } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  notListed:
    "{fan} hangs on {box}, which is not listed for fans: a turning fan works it loose and it comes down. Do not run it. Fit a box that is listed for fans, or hang the fan from the building.",
  tooHeavy:
    "{fan} weighs {weight} lb, and {box} may carry {most} lb of fan{marking}: it can come down. Do not run it. {cure}",
  listingUnknown:
    "Cannot tell whether {box} may carry {fan}: whether the box is listed for fans is not recorded. The marking is inside it. Where the building holds the fan, record that.",
});

const wording = catalogue({
  exchange: (box: Part) => `Exchange ${box} for a box of its volume that is listed for fans`,
  exchangeMarked: (box: Part, pounds: Part) =>
    `Exchange ${box} for a box of its volume that is listed for fans of ${pounds} lb`,
  fitBox: "Fit a box that is marked for its weight, or hang it from the building.",
  hang: "Hang it from the building.",
  markedForNoMore: ", as it is marked for no more",
  whetherListed: (box: Part) => `whether ${box} is listed for fans`,
});

/** Fans that hang and turn; an exhaust fan has a housing of its own, fastened to the framing. */
export const fanBoxRequired = defineRule({
  id: "fan-box-required",
  status: "stable",
  scope: "box",
  severity: "danger",
  summary: "A fan must hang on a box that is listed for fans and for its weight, or from the building.",
  why: "A fan shakes what it hangs on for as long as it runs. A box for luminaires holds the weight at first; its screws work out, plastic cracks, and the fan falls with its blades turning. Boxes for fans say so inside. Above 35 lb the box must be marked with the weight, and no box carries more than 70 lb: heavier fans hang from the framing.",
  messages,
  sections: everyEdition("314.27(C)", "from-memory", {
    2017: { section: "314.27(C)", confidence: "sourced" },
    2023: { section: "314.27(C)", confidence: "sourced" },
  }),
  values: ["fanUnmarkedLb", "fanOnBoxLb"],
  check({ enclosure, edition, state, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    for (const fan of fansOn(enclosure)) {
      if (fan.heldByBuilding === true) continue;
      const shown = { fan: fan.name, box: enclosure.name };
      const subjects = [subject("device", fan), subject("enclosure", enclosure)];
      if (enclosure.listedFor === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.listingUnknown, shown),
          missing: wording.whetherListed(enclosure.name),
          enterAt: subject("enclosure", enclosure),
        });
        continue;
      }
      const listed = enclosure.listedFor.includes("fan");
      const { weightLb: weight } = fan;
      const most = mostOn(enclosure, edition);
      if (listed && (weight === undefined || weight <= most)) continue;
      const box = boxFor(enclosure, fan, state, edition);
      report({
        subjects,
        message: listed
          ? fillIn(messages.tooHeavy, {
              ...shown,
              weight: weight ?? "",
              most,
              marking: enclosure.fanWeightLb === undefined ? wording.markedForNoMore : "",
              cure: box === undefined ? wording.hang : wording.fitBox,
            })
          : fillIn(messages.notListed, shown),
        data: { ...(weight !== undefined && { weightLb: weight }), ...(listed && { mostLb: most }) },
        ...basisOf(marksOn(enclosure, "listedFor", "fanWeightLb"), marksOn(fan, "type", "weightLb", "heldByBuilding")),
        offers: [...(box === undefined ? [] : [box]), holdByBuilding(fan, state)],
      });
    }
  },
});

/** As marked, and never more than any box may carry. */
const mostOn = ({ fanWeightLb }: Box, { values }: EditionData): number =>
  Math.min(fanWeightLb ?? values.fanUnmarkedLb.value, values.fanOnBoxLb.value);

/** Another box in its place, marked for the weight where it needs the marking; none when no box may carry the fan. */
function boxFor(box: Box, { weightLb = 0 }: Device, state: StateName, { values }: EditionData): Fix | undefined {
  const listedFor = [...new Set([...(box.listedFor ?? []), "luminaire", "fan"] as const)];
  const plain = setOnBox(box, state, "listedFor", listedFor);
  if (weightLb <= values.fanUnmarkedLb.value) return fixTogether(wording.exchange(box.name), [plain]);
  const marked = FAN_BOX_MARKINGS_LB.find((one) => one >= weightLb);
  if (marked === undefined || weightLb > values.fanOnBoxLb.value) return undefined;
  return fixTogether(wording.exchangeMarked(box.name, marked), [plain, setOnBox(box, state, "fanWeightLb", marked)]);
}

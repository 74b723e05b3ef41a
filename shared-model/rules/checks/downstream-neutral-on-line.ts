import { catalogue, templates } from "../../lib/catalogue.ts";
import type { EndKey } from "../../model/ids.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { CLASS_A_TRIPS, NOMINAL } from "../editions/product-values.ts";
import { fixIn } from "../fix-parts.ts";
import { bringFix } from "../line-load-fixes.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import {
  hotOf,
  type LineLoadDevice,
  lastCableStep,
  lineLoadDevices,
  marksOnWay,
  NOT_PROTECTED,
  neutralOf,
} from "../section-parts.ts";

const messages = templates({
  onLine:
    "{outlet} in {box}: its hot is behind {device}, its neutral is not. {device} trips with any load over about {watts} W. Move {end} to the LOAD neutral of {device}.",
});

const wording = catalogue({
  it: "it",
});

/** With the contacts open the outlet has lost its hot and kept its neutral, and LOAD N itself is dead. */
export const downstreamNeutralOnLine = defineRule({
  id: "downstream-neutral-on-line",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "An outlet whose hot is behind a ground-fault device must have its neutral behind the same device.",
  why: "The diagram looks complete: one black went to LOAD and its white stayed in the LINE bundle. The device then sees the whole load as a leak and trips as soon as anything is used. It is a nuisance where protection is a wish, and a violation where it is required, because the outlet is not protected.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  values: REQUIREMENT_VALUES,
  check({ section, project, edition, state, report }) {
    const watts = (CLASS_A_TRIPS / 1000) * (project.supply.nominalV ?? NOMINAL);
    for (const found of lineLoadDevices(section)) {
      if (found.loadGrounded || !found.lineLive) continue;
      for (const standing of section.outlets()) {
        if (!isSplitRound(found, standing)) continue;
        const { outlet, enclosure } = standing;
        const end = endToMove(section, found, standing);
        report({
          subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
          severity: requirementOf(project, standing, edition).required === true ? "violation" : "caution",
          message: fillIn(messages.onLine, {
            outlet: outlet.name,
            box: enclosure.name,
            device: found.device.name,
            watts: watts.toFixed(1),
            end: end === undefined ? wording.it : nameOfEnd(section.installation, found.enclosure, end),
          }),
          data: { tripsAboveW: Number(watts.toFixed(2)), device: found.device.name },
          ...basisOf(
            marksOn(outlet.device, "type"),
            marksOnWay(section, section.wayFrom("grounded", neutralOf(standing), found.device.id)),
          ),
          ...fixIn(state, () => end && bringFix(section, found, end, "LOAD", "neutral", state)),
          hides: NOT_PROTECTED.map((rule) => ({ rule, subjects: [outlet.key] })),
        });
      }
    }
  },
});

/** The face of the device itself loses both with its contacts. */
const isSplitRound = ({ open }: LineLoadDevice, standing: OutletStanding): boolean =>
  standing.live && !open.isLive(hotOf(standing)) && open.isGrounded(neutralOf(standing));

/** The end by which the neutral leaves the box of the device for the outlet; undefined when it comes another way. */
function endToMove(
  section: Section,
  { device, enclosure }: LineLoadDevice,
  standing: OutletStanding,
): EndKey | undefined {
  const way = section.wayFrom("grounded", neutralOf(standing), device.id);
  return lastCableStep(way, "fromEnclosure", enclosure.id)?.from;
}

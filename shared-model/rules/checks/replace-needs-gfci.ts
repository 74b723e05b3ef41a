import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import { workAt } from "../new-work.ts";
import { whereWords } from "../place-words.ts";
import { REQUIREMENT_VALUES, requirementOf } from "../required-protection.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, marksOn, sectionIn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { isPolaritySwapped, neutralOf } from "../section-parts.ts";

const messages = templates({
  open: "{outlet} in {box} takes the place of {old}, and today {places} needs ground-fault protection: the new receptacle must have it, by whatever route. {option}",
});

const wording = catalogue({
  fitOrBefore: (outlet: Part) => `Fit a ground-fault receptacle at ${outlet}, or put a device before it.`,
  nearest: (fix: Part) => `Nearest: ${fix}.`,
});

/** What is not live, not certain or miswired is told by the rules for that. */
export const replaceNeedsGfci = defineRule({
  id: "replace-needs-gfci",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle that is replaced where protection is asked for today must get it.",
  why: "Like for like is not enough: the old receptacle stood outside today's list by its age alone, and its successor does not. Any route will do: a ground-fault receptacle in its place, one before it, or a breaker. Receptacles that nobody touches are not asked for it by this rule. From 2020 on there is a way out where protection is impracticable, with other means and labels; it is not held: judge it by hand.",
  messages,
  sections: everyJudgedEdition("406.4(D)(3)", "sourced"),
  values: REQUIREMENT_VALUES,
  check(context) {
    const { section, project, installation, edition, state, report } = context;
    if (state === "as-found") return;
    for (const { standing, verdict } of sectionProof(section).outlets) {
      const { outlet, enclosure } = standing;
      if (verdict !== "none" || !outlet.receptacle) continue;
      const work = workAt(context, enclosure, outlet.device);
      if (work.kind !== "replaces") continue;
      const need = requirementOf(project, standing, edition);
      if (need.required !== true) continue;
      if (!section.reach().isGrounded(neutralOf(standing)) || isPolaritySwapped(section, standing)) continue;
      const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
      const offers = protectionOffers(section, { project, installation }, standing, state);
      const [first] = offers;
      report({
        subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
        message: fillIn(messages.open, {
          outlet: outlet.name,
          box: enclosure.name,
          old: work.device.name,
          places: whereWords(room, need.places),
          option: first === undefined ? wording.fitOrBefore(outlet.name) : wording.nearest(first.title),
        }),
        section: sectionIn(edition, "406.4(D)(3)", "sourced"),
        data: { places: need.places.join(" ") },
        hides: [{ rule: "outlet-not-protected", subjects: [outlet.key] }],
        offers,
        ...basisOf(marksOn(enclosure, "roomId"), marksOn(outlet.device, "zones")),
      });
    }
  },
});

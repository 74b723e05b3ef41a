import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { colourConsequences, crossingWords, exchangeFix } from "../crossed-conductors.ts";
import { fixIn } from "../fix-parts.ts";
import { causeAt, type OfCause, oncePerCause } from "../one-cause.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import {
  cableLeadingOutside,
  hotOf,
  isPolaritySwapped,
  LeadingOutside,
  marksOnWay,
  neutralOf,
} from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  swapped:
    "{outlet} in {box}: hot and neutral are exchanged, so that what is plugged in stays live when it is switched off. {place} Exchange the two conductors there.",
  outside:
    "Cannot tell the polarity of {outlets}: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
});

const wording = catalogue({
  polarityOf: (outlets: Part) => `the polarity of ${outlets}`,
});

/** Hot slot on a grounded conductor and neutral slot on an ungrounded one. Colours never enter it. */
export const polaritySwapped = defineRule({
  id: "polarity-swapped",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The narrow slot of a receptacle must be the hot one, the wide slot the neutral.",
  why: "With the two exchanged, switches in what is plugged in open the wrong conductor and the screw shell of a lamp is live. A second exchange further on hides the first from a tester at the last outlet, so look for the first place where the two cross.",
  messages,
  sections: everyEdition("200.10(B), 200.11", "from-memory"),
  check({ section, installation, state, report, cannotTell }) {
    const outside = new LeadingOutside();
    const found: OfCause[] = [];
    for (const standing of section.outlets()) {
      if (!standing.outlet.receptacle) continue;
      const { outlet, enclosure } = standing;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name };
      if (isPolaritySwapped(section, standing)) {
        const report = {
          subjects,
          message: fillIn(messages.swapped, { ...shown, place: crossingWords(section, standing) }),
          ...basisOf(
            marksOn(outlet.device, "type"),
            marksOnWay(section, section.wayFrom("ungrounded", neutralOf(standing))),
          ),
          ...fixIn(state, () => exchangeFix(section, standing, state)),
          hides: [
            { rule: "outlet-not-protected", subjects: [outlet.key] },
            { rule: "wish-not-protected", subjects: [outlet.key] },
            ...colourConsequences(section, standing),
          ],
        };
        const cause = causeAt(section.wherePolarityCrosses(outlet.key));
        report.hides.push({ rule: "shell-hot", subjects: shellsOf(section, cause) });
        found.push({ cause, report });
        continue;
      }
      const cable = isUnreached(section, standing) ? cableLeadingOutside(section, hotOf(standing)) : undefined;
      if (cable !== undefined) outside.add(cable, outlet.name);
    }
    for (const one of oncePerCause("polarity-swapped", found)) report(one);
    outside.ask(messages.outside, cannotTell, (outlets) =>
      supplyNotDrawn(section, installation, wording.polarityOf(outlets)),
    );
  },
});

/** What is hard-wired and exchanged at the same place. */
const shellsOf = (section: Section, cause: string | undefined): readonly string[] =>
  cause === undefined
    ? []
    : section
        .outlets()
        .filter(({ outlet }) => !outlet.receptacle && causeAt(section.wherePolarityCrosses(outlet.key)) === cause)
        .map(({ outlet }) => outlet.key);

/** Neither slot is reached by any source that is drawn. */
function isUnreached(section: Section, standing: OutletStanding): boolean {
  const reach = section.reach();
  return [hotOf(standing), neutralOf(standing)].every((spot) => !reach.isLive(spot) && !reach.isGrounded(spot));
}

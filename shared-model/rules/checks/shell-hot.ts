import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { colourConsequences, crossingWords, exchangeFix } from "../crossed-conductors.ts";
import { fixIn } from "../fix-parts.ts";
import { causeAt, type OfCause, oncePerCause } from "../one-cause.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { hotOf, isPolaritySwapped, marksOnWay, neutralOf } from "../section-parts.ts";

const messages = templates({
  shell:
    "{outlet} in {box}: the screw shell is live{when}, and the contact at its bottom is on the neutral. Whoever turns a lamp in touches the shell. {place} Exchange the two conductors there.",
  noNeutral:
    "{outlet} in {box}: the screw shell is live{when}, and no neutral comes to it. Bring the neutral to the shell and the switched hot to the contact at its bottom.",
});

const wording = catalogue({
  whenOn: " when it is switched on",
});

/** Luminaires alone: what is plugged into a receptacle is a matter of its polarity. Colours never enter it. */
export const shellHot = defineRule({
  id: "shell-hot",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The screw shell of a lampholder must be on the neutral.",
  why: "The shell can be touched while a lamp is turned in or out, the contact at its bottom hardly. With the two exchanged the lamp works as well as ever, so nobody notices. Commonly the white of a switch loop was taken for a neutral, or the two leads were exchanged at the canopy.",
  messages,
  sections: everyEdition("200.10(C), 410.90", "from-memory"),
  check({ section, state, report }) {
    const found: OfCause[] = [];
    for (const standing of section.outlets()) {
      if (!hasShell(standing)) continue;
      const neutral = neutralOf(standing);
      const reach = section.reach();
      const isExchanged = isPolaritySwapped(section, standing);
      if (!isExchanged && !isLiveAlone(section, standing)) continue;
      const { outlet, enclosure } = standing;
      const report = {
        subjects: [subject("outlet", { id: outlet.key, name: outlet.name })],
        message: fillIn(isExchanged ? messages.shell : messages.noNeutral, {
          outlet: outlet.name,
          box: enclosure.name,
          when: reach.isAlwaysLive(neutral) ? "" : wording.whenOn,
          place: isExchanged ? crossingWords(section, standing) : "",
        }),
        ...basisOf(marksOn(outlet.device, "type"), marksOnWay(section, section.wayFrom("ungrounded", neutral))),
        ...fixIn(state, () => (isExchanged ? exchangeFix(section, standing, state) : undefined)),
        hides: [
          { rule: "outlet-not-protected", subjects: [outlet.key] },
          { rule: "wish-not-protected", subjects: [outlet.key] },
          ...colourConsequences(section, standing),
        ],
      };
      found.push({ cause: isExchanged ? causeAt(section.wherePolarityCrosses(outlet.key)) : undefined, report });
    }
    for (const one of oncePerCause("shell-hot", found)) report(one);
  },
});

/** An LED luminaire may have no lampholder; a fan has one at its light alone. */
function hasShell({ outlet }: OutletStanding): boolean {
  const { family, id } = getDeviceType(outlet.device.type);
  return (family === "luminaire" && id !== "luminaire-led-9") || outlet.hot === "H_LIGHT";
}

/** Live, with nothing on the hot side to light it by: where both sides are live it has no neutral, which is told as that. */
function isLiveAlone(section: Section, standing: OutletStanding): boolean {
  const reach = section.reach();
  const neutral = neutralOf(standing);
  return reach.isLive(neutral) && !standing.live && !reach.isGrounded(neutral) && !reach.isGrounded(hotOf(standing));
}

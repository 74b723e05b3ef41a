import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { EnclosureId, EndKey } from "../../model/ids.ts";
import { findEndFacts } from "../../queries/end-facts.ts";
import { throughLoads } from "../../solver/circuit/through-loads.ts";
import type { Section, Spot } from "../../solver/section.ts";
import { causeAt, type OfCause, oncePerCause } from "../one-cause.ts";
import { marksAtStop, stopWords } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { anyOf, basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { cableLeadingOutside, LeadingOutside, needsNeutral, neutralOf } from "../section-parts.ts";

const messages = templates({
  open: "{outlet} in {box} is live and has no neutral: with {something} switched on, every contact of it can read live{legs}. {place} Find the break and join the neutral.",
  onGround:
    "{outlet} in {box} is live and has no neutral: its neutral is on the equipment ground, which carries the current instead and makes metal parts live. Bring the neutral of the circuit.",
  onHot:
    "{outlet} in {box} is live and has no neutral: its neutral is on another hot conductor, which can put twice the voltage on what is plugged in. Bring the neutral of the circuit.",
  outside:
    "Cannot tell whether {outlets} have a neutral: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
});

const wording = catalogue({
  betweenLegs: ", and between two legs what is plugged in can get up to twice its voltage",
  something: "something",
});

/** An outlet that is live and whose neutral reaches no grounded source, also when a load alone reaches it. */
export const openNeutral = defineRule({
  id: "open-neutral",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Every live outlet must have its neutral.",
  why: "An outlet without a neutral looks dead and is not: as soon as something is switched on, its open neutral is at full voltage. A tester names it wrongly. On a circuit of two legs an open neutral puts up to twice the voltage on what is connected. The break is commonly a push-in contact or a joint in the box before; all outlets behind one break are told by the first of them.",
  messages,
  sections: everyEdition("300.13", "from-memory"),
  check({ section, report, cannotTell }) {
    const reach = section.reach();
    const outside = new LeadingOutside();
    const found: OfCause[] = [];
    const told = new Set<string>();
    for (const standing of section.outlets()) {
      const { outlet, enclosure, live } = standing;
      const neutral = neutralOf(standing);
      if (!live || !needsNeutral(standing) || reach.isGrounded(neutral)) continue;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name };
      const cable = cableLeadingOutside(section, neutral);
      if (cable !== undefined) {
        outside.add(cable, outlet.name);
        continue;
      }
      const place = section.whereNeutralStops(outlet.key);
      const where = stopWords(section, place, enclosure.id);
      if (where === "being-surveyed") continue;
      const kind = reach.isLive(neutral) ? "onHot" : reach.isOnGround(neutral) ? "onGround" : "open";
      const cause = kind === "open" ? causeAt(place) : undefined;
      // The boxes of one break are the same for all outlets behind it.
      const boxes = cause === undefined || told.has(cause) ? [] : switchBoxesBehind(section, neutral);
      if (cause !== undefined) told.add(cause);
      const report = {
        subjects,
        message: fillIn(messages[kind], {
          ...shown,
          ...(kind === "open" && throughWords(section, neutral)),
          place: where,
        }),
        ...basisOf(marksOn(outlet.device, "type"), marksAtStop(section, place)),
        hides: [
          ...["outlet-not-protected", "wish-not-protected"].map((rule) => ({ rule, subjects: [outlet.key] })),
          { rule: "capped-neutral-forgotten", subjects: place?.ends ?? [] },
          { rule: "no-neutral-at-switch", subjects: boxes },
        ],
      };
      found.push({ cause, report });
    }
    for (const one of oncePerCause("open-neutral", found)) report(one);
    outside.ask(messages.outside, cannotTell);
  },
});

/** Boxes with a switch in which the neutral that is cut lies, joined or capped. */
function switchBoxesBehind(section: Section, neutral: Spot): readonly EnclosureId[] {
  const reach = section.reach();
  return section.enclosures
    .filter(({ devices }) => Object.values(devices).some(({ type }) => getDeviceType(type).positions.length > 0))
    .filter((box) =>
      (Object.keys(box.places) as EndKey[]).some(
        (end) => findEndFacts(section.installation, box, end)?.grounding === false && reach.areJoined({ end }, neutral),
      ),
    )
    .map(({ id }) => id);
}

/** By what the open neutral becomes live, as drawn, and whether two legs come together there. */
function throughWords(section: Section, neutral: Spot): { readonly something: string; readonly legs: string } {
  const { names, legsMeet } = throughLoads(section, neutral);
  return {
    something: names.length === 0 ? wording.something : anyOf(names),
    legs: legsMeet ? wording.betweenLegs : "",
  };
}

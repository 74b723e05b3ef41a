import type { Fix } from "../../answers/finding.ts";
import type { StateName } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import type { OutletStanding, Section, WrongPlace } from "../../solver/section.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { isCure } from "../fix-trial.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import {
  cableLeadingOutside,
  hotOf,
  isPolaritySwapped,
  LeadingOutside,
  marksOnWay,
  neutralOf,
} from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = {
  swapped:
    "{outlet} in {box}: hot and neutral are exchanged, so that what is plugged in stays live when it is switched off. {place} Exchange the two conductors there.",
  outside:
    "Cannot tell the polarity of {outlets}: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
};

/** Hot slot on a grounded conductor and neutral slot on an ungrounded one. Colours never enter it. */
export const polaritySwapped = defineRule({
  id: "polarity-swapped",
  status: "draft",
  scope: "section",
  severity: "danger",
  summary: "The narrow slot of a receptacle must be the hot one, the wide slot the neutral.",
  why: "With the two exchanged, switches in what is plugged in open the wrong conductor and the screw shell of a lamp is live. A second exchange further on hides the first from a tester at the last outlet, so look for the first place where the two cross.",
  messages,
  sections: everyEdition("200.10(B), 200.11", "from-memory"),
  check({ section, installation, state, report, cannotTell }) {
    const outside = new LeadingOutside();
    for (const standing of section.outlets()) {
      if (!standing.outlet.receptacle) continue;
      const { outlet, enclosure } = standing;
      const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
      const shown = { outlet: outlet.name, box: enclosure.name };
      if (isPolaritySwapped(section, standing)) {
        report({
          subjects,
          message: fillIn(messages.swapped, { ...shown, place: placeWords(section, standing) }),
          ...basisOf(
            marksOn(outlet.device, "type"),
            marksOnWay(section, section.wayFrom("ungrounded", neutralOf(standing))),
          ),
          ...fixIn(state, () => exchangeAt(section, standing, state)),
          hides: [
            { rule: "outlet-not-protected", subjects: [outlet.key] },
            { rule: "wish-not-protected", subjects: [outlet.key] },
          ],
        });
        continue;
      }
      const cable = isUnreached(section, standing) ? cableLeadingOutside(section, hotOf(standing)) : undefined;
      if (cable !== undefined) outside.add(cable, outlet.name);
    }
    outside.ask(messages.outside, cannotTell, (outlets) =>
      supplyNotDrawn(section, installation, `the polarity of ${outlets}`),
    );
  },
});

/** Neither slot is reached by any source that is drawn. */
function isUnreached(section: Section, standing: OutletStanding): boolean {
  const reach = section.reach();
  return [hotOf(standing), neutralOf(standing)].every((spot) => !reach.isLive(spot) && !reach.isGrounded(spot));
}

function placeWords(section: Section, { outlet }: OutletStanding): string {
  const place: WrongPlace | undefined = section.wherePolarityCrosses(outlet.key);
  const enclosure = place === undefined ? undefined : section.installation.enclosures[place.enclosure];
  if (place === undefined || enclosure === undefined) return "Where they cross is not found.";
  const device = place.device === undefined ? undefined : enclosure.devices[place.device]?.name;
  const ends = place.ends.map((end) => nameOfEnd(section.installation, enclosure, end));
  const at = ends.length > 0 ? listed(ends) : device;
  return `They first cross in ${enclosure.name}${at === undefined ? "" : ` at ${at}`}.`;
}

/** Where the two conductors cross on the terminals of one device, each takes the place of the other. */
function exchangeAt(section: Section, { outlet }: OutletStanding, state: StateName): Fix | undefined {
  const place = section.wherePolarityCrosses(outlet.key);
  const enclosure = place === undefined ? undefined : section.installation.enclosures[place.enclosure];
  const [one, other, ...more] = place?.ends ?? [];
  if (enclosure === undefined || one === undefined || other === undefined || more.length > 0) return undefined;
  const atOne = enclosure.places[one]?.at;
  const atOther = enclosure.places[other]?.at;
  if (atOne?.kind !== "terminal" || atOther?.kind !== "terminal" || atOne.device !== atOther.device) return undefined;
  const name = (end: typeof one): string => nameOfEnd(section.installation, enclosure, end);
  const device = enclosure.devices[atOne.device]?.name ?? atOne.device;
  const land = (end: typeof one, at: typeof atOne) => ({
    command: "land-end",
    args: { state, enclosure: enclosure.id, end, at },
  });
  const calls = [land(one, atOther), land(other, atOne)];
  const fix = fixTogether(`Exchange ${name(one)} and ${name(other)} at ${device}`, calls);
  return isCure(section, fix) ? fix : undefined;
}

import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { OutletKey } from "../../model/ids.ts";
import type { Section } from "../../solver/section.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, sectionIn, subject } from "../rule-parts.ts";
import { intoHotOffers } from "../section-offers.ts";
import { marksOnWay, neutralOf } from "../section-parts.ts";

const messages = templates({
  inNeutral:
    "{device} in {box} opens the neutral of {outlets}: switched off, {left} stay live. Put it into the hot, and splice the neutral through.",
});

const wording = catalogue({
  sections: (section: Part, several: Part) => `${section}; ${several} for 3-way and 4-way`,
  wires: (count: number) => (count > 1 ? "their wires" : "its wires"),
});

/** Judged by what a handle does: an outlet that keeps its hot and loses its neutral. A two-pole switch opens both. */
export const switchInNeutral = defineRule({
  id: "switch-in-neutral",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "A switch must open the hot, never the neutral alone.",
  why: "The lamp goes out and everything seems right, but its contacts and the wires to it stay live: whoever changes the lamp trusts the switch. Old three-way circuits that switch hot and neutral at the two ends do the same in half of their positions.",
  messages,
  sections: everyEdition(wording.sections("404.2(B)", "404.2(A)"), "sourced"),
  check({ section, edition, state, report }) {
    for (const { device: id, outlets } of section.switchesInNeutral()) {
      const home = section.enclosureOf(id);
      const enclosure = home === undefined ? undefined : section.installation.enclosures[home];
      const device = enclosure?.devices[id];
      if (enclosure === undefined || device === undefined) continue;
      const names = outlets.map((key) => nameOf(section, key));
      const several = getDeviceType(device.type).positions[0] !== "on";
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.inNeutral, {
          device: device.name,
          box: enclosure.name,
          outlets: listed(names),
          left: listed([...names, wording.wires(outlets.length)]),
        }),
        data: { outlets: outlets.length },
        section: sectionIn(edition, several ? "404.2(A)" : "404.2(B)", "sourced"),
        ...(state === "proposed" && { offers: intoHotOffers(section, enclosure, device, state) }),
        ...basisOf(marksOn(device, "type"), marksToFirst(section, outlets)),
        // Where two such switches choose between hot and neutral, the shell of the lamp is on either by turns.
        hides: [{ rule: "shell-hot", subjects: outlets }],
      });
    }
  },
});

const standingOf = (section: Section, key: OutletKey) => section.outlets().find(({ outlet }) => outlet.key === key);

const nameOf = (section: Section, key: OutletKey): string => standingOf(section, key)?.outlet.name ?? key;

function marksToFirst(section: Section, [first]: readonly OutletKey[]) {
  const standing = first === undefined ? undefined : standingOf(section, first);
  return standing === undefined ? [] : marksOnWay(section, section.wayFrom("grounded", neutralOf(standing)));
}

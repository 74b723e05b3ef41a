import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Section } from "../../solver/section.ts";
import { fixIn } from "../fix-parts.ts";
import { partNeutralsFix } from "../line-load-fixes.ts";
import { enclosuresOfStep, nameOfSide } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { type LineLoadDevice, lineLoadDevices, marksOnWay, nameOfStep, outletsBehind } from "../section-parts.ts";

const messages = templates({
  meets:
    "The neutral behind {device} in {box} meets the neutral of its supply{place}. {device} trips when something behind it is used, and a trip does not open that neutral. Part the two, so that LOAD gets its neutral through {device} alone.",
});

const wording = catalogue({
  across: (piece: Part, from: Part, to: Part, one: Part, other: Part) =>
    `${piece} (${from} to ${to}) between ${one} and ${other}`,
  by: (pieces: Part) => ` by ${pieces}`,
  inBox: (piece: Part, from: Part, to: Part, box: Part) => `${piece} (${from} to ${to}) in ${box}`,
});

const CONSEQUENCES = ["outlet-not-protected", "wish-not-protected", "replace-needs-gfci", "downstream-neutral-on-line"];

/** With the contacts open, the neutral of the supply still reaches both the LINE and the LOAD neutral. */
export const neutralBothSides = defineRule({
  id: "neutral-both-sides",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The LOAD neutral of a ground-fault device must get its neutral through the device alone.",
  why: "Part of the return current passes round the sensor, so that the device trips under load and is blamed for it. After a trip the neutral behind it is still joined. Commonly all whites of the box were put in one joint out of habit, or two boxes share a neutral further on.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, state, report }) {
    for (const found of lineLoadDevices(section)) {
      if (!found.lineGrounded || !found.loadGrounded) continue;
      const { device, enclosure } = found;
      const behind = outletsBehind(section, found).map(({ outlet }) => outlet.key);
      const around = section.neutralsAround(device.id).map(({ by }) => by);
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.meets, {
          device: device.name,
          box: enclosure.name,
          place: placeWords(section, found),
        }),
        ...basisOf(marksOn(device, "type"), marksOnWay(section, around)),
        ...fixIn(state, () => partNeutralsFix(section, found, state)),
        hides: CONSEQUENCES.map((rule) => ({ rule, subjects: behind })),
      });
    }
  },
});

function placeWords(section: Section, { device }: LineLoadDevice): string {
  const pieces = section.neutralsAround(device.id).map(({ by }) => {
    const [first = "", last = ""] = enclosuresOfStep(by).map((id) => section.installation.enclosures[id]?.name ?? id);
    const piece = nameOfStep(section, by);
    const [from, to] = [nameOfSide(section, by, "from"), nameOfSide(section, by, "to")];
    return first === last ? wording.inBox(piece, from, to, first) : wording.across(piece, from, to, first, last);
  });
  return pieces.length === 0 ? "" : wording.by(listed(pieces));
}

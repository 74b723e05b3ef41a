import type { Role } from "../../answers/circuit.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inOrder } from "../../queries/in-order.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import type { ConductorUse } from "../conductor-uses.ts";
import { conductorUses, isBareCarrying, isBareOnCircuitUnfed } from "../conductor-uses.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = templates({
  cable:
    "The {colour} of {cable} carries current as {as} in {boxes}: whoever opens a box takes it for the ground and may touch it. Use an insulated conductor, and give the ground back to the grounds.",
  jumper:
    "Jumper {jumper} in {boxes} is {colour} and carries current as {as}: whoever opens the box takes it for the ground and may touch it. Make it of an insulated conductor.",
  unfedCable:
    "The {colour} of {cable} leads to a terminal for {as} in {boxes}: whatever feeds it, a ground must not be there, and what is metal on it would be live. Take it off, land an insulated conductor there, and give the ground back to the grounds.",
  unfedJumper:
    "Jumper {jumper} in {boxes} is {colour} and leads to a terminal for {as}: whatever feeds it, whoever opens the box takes it for the ground. Make it of an insulated conductor.",
});

const wording = catalogue({
  asHot: "a hot",
  asNeutral: "a neutral",
  asTraveller: "a traveller",
  bareWire: "bare wire",
  wire: (colour: Part) => `${colour} wire`,
});

/** Where metal joins it to a ground screw, a box or the grounds as well, it is a fault between the two and told as that. */
export const greenBareAsCurrent = defineRule({
  id: "green-bare-as-current",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "A bare or green conductor must be a ground and nothing else.",
  why: "A conductor was short, so the ground of the cable was taken for a traveller, a neutral or a hot. A bare wire touches whatever comes near inside a box, and behind it nothing has a ground any more.",
  messages,
  sections: everyEdition("250.119, 200.6, 310", "from-memory"),
  check({ section, report }) {
    for (const use of conductorUses(section)) {
      const unfed = !isBareCarrying(use);
      if (unfed && !isBareOnCircuitUnfed(section, use)) continue;
      const { subject, cable, colour, role, ends } = use;
      const inside = [...new Set(ends.map(({ enclosure }) => enclosure))];
      const shown = {
        colour: colour === "bare" ? wording.bareWire : wording.wire(COLOUR_WORDS[colour]),
        as: unfed ? madeFor(use) : usedAs(role),
        boxes: listed(inside.map(({ name }) => name)),
      };
      report({
        subjects: [subject],
        message:
          cable === undefined
            ? fillIn(unfed ? messages.unfedJumper : messages.jumper, {
                ...shown,
                jumper: subject.name,
                colour: COLOUR_WORDS[colour],
              })
            : fillIn(unfed ? messages.unfedCable : messages.cable, { ...shown, cable: subject.name }),
        ...(unfed && { severity: "violation" }),
        ...basisOf(ends.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at"))),
        // A pigtail that nothing feeds takes the ground from nothing else.
        hides:
          unfed && cable === undefined
            ? []
            : [
                { rule: "egc-not-spliced-all", subjects: inside.map(({ id }) => id) },
                { rule: "metal-box-unbonded", subjects: inside.map(({ id }) => id) },
                {
                  rule: "device-egc-missing",
                  subjects: inside.flatMap(({ devices }) => inOrder(devices).map(({ id }) => id)),
                },
              ],
      });
    }
  },
});

const usedAs = (role: Role): string =>
  role === "traveller" ? wording.asTraveller : role === "grounded" ? wording.asNeutral : wording.asHot;

/** Where it lies on terminals for both, the hot is the graver. */
const madeFor = ({ leadsTo }: ConductorUse): string => (leadsTo.hot ? wording.asHot : wording.asNeutral);

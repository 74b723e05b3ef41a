import { templates } from "../../lib/catalogue.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import { compareWireSize } from "../../units/wire-size.ts";
import { type ConductorUse, conductorUses, isLanded, isWhite, shownColour } from "../conductor-uses.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  cable:
    "The {colour} of {cable} is used as the neutral. A neutral of {limit} AWG or thinner must be white or grey by make: use the white of the cable, or another cable.",
  taped:
    "The {colour} of {cable} is used as the neutral and marked as one. Of {limit} AWG and thinner it must be white or grey by make; tape is for thicker ones. Ask the inspector, or use the white of the cable.",
  jumper: "Jumper {jumper} in {box} is {colour} and carries the neutral. Make it of white.",
});

/** Used as the neutral: a grounded source reaches it, and it leads to a terminal that is made for the neutral. */
export const colouredAsNeutral = defineRule({
  id: "coloured-as-neutral",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A neutral must be white or grey.",
  why: "Whoever opens the box later takes black and red for hots, and cuts or joins the neutral as one. Commonly black and white of one cable were exchanged at both of its ends, so that everything works. Single conductors of knob-and-tube wiring had one colour for both and are left alone.",
  messages,
  sections: everyEdition("200.6(A)", "unconfirmed"),
  values: ["whiteByMakeToAwg"],
  check({ section, edition, report }) {
    const limit = edition.values.whiteByMakeToAwg.value;
    for (const use of conductorUses(section)) {
      if (!isNeutral(use) || isWhite(use.colour) || use.cable?.construction === "knob-and-tube") continue;
      if (compareWireSize(use.awg, limit) > 0) continue;
      const isMarked = use.ends.every((end) => isWhite(shownColour(use, end)));
      const [first] = use.ends;
      const { colour, cable, subject: what } = use;
      const shown = {
        colour: COLOUR_WORDS[colour],
        cable: what.name,
        jumper: what.name,
        box: first?.enclosure.name ?? "",
        limit,
      };
      const message = cable === undefined ? messages.jumper : isMarked ? messages.taped : messages.cable;
      if (cable === undefined && isMarked) continue;
      report({
        subjects: [cable === undefined ? what : subject("cable", cable)],
        message: fillIn(message, shown),
        ...(isMarked && { severity: "caution" }),
        ...basisOf(use.ends.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at"))),
      });
    }
  },
});

/** With an open end it carries nothing: a spare that lies on the neutral. */
const isNeutral = ({ grounding, role, leadsTo, ends }: ConductorUse): boolean =>
  !grounding && role === "grounded" && leadsTo.neutral && ends.every(isLanded);

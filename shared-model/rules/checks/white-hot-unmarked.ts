import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import {
  type ConductorUse,
  conductorUses,
  isLiveRole,
  isWhite,
  type PlacedEnd,
  shownColour,
} from "../conductor-uses.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = templates({
  cable:
    "The {colour} of {cable} is hot in {boxes} and not marked as one. Mark it there with tape or paint of another colour than white, grey or green.",
  jumper: "Jumper {jumper} in {boxes} is {colour} and hot. Make it of another colour, or mark it at both ends.",
});

const wording = catalogue({
  mark: (cable: Part, colour: Part) => `Mark the white of ${cable} ${colour}`,
  markAtBothEnds: (cable: Part, colour: Part) => `Mark the white of ${cable} ${colour} at both ends`,
});

/** A live conductor that leads to a neutral terminal is on the wrong conductor: to mark it would make that lasting. */
export const whiteHotUnmarked = defineRule({
  id: "white-hot-unmarked",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A white conductor that is used as a hot must be marked as one wherever it can be seen.",
  why: "Whoever opens the box later takes white for the neutral. In a switch loop of two-wire cable the white is the feed, and in a cable to a 240 V appliance the second hot. Before the edition of 1999 a switch loop could be left unmarked, so old ones commonly are.",
  messages,
  sections: everyEdition("200.7(C)(1)", "sourced"),
  check({ section, state, report }) {
    for (const use of conductorUses(section)) {
      if (!isWhite(use.colour) || use.grounding || !isLiveRole(use.role) || use.leadsTo.neutral) continue;
      const unmarked = use.ends.filter((end) => isWhite(shownColour(use, end)) && !isOutOfSight(section, end));
      if (unmarked.length === 0) continue;
      const boxes = listed([...new Set(unmarked.map(({ enclosure }) => enclosure.name))]);
      const { subject, cable, colour } = use;
      const shown = { boxes, colour: COLOUR_WORDS[colour] };
      report({
        subjects: [subject],
        message:
          cable === undefined
            ? fillIn(messages.jumper, { ...shown, jumper: subject.name })
            : fillIn(messages.cable, { ...shown, cable: subject.name }),
        data: { ends: unmarked.length },
        ...basisOf(unmarked.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at", "markedAs"))),
        ...fixIn(state, () => markFix(use, unmarked, state)),
      });
    }
  },
});

/** Loose ends are told as what they are, and what a box holds that is being surveyed is not known yet. */
const isOutOfSight = (section: Parameters<typeof conductorUses>[0], { end, enclosure }: PlacedEnd): boolean =>
  enclosure.places[end]?.at.kind === "loose" || isBeingSurveyed(section, enclosure.id);

const MARK = "black";

function markFix({ subject }: ConductorUse, ends: readonly PlacedEnd[], state: StateName): Fix {
  const calls = ends.map(({ end: id, enclosure }) => ({
    command: "set-property",
    args: { state, target: { kind: "end", enclosure: enclosure.id, id }, field: "markedAs", value: MARK },
  }));
  return fixTogether(
    (ends.length > 1 ? wording.markAtBothEnds : wording.mark)(subject.name, COLOUR_WORDS[MARK]),
    calls,
  );
}

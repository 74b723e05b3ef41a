import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { membersOf } from "../../queries/landings.ts";
import { findTerminal, nameOfTerminal } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import {
  type ConductorUse,
  conductorUses,
  isWhite,
  isWhiteHot,
  type PlacedEnd,
  shownColour,
} from "../conductor-uses.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";
import { isSupplyDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  cable:
    "The {colour} of {cable} is hot in {boxes} and not marked as one. Mark it there with tape or paint of another colour than white, grey or green.",
  notTold:
    "The {colour} of {cable} is {where}, not marked as a hot, and no supply is drawn that would tell which it is. If it is hot, as in a switch loop, mark it there; if it is the neutral, it is on the wrong conductor.",
  jumper: "Jumper {jumper} in {boxes} is {colour} and hot. Make it of another colour, or mark it at both ends.",
});

const wording = catalogue({
  onTerminal: (terminal: Part, box: Part) => `on ${terminal} in ${box}`,
  joinedWith: (ends: Part, box: Part) => `joined with ${ends} in ${box}`,
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
  check({ section, installation, state, report }) {
    if (!isSupplyDrawn(section, installation)) reportByColour(section, report);
    for (const use of conductorUses(section)) {
      if (!isWhiteHot(use)) continue;
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

/**
 * What only colours tell: an unmarked white on the screw of a hot, or in a joint with a black or red. No right drawing has
 * one, whatever feeds it, and which of the two slips it is needs the supply.
 */
function reportByColour(section: Section, report: SectionContext["report"]): void {
  for (const use of conductorUses(section)) {
    const { cable, subject, colour, leadsTo } = use;
    if (cable === undefined || !isWhite(colour) || use.grounding || leadsTo.neutral || leadsTo.ground) continue;
    const found = use.ends.flatMap((placed) => {
      const where = isWhite(shownColour(use, placed)) ? whereAmongHots(section, placed) : undefined;
      return where === undefined || isOutOfSight(section, placed) ? [] : [{ ...placed, where }];
    });
    if (found.length === 0) continue;
    report({
      subjects: [subject],
      severity: "caution",
      message: fillIn(messages.notTold, {
        colour: COLOUR_WORDS[colour],
        cable: subject.name,
        where: listed(found.map(({ where }) => where)),
      }),
      data: { ends: found.length },
      ...basisOf(found.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at", "markedAs"))),
    });
  }
}

const HOT_PURPOSES: ReadonlySet<string | undefined> = new Set(["hot", "switched", "common", "traveller"]);

function whereAmongHots({ installation }: Section, { end, enclosure }: PlacedEnd): string | undefined {
  const at = enclosure.places[end]?.at;
  if (at?.kind === "terminal") {
    const device = enclosure.devices[at.device];
    if (device === undefined || !HOT_PURPOSES.has(findTerminal(device, at.terminal)?.purpose)) return undefined;
    return wording.onTerminal(nameOfTerminal(device, at.terminal), enclosure.name);
  }
  if (at?.kind !== "splice") return undefined;
  const coloured = membersOf(enclosure, at.splice).filter((one) => isHotByColour(installation, enclosure, one));
  if (coloured.length === 0) return undefined;
  return wording.joinedWith(listed(coloured.map((one) => nameOfEnd(installation, enclosure, one))), enclosure.name);
}

function isHotByColour(installation: Installation, enclosure: Enclosure, end: EndKey): boolean {
  const facts = findEndFacts(installation, enclosure, end);
  return facts !== undefined && !facts.grounding && !isWhite(enclosure.places[end]?.markedAs ?? facts.colour);
}

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

import type { CommandCall } from "../../answers/command-call.ts";
import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import { type ConductorKey, cableEnd } from "../../model/ids.ts";
import type { StateName } from "../../model/project.ts";
import type { Section } from "../../solver/section.ts";
import { colourCode } from "../../units/colour.ts";
import { COLOUR_WORDS } from "../../units/colour-words.ts";
import { type ConductorUse, conductorUses, isWhite } from "../conductor-uses.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn } from "../rule-parts.ts";

const messages = templates({
  returns:
    "The {colour} of {cable} is the switched wire back from the switch, its {other} the {feed}. Use the {colour} for the supply to the switch and another colour back: exchange the two at both ends.",
});

const wording = catalogue({
  exchange: (one: Part, other: Part, cable: Part) => `Exchange ${one} and ${other} of ${cable} at both ends`,
  feed: "feed",
  traveller: "traveller",
});

/** Marked or not: a mark makes it visible, and does not make it right. */
export const whiteAsSwitchedReturn = defineRule({
  id: "white-as-switched-return",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "In a switch loop the white must be the feed, and another colour the way back.",
  why: "At the lamp the switched wire must not be white, so that white and another colour come together there as everywhere, and a white at the shell is a neutral. With the white as the feed it is hot in every position, which a tester shows at once.",
  messages,
  sections: everyEdition("200.7(C)(1)", "sourced"),
  check({ section, state, report }) {
    const uses = conductorUses(section);
    for (const use of uses) {
      const { cable, key } = use;
      if (cable === undefined || key === undefined || !isWhite(use.colour) || use.leadsTo.neutral) continue;
      if (use.role !== "switched") continue;
      const beside = uses.filter((one) => one.cable === cable && !one.grounding && !isWhite(one.colour));
      const feed = beside.find(({ role }) => role === "ungrounded") ?? beside.find(({ role }) => role === "traveller");
      if (feed?.key === undefined || !isReturn(use)) continue;
      const exchanged = feed.key;
      report({
        subjects: [use.subject],
        message: fillIn(messages.returns, {
          colour: COLOUR_WORDS[use.colour],
          cable: cable.name,
          other: COLOUR_WORDS[feed.colour],
          feed: feed.role === "traveller" ? wording.traveller : wording.feed,
        }),
        ...basisOf(use.ends.flatMap(({ end, enclosure }) => marksOn(enclosure.places[end] ?? {}, "at"))),
        ...fixIn(state, () => exchangeAtBothEnds(section, cable, key, exchanged, use.colour, feed.colour, state)),
        hides: [{ rule: "white-hot-unmarked", subjects: [cable.id] }],
      });
    }
  },
});

/** Behind a switch and before no other: what leads on to a second one is its feed, though the first turns it off. */
const isReturn = ({ leadsTo }: ConductorUse): boolean => leadsTo.fromSwitch && !leadsTo.toSwitch;

function exchangeAtBothEnds(
  section: Section,
  cable: Cable,
  white: ConductorKey,
  other: ConductorKey,
  colour: ConductorUse["colour"],
  otherColour: ConductorUse["colour"],
  state: StateName,
): Fix | undefined {
  const calls: CommandCall[] = [];
  for (const side of ["a", "b"] as const) {
    const where = cable.sides[side];
    const enclosure = "enclosure" in where ? section.installation.enclosures[where.enclosure] : undefined;
    if (enclosure === undefined) return undefined;
    const [one, two] = [cableEnd(cable.id, white, side), cableEnd(cable.id, other, side)];
    const [atOne, atTwo] = [enclosure.places[one]?.at, enclosure.places[two]?.at];
    if (atOne === undefined || atTwo === undefined) return undefined;
    const plan = new MakeUpPlan(section.installation, enclosure, state);
    for (const [end, at] of [
      [one, atTwo],
      [two, atOne],
    ] as const)
      if (at.kind === "splice") plan.join(end, at.splice);
      else plan.land(end, at);
    plan.set({ kind: "end", enclosure: enclosure.id, id: one }, "markedAs", enclosure.places[one]?.markedAs ?? "black");
    if (enclosure.places[two]?.markedAs !== undefined)
      plan.set({ kind: "end", enclosure: enclosure.id, id: two }, "markedAs", null);
    const fix = plan.fix(() => "");
    if (fix === undefined) return undefined;
    const { call } = fix;
    calls.push(...(call.command === "run-together" ? (call.args as { calls: readonly CommandCall[] }).calls : [call]));
  }
  return fixTogether(wording.exchange(colourCode(colour), colourCode(otherColour), cable.name), calls);
}

import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { TerminalName } from "../../model/ids.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { circuitUses, exceeds, figure, onPole, sumOf } from "../circuit-uses.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  over: "{load} A of continuous load on {breaker} of {rating} A in {panel}: {most} A is the most ({percent} %). {uses} run for three hours or more. Move something to another circuit.",
  ratingUnknown:
    "Cannot tell whether {breaker} in {panel} bears {load} A of continuous load ({uses}): its rating is not recorded. Read it off the handle.",
});

const wording = catalogue({
  ratingOf: (breaker: Part, panel: Part) => `the rating of ${breaker} in ${panel}`,
});

/** Each pole by itself: the two legs of a two-pole breaker carry different loads. */
export const continuousLoad = defineRule({
  id: "continuous-load",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "What runs for three hours or more may load a breaker to 80 % only.",
  why: "A breaker in its panel warms up: at its full rating for hours it opens without a fault, or its contacts suffer. Heaters and display lighting are the usual loads. Whether a load is continuous is a person's statement; what is not marked so does not count.",
  messages,
  sections: everyEdition("210.19(A), 210.20(A)", "unconfirmed"),
  values: ["continuousPercent"],
  check({ section, installation, edition, report, cannotTell }) {
    const percent = edition.values.continuousPercent.value;
    const uses = circuitUses(section, installation).filter(({ continuous }) => continuous);
    if (uses.length === 0) return;
    for (const { device: breaker, panel } of section.breakers()) {
      const poles = terminalsOf(breaker)
        .filter(({ purpose }) => purpose === "hot")
        .map(({ name }) => onPole(uses, breaker.id, name as TerminalName));
      const [most = []] = poles.sort((one, other) => sumOf(other, "amps") - sumOf(one, "amps"));
      if (most.length === 0) continue;
      const load = sumOf(most, "amps");
      const subjects = [subject("device", breaker)];
      const names = listed(most.map(({ name }) => name));
      const shown = { breaker: breaker.name, panel: panel.name, load: figure(load), uses: names };
      const rating = breaker.breakerRatingA;
      if (rating === undefined) {
        const missing = wording.ratingOf(breaker.name, panel.name);
        cannotTell({ subjects, message: fillIn(messages.ratingUnknown, shown), missing });
        continue;
      }
      const limit = (rating * percent) / 100;
      if (!exceeds(load, limit)) continue;
      report({
        subjects,
        message: fillIn(messages.over, { ...shown, rating, percent, most: figure(limit) }),
        data: { loadA: Number(figure(load)), mostA: Number(figure(limit)) },
        ...basisOf(
          marksOn(breaker, "breakerRatingA"),
          most.flatMap(({ marks }) => marks),
        ),
      });
    }
  },
});

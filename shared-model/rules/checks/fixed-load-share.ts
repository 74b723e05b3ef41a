import { templates } from "../../lib/catalogue.ts";
import type { TerminalName } from "../../model/ids.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { type CircuitUse, circuitUses, exceeds, figure, isLightOutlet, onPole, sumOf } from "../circuit-uses.ts";
import { FASTENED_SHARE_RATINGS } from "../editions/circuit-values.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  over: "{load} A of equipment fastened in place ({uses}) on {breaker} of {rating} A in {panel}, which feeds {others} too: {most} A is the most there ({percent} %). Give it a circuit of its own.",
});

/** Each pole by itself. Lights and receptacles make a circuit shared. */
export const fixedLoadShare = defineRule({
  id: "fixed-load-share",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "Equipment fastened in place may take half of a circuit that feeds lights or receptacles too.",
  why: "What is plugged in comes on top of what is wired in: an air handler or an exhaust fan heater that takes most of a circuit leaves nothing for the outlets beside it, and the breaker opens day after day. The rule is for circuits of 15 and 20 A. Equipment without recorded watts does not count.",
  messages,
  sections: everyEdition("210.23(A)", "from-memory"),
  values: ["fastenedSharePercent"],
  check({ section, installation, edition, report }) {
    const percent = edition.values.fastenedSharePercent.value;
    const uses = circuitUses(section, installation).filter(({ kind }) => kind === "fastened");
    if (uses.length === 0) return;
    for (const { device: breaker, panel } of section.breakers()) {
      const rating = breaker.breakerRatingA;
      if (rating === undefined || rating < FASTENED_SHARE_RATINGS.least || rating > FASTENED_SHARE_RATINGS.greatest)
        continue;
      const others = sharing(section, breaker.id);
      const [worst = []] = terminalsOf(breaker)
        .filter(({ purpose }) => purpose === "hot")
        .map(({ name }) => onPole(uses, breaker.id, name as TerminalName))
        .sort((one, other) => sumOf(other, "amps") - sumOf(one, "amps"));
      const load = sumOf(worst, "amps");
      const limit = (rating * percent) / 100;
      if (others.length === 0 || !exceeds(load, limit)) continue;
      report({
        subjects: [subject("device", breaker)],
        message: fillIn(messages.over, {
          load: figure(load),
          uses: namesOf(worst),
          breaker: breaker.name,
          rating,
          panel: panel.name,
          others: listed(others.map(({ outlet }) => outlet.name)),
          most: figure(limit),
          percent,
        }),
        data: { loadA: Number(figure(load)), mostA: Number(figure(limit)) },
        ...basisOf(
          marksOn(breaker, "breakerRatingA"),
          worst.flatMap(({ marks }) => marks),
        ),
      });
    }
  },
});

const namesOf = (uses: readonly CircuitUse[]): string => listed(uses.map(({ name }) => name));

/** Receptacles and lights of a circuit. */
function sharing(section: Section, breaker: Parameters<Section["circuitOf"]>[0]): readonly OutletStanding[] {
  const keys = new Set(section.circuitOf(breaker).outlets);
  return section.outlets().filter((one) => keys.has(one.outlet.key) && (one.outlet.receptacle || isLightOutlet(one)));
}

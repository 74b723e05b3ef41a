import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { isAllMeasured } from "../../solver/circuit/drop-way.ts";
import { measuredDrops } from "../../solver/circuit/section-drops.ts";
import { dropTerms, jointWords, loadWords, longestWords, type Past, pastLimit } from "../drop-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  past: "{outlet} in {box} loses {drop} V, {percent} % of its voltage, on the way from {from} with {load}: more than the {limit} % {whose}. {why}{others} This is advice: thicker conductors, a shorter way or a smaller load bring it down.",
});

const wording = catalogue({
  inPanel: "in the panel",
  joint: (joint: Part) => `On the way is ${joint}.`,
  longest: (part: Part) => `The longest part is ${part}.`,
  note: (section: Part) => `${section}, Informational Note`,
  otherOutlets: (count: number, breaker: Part) =>
    ` ${counted(count, "more outlet")} behind ${breaker} ${count > 1 ? "are" : "is"} past it too.`,
  ownLimit: "set for this drawing",
  recommendedForBranch: "recommended for a branch circuit",
  recommendedForBoth: "recommended for feeder and branch circuit together",
  service: "the service",
});

/** Voltage drop past what is recommended: one finding a breaker, at its worst outlet. Silent where a length is not recorded. */
export const voltageDropAdvice = defineRule({
  id: "voltage-drop-advice",
  status: "stable",
  scope: "section",
  severity: "advice",
  summary: "No outlet should lose more of its voltage on the way than is recommended.",
  why: "Long runs of thin wire take part of the voltage as heat: heaters are slow, lamps dim when something starts, and motors run hot. It is an informational note and no requirement. The load is stated: a share of the rating of the breaker at a receptacle, with nothing else on, and everything drawn behind the breaker for what is wired in; wire is taken at 20 °C. Share and limits are figures of the drawing that a person can change. A run with a cable of unknown length is left out; the details of an outlet name the length that is missing.",
  messages,
  sections: everyEdition(wording.note("210.19"), "sourced"),
  values: ["branchDropPercent", "totalDropPercent", "statedLoadPercent"],
  check({ project, installation, section, edition, report }) {
    const terms = dropTerms(project, edition);
    if (terms === undefined) return;
    const byBreaker = new Map<string, Past[]>();
    // A way costs far more than to see that every length is known.
    const isWhole = isAllMeasured(section);
    for (const drop of measuredDrops(section, project.supply, terms.loadPercent)) {
      const past = drop.kind === "drop" ? pastLimit(drop, terms) : undefined;
      if (past === undefined || (!isWhole && past.drop.way().unmeasured.length > 0)) continue;
      const { id } = past.drop.breaker;
      byBreaker.set(id, [...(byBreaker.get(id) ?? []), past]);
    }
    for (const all of byBreaker.values()) {
      const worst = all.reduce((one, other) => (excess(other) > excess(one) ? other : one));
      const { drop, lost, limit, isBranch } = worst;
      const { outlet, enclosure, breaker, panel } = drop;
      const way = drop.way();
      const [joint, longest] = [jointWords(installation, way), longestWords(way.cables)];
      const own = isBranch ? terms.ownBranch : terms.ownTotal;
      report({
        subjects: [subject("outlet", { id: outlet.key, name: outlet.name }), subject("device", breaker)],
        message: fillIn(messages.past, {
          outlet: outlet.name,
          box: enclosure.name,
          drop: lost.dropV.toFixed(1),
          percent: lost.percent.toFixed(1),
          from: isBranch ? panel.name : wording.service,
          load: loadWords(drop.load, breaker),
          limit,
          whose: own ? wording.ownLimit : isBranch ? wording.recommendedForBranch : wording.recommendedForBoth,
          why: joint !== undefined ? wording.joint(joint) : wording.longest(longest ?? wording.inPanel),
          others: all.length > 1 ? wording.otherOutlets(all.length - 1, breaker.name) : "",
        }),
        data: { dropV: tenths(lost.dropV), percent: tenths(lost.percent), limitPercent: limit, outlets: all.length },
        ...basisOf(
          way.cables.flatMap((cable) => marksOn(cable, "lengthFt")),
          drop.load.kind === "stated" ? marksOn(breaker, "breakerRatingA") : [],
        ),
      });
    }
  },
});

const excess = ({ lost, limit }: Past): number => lost.percent - limit;
const tenths = (value: number): number => Math.round(value * 10) / 10;

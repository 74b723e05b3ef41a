import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { parseEnd } from "../../model/ids.ts";
import { type NeutralReturn, neutralNetsOf, wayBetweenReturns } from "../../solver/neutral-shares.ts";
import type { PathStep, Section } from "../../solver/section.ts";
import { breakersOf, marksOfPoles } from "../multiwire-parts.ts";
import { nameOfSide } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, subject } from "../rule-parts.ts";
import { marksOnWay } from "../section-parts.ts";

const messages = templates({
  joined:
    "The neutral of {one} and that of {other} are joined{place}: with either breaker off its neutral still carries current of the other, and a ground-fault or arc-fault device on either trips. Part the two, so that each returns by its own cable.",
});

const wording = catalogue({
  at: (place: Part) => ` at ${place}`,
  inBox: (place: Part, box: Part) => `${place} in ${box}`,
});

/**
 * Two returns that belong to different hots and meet outside a panel. One return for two hots is another matter: a
 * multiwire circuit, or a neutral that was borrowed.
 */
export const neutralsJoined = defineRule({
  id: "neutrals-joined",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The neutrals of two circuits must not meet outside the panel.",
  why: "All whites of a box went into one joint, though they came from two breakers. Current then returns by both cables as it likes: a circuit that is off has a live return, hot and neutral of one circuit run apart, and ground-fault and arc-fault devices on either trip for no reason that anybody can see.",
  messages,
  sections: everyEdition("200.4(A)", "unconfirmed"),
  check({ section, report }) {
    for (const { returns, spoilt } of neutralNetsOf(section)) {
      if (spoilt) continue;
      for (const { one, other } of pairsOf(returns)) {
        const [first, second] = [breakersOf(one.partners), breakersOf(other.partners)];
        const meeting = meetingOf(section, one, other);
        report({
          subjects: [...first, ...second].map((breaker) => subject("device", breaker)),
          message: fillIn(messages.joined, {
            one: listed(first.map(({ name }) => name)),
            other: listed(second.map(({ name }) => name)),
            place: meeting === undefined ? "" : wording.at(meeting.words),
          }),
          ...basisOf(marksOfPoles([...one.partners, ...other.partners]), marksOnWay(section, meeting?.way)),
          hides: [{ rule: "gfci-breaker-neutral-on-bar", subjects: [...first, ...second].map(({ id }) => id) }],
        });
      }
    }
  },
});

interface Pair {
  readonly one: NeutralReturn;
  readonly other: NeutralReturn;
}

/** Returns with no hot in common, once for the same breakers. */
function pairsOf(returns: readonly NeutralReturn[]): readonly Pair[] {
  const found = new Map<string, Pair>();
  const withHots = returns.filter(({ partners }) => partners.length > 0);
  withHots.forEach((one, index) => {
    for (const other of withHots.slice(index + 1)) {
      if (one.partners.some((pole) => other.partners.includes(pole))) continue;
      const idOf = ({ partners }: NeutralReturn): string =>
        breakersOf(partners)
          .map(({ id }) => id)
          .join();
      const pair = idOf(one) < idOf(other) ? { one, other } : { one: other, other: one };
      const key = `${idOf(pair.one)} ${idOf(pair.other)}`;
      if (!found.has(key)) found.set(key, pair);
    }
  });
  return [...found.values()];
}

/**
 * Where the way from the one return to the other leaves the cables that carry the hots of the one: the joint, or the
 * terminal, at which the two come together.
 */
function meetingOf(section: Section, one: NeutralReturn, other: NeutralReturn) {
  const way = wayBetweenReturns(section, one, other);
  if (way === undefined) return undefined;
  const carries = (step: PathStep, { partners }: NeutralReturn): boolean => {
    const cable = step.kind === "cable" ? section.installation.cables[step.cable] : undefined;
    return cable !== undefined && breakersOf(partners).some(({ id }) => isOnCircuit(section, cable, id));
  };
  const last = way.findLastIndex((step) => carries(step, one) && !carries(step, other));
  const step = way[last];
  const at: Enclosure | undefined =
    step?.kind === "cable" ? section.installation.enclosures[step.toEnclosure] : undefined;
  if (step === undefined || at === undefined) return undefined;
  return { way, words: wording.inBox(nameOfSide(section, step, "to"), at.name) };
}

const isOnCircuit = (section: Section, cable: Cable, breaker: Parameters<Section["circuitOf"]>[0]): boolean =>
  section.circuitOf(breaker).hotEnds.some((end) => {
    const parsed = parseEnd(end);
    return parsed?.of === "cable" && parsed.cable === cable.id;
  });

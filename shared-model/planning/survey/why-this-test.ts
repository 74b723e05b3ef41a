import type { SurveyProposal } from "../../answers/survey.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { SurveyTest } from "../../model/survey.ts";
import type { Part } from "./assignments.ts";
import { allOn, liveOutcomes, type Outcomes, workOutcomes } from "./gains.ts";
import type { Inference } from "./inference.ts";
import { EFFORT, NARROWS, THAT_NARROWS, WHY_WORDS as wording } from "./why-words.ts";

/** So many are shown; of others nobody reads why. */
const MOST_TOLD = 7;

/** Says of each test why it would be done, in the words of the trade, and how many assignments it leaves at most. */
export function withWhy(
  offered: readonly SurveyProposal[],
  cables: readonly string[],
  inference: Inference,
  nominalV: number,
): readonly SurveyProposal[] {
  const told = offered.map((one, index): SurveyProposal => {
    const atMost = index < MOST_TOLD ? mostLeft(one, cables, inference, nominalV) : undefined;
    return atMost === undefined ? one : { ...one, atMost };
  });
  const left = inference.count("left");
  return told.map((one, index) => {
    const against = told[index === 0 ? 1 : 0];
    return { ...one, why: whyWords(one, left, against) };
  });
}

function whyWords(made: SurveyProposal, left: number, against: SurveyProposal | undefined): string {
  const own = wording.own(narrowsWords(made.bits), atMostWords(made, left), effortWords(made));
  if (against === undefined) return own;
  const test = inSentence(against.words);
  const other = narrowsWords(against.bits, THAT_NARROWS);
  return wording.instead(own, test, other, atMostWords(against, left), effortWords(against));
}

/** How far a test narrows things down as a rule: one bit is half. */
export function narrowsWords(bits: number, words: typeof NARROWS = NARROWS): string {
  const share = 2 ** -bits;
  if (share > 0.9) return words.hardly;
  if (share > 0.7) return words.down(wording.threeQuarters);
  if (share > 0.58) return words.down(wording.twoThirds);
  if (share > 0.42) return words.half;
  if (share > 0.29) return words.down(wording.third);
  return words.down(share > 0.225 ? wording.quarter : wording.oneIn(Math.round(1 / share)));
}

function atMostWords({ atMost, exposure, wanted }: SurveyProposal, left: number): string {
  if (atMost !== undefined) return atMost < left ? wording.atMost(atMost, left) : wording.worst;
  const isFirm = wanted.instrument === "test-lamp" || exposure !== "dead";
  return isFirm ? "" : wording.likelier;
}

const effortWords = ({ minutes, powerCycles, exposure }: SurveyProposal): string =>
  wording.effort(Math.ceil(minutes), powerCycles === 0 ? wording.powerOff : EFFORT[exposure]);

/** The most assignments that any outcome leaves, errors apart; undefined for a test that rules nothing out by itself. */
function mostLeft(
  { wanted, key }: SurveyProposal,
  cables: readonly string[],
  inference: Inference,
  nominalV: number,
): number | undefined {
  if (key === "volts") return mostAfterVolts(inference, placesOf(wanted.tests, cables), nominalV);
  if (wanted.joined === undefined) return undefined;
  const joined = wanted.joined.slice(1).map((id) => cables.indexOf(id));
  return mostAfterJoining(inference, joined);
}

const placesOf = (tests: readonly SurveyTest[], cables: readonly string[]): readonly number[] => [
  ...new Set(
    tests.flatMap((test) => (test.kind === "pair" && test.from !== "ground" ? [cables.indexOf(test.from.cable)] : [])),
  ),
];

const DEAD = "0,0,0";

/** One cable live in one way and the others dead, or none live: whichever leaves most. */
function mostAfterVolts(inference: Inference, read: readonly number[], nominalV: number): number {
  const of = inference.assignments.options.map(({ lead }): Outcomes => liveOutcomes(lead, nominalV));
  const canShow = (option: number, shown: string): boolean => (of[option]?.get(shown) ?? 0) > 0;
  // What is live whatever is left tells nothing by being live.
  const mayBeDead = (cable: number): boolean =>
    of.some((_, option) => inference.mayBe(cable, option) && canShow(option, DEAD));
  const asked = new Set(read.filter(mayBeDead));
  const count = (live: number, shown: string): number =>
    inference.count("left", (cable, option) =>
      cable === live ? Number(canShow(option, shown)) : asked.has(cable) ? Number(canShow(option, DEAD)) : 1,
    );
  let most = count(-1, DEAD);
  for (const cable of read) {
    if (inference.alike(cable) !== cable) continue;
    const shown = new Set(
      of.flatMap((outcomes, option) => (inference.mayBe(cable, option) ? [...outcomes.keys()] : [])),
    );
    shown.delete(DEAD);
    for (const key of shown) most = Math.max(most, count(cable, key));
  }
  return most;
}

function mostAfterJoining(inference: Inference, joined: readonly number[]): number {
  const around = allOn(inference);
  const works = inference.assignments.options.map(({ lead }) => [...workOutcomes(lead, around).keys()]);
  const [one, other] = joined as [number, number?];
  const may = (cable: number): readonly number[] =>
    works.flatMap((_, option) => (inference.mayBe(cable, option) ? [option] : []));
  const counts = new Map<string, number>();
  const add = (key: string, part: Part): void => {
    counts.set(key, (counts.get(key) ?? 0) + inference.count("left", part));
  };
  const keyOf = (texts: readonly string[]): string => [...new Set(texts.join("").split(" "))].sort().join(" ");
  for (const option of may(one)) {
    const only: Part = (cable, which) => (cable === one && which !== option ? 0 : 1);
    if (other === undefined) {
      for (const seen of works[option] ?? []) add(keyOf([seen]), only);
      continue;
    }
    for (const too of may(other)) {
      const keys = new Set((works[option] ?? []).flatMap((p) => (works[too] ?? []).map((q) => keyOf([p, q]))));
      const both: Part = (cable, which) => (cable === other && which !== too ? 0 : only(cable, which));
      for (const key of keys) add(key, both);
    }
  }
  return Math.max(0, ...counts.values());
}

import type {
  SurveyAnswer,
  SurveyExposure,
  SurveyProposal,
  SurveyRoleKind,
} from "../../../shared-model/answers/survey.ts";
import type { Reading } from "../../../shared-model/model/project.ts";
import type {
  SurveyArrangement,
  SurveyedReading,
  SurveyPoint,
  SurveyTest,
  SurveyTold,
} from "../../../shared-model/model/survey.ts";
import { INSTRUMENT_WORDS } from "../../state/item-actions/reading-action.ts";
import { NOT_LISTED, OPEN } from "../../state/survey/outcomes.ts";
import { wording } from "./words.ts";

export const EXPOSURE_WORDS: Readonly<Record<SurveyExposure, string>> = {
  dead: wording.powerOff,
  outlet: wording.atAnOutlet,
  "open-box-live": wording.boxOpenPowerOn,
};

export const ARRANGEMENT_WORDS: Readonly<Record<SurveyArrangement, string>> = {
  A0: wording.asFoundPowerOn,
  A1: wording.powerOffApartAndCapped,
  A2: wording.apartAndCappedPowerOn,
  A3: wording.joinedAndCappedPowerOn,
  A4: wording.withASwitchPutIn,
};

/** Letters of a role, so that it is told apart without colour and before it is read. */
export const ROLE_LETTERS: Readonly<Record<SurveyRoleKind, string>> = {
  supply: wording.letterSupply,
  "multiwire-supply": wording.letterMultiwire,
  "switched-supply": wording.letterSwitched,
  feeds: wording.letterFeeds,
  leg: wording.letterLeg,
  loop: wording.letterLoop,
  "loop-fed": wording.letterLoopFed,
  travellers: wording.letterTravellers,
  dead: wording.letterDead,
  "other-neutral": wording.letterOtherNeutral,
};

/** "72 %", "under 1 %". */
export const percentWords = (share: number): string =>
  share > 0 && share < 0.01 ? wording.underOnePercent : wording.percent(Math.round(share * 100));

/** "leaves at most 24 of 120"; where a test rules nothing out by itself, that it shows what is likelier. */
export const tellsWords = ({ atMost }: Pick<SurveyProposal, "atMost">, { left }: Pick<SurveyAnswer, "left">): string =>
  atMost === undefined ? wording.showsTheLikelier : wording.leavesAtMost(atMost, left);

type Named = Pick<SurveyAnswer, "cables">;

/** Name of a cable of the box. */
export const nameOf = ({ cables }: Named, cable: string): string =>
  cables.find(({ id }) => id === cable)?.name ?? cable;

const codeOf = ({ cables }: Named, point: Exclude<SurveyPoint, "ground">): string =>
  cables.find(({ id }) => id === point.cable)?.conductors.find(({ key }) => key === point.conductor)?.code ??
  point.conductor;

/** "C1 BK to WH", "C1 BK to C2 WH", "C1 BK to ground". */
export function pairWords(named: Named, { from, to }: Extract<SurveyTest, { readonly kind: "pair" }>): string {
  const one = pointWords(named, from);
  const same = from !== "ground" && to !== "ground" && from.cable === to.cable;
  return wording.fromTo(one, same ? codeOf(named, to) : pointWords(named, to));
}

const pointWords = (named: Named, point: SurveyPoint): string =>
  point === "ground" ? wording.ground : `${nameOf(named, point.cable)} ${codeOf(named, point)}`;

/** What a test reads, without its result. */
export function testWords(named: Named, test: SurveyTest | SurveyTold): string {
  switch (test.kind) {
    case "pair":
      return pairWords(named, test);
    case "works":
      return wording.whatWorks;
    case "current":
      return wording.currentIn(pointWords(named, test));
    case "test-lamp":
      return wording.testLampAcross(nameOf(named, test.cable));
    case "look":
      return wording.inTheLuminairesBox(nameOf(named, test.cable));
    case "breaker":
      return wording.withABreakerOff(nameOf(named, test.cable));
    case "facts":
      return wording.saidAboutTheBox;
    case "breaker-off":
    case "drop":
    case "opened":
      return wording.ofTheMap;
  }
}

/** A reading as a line: "C1 BK to WH: 122 V". */
export function readingWords(answer: SurveyAnswer, reading: Reading & { readonly survey: SurveyedReading }): string {
  const { test, joined = [] } = reading.survey;
  const together = joined.length === 0 ? "" : wording.joinedCables(joined.map((id) => nameOf(answer, id)).join(" + "));
  return `${together}${testWords(answer, test)}: ${foundWords(answer, reading)}`;
}

function foundWords(
  answer: SurveyAnswer,
  { value, unit, survey: { test } }: Reading & { readonly survey: SurveyedReading },
) {
  const figure = value === OPEN ? wording.open : `${value} ${unit === "ohm" ? "Ω" : (unit ?? "")}`.trim();
  switch (test.kind) {
    case "works": {
      const names = answer.items.filter(({ id }) => test.items.includes(id)).map(({ name }) => name);
      if (test.items.includes(NOT_LISTED)) names.push(wording.somethingNotListed.toLowerCase());
      return names.length === 0 ? wording.nothing : names.join(", ");
    }
    case "test-lamp":
      return `${figure}, ${test.lightGlows ? wording.theLightBeyondGlowed : wording.itStayedDark}`;
    case "look":
      return test.feedThere ? wording.theFeedIsThere : wording.noFeedThere;
    case "breaker":
      return test.wentDead ? wording.wentDead : wording.stayedLive;
    case "facts":
      return test.facts.referenceProved ?? wording.noted;
    default:
      return figure;
  }
}

/** How it was read: "A2, low-impedance meter". */
export const howWords = ({ instrument, by, survey: { arrangement } }: Reading & { readonly survey: SurveyedReading }) =>
  [arrangement, INSTRUMENT_WORDS[instrument], by].filter(Boolean).join(", ");

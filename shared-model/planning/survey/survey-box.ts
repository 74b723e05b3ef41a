import type {
  SurveyAnswer,
  SurveyContradiction,
  SurveyedCable,
  SurveyRejection,
  SurveyRole,
} from "../../answers/survey.ts";
import { COLOUR_WORDS } from "../../catalog/wire-words.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import type { Box } from "../../model/enclosure.ts";
import type { ReadingId } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import type { SurveyFacts } from "../../model/survey.ts";
import { legPhasors } from "../../solver/circuit/supply-legs.ts";
import { ACCOUNT_WORDS as wording } from "./account-words.ts";
import { patternOf } from "./assignments.ts";
import { type BoxAtHand, boxAtHand } from "./box-at-hand.ts";
import { readingsThatCount, smallestDoubt, withoutReadings } from "./doubt.ts";
import { leadsLeft } from "./harm.ts";
import { Inference } from "./inference.ts";
import { isSource, type Lead } from "./lead.ts";
import { menuOf } from "./menu-of-box.ts";
import { proposalsFor } from "./proposals.ts";
import { seenTogether } from "./seen-together.ts";
import { codeOf, type SortedReadings, sortReadings } from "./sort-readings.ts";
import { cautionsOf, holdPointsOf, mismatchesOf, notProvedOf, tagOf } from "./survey-notes.ts";
import { MOST_CABLES, MOST_GROUPS, MOST_SHOWN, type SurveyPriors, USUAL_PRIORS } from "./survey-values.ts";
import { itemWords, leadWords } from "./survey-words.ts";
import { takeOverOf } from "./take-over.ts";
import type { NotedReading, TakenReading } from "./taken-reading.ts";
import { heaviest, type Walked } from "./walk.ts";

/** A reading as it is given, without its place and its words. */
export type GivenReading = Omit<TakenReading, "index" | "words">;

/**
 * What readings tell of the cables of a box, and what to test next. A pure function of the wiring as found, what a person
 * says of the box, and readings in their order. Fails where the box has no cable or too many, or more is listed than can
 * be taken apart.
 */
export function surveyBox(
  installation: Installation,
  supply: Supply,
  box: Box,
  facts: SurveyFacts,
  readings: readonly GivenReading[],
  priors: SurveyPriors = USUAL_PRIORS,
): Result<SurveyAnswer> {
  const drawn = boxAtHand(installation, box, facts);
  const at: BoxAtHand =
    drawn.groupsFrom === "person" ? { ...drawn, groups: seenTogether(drawn.groups, readings) } : drawn;
  const wrong = tooMuch(at);
  if (wrong !== undefined) return failed(problem(wrong.code, "", wrong.message));
  const nominalV = Math.abs(legPhasors(supply)[0]?.re ?? 120);
  const sorted = sortReadings(at, readings);
  const menu = menuOf(at, sorted, priors, nominalV);
  const inference = new Inference(menu, sorted, nominalV);
  const fits = (without: ReadonlySet<NotedReading>): boolean => {
    const some = withoutReadings(sorted, without);
    return !new Inference(menuOf(at, some, priors, nominalV), some, nominalV).isContradicted;
  };
  const answer = new Account(at, sorted, inference, nominalV, fits).answer;
  const differs = new Set<string>(answer.mismatches.map(({ cable }) => cable));
  const takeOver = takeOverOf(installation, box, answer.cables, differs);
  return ok(takeOver === undefined ? answer : { ...answer, takeOver });
}

function tooMuch({ name, cables, groups }: BoxAtHand): { readonly code: string; readonly message: string } | undefined {
  if (cables.length === 0) return { code: "no-cables", message: wording.noCables(name) };
  if (cables.length > MOST_CABLES)
    return {
      code: "too-many-cables",
      message: wording.manyCables(cables.length, name, MOST_CABLES),
    };
  if (groups.length > MOST_GROUPS)
    return {
      code: "too-many-groups",
      message: wording.manyGroups(groups.length, MOST_GROUPS),
    };
  return undefined;
}

const MOST_OTHERS = 6;
/** Of what fits least badly, so many are asked for what speaks against them. */
const MOST_SUSPECTED = 6;

class Account {
  private readonly box: BoxAtHand;
  private readonly sorted: SortedReadings;
  private readonly inference: Inference;
  private readonly nominalV: number;
  /** Whether what is left without some readings contradicts no longer. */
  private readonly fits: (without: ReadonlySet<NotedReading>) => boolean;

  constructor(
    box: BoxAtHand,
    sorted: SortedReadings,
    inference: Inference,
    nominalV: number,
    fits: (without: ReadonlySet<NotedReading>) => boolean,
  ) {
    this.box = box;
    this.sorted = sorted;
    this.inference = inference;
    this.nominalV = nominalV;
    this.fits = fits;
  }

  get answer(): SurveyAnswer {
    const { box, sorted, inference, nominalV } = this;
    const isContradicted = inference.isContradicted;
    const cables = box.cables.map((_, cable) => this.cable(cable));
    const settled = !isContradicted && cables.every(({ role }) => role !== undefined);
    const { offered, refused } = isContradicted
      ? { offered: [], refused: [] }
      : proposalsFor(box, sorted, inference, nominalV);
    const [next, ...others] = offered;
    const all = inference.weight();
    return {
      box: { id: box.id, name: box.name },
      cables,
      known: box.cables.flatMap(({ id }, place) => {
        const words = sorted.atCable[place]?.find(({ kind }) => kind === "told")?.taken.words;
        return words === undefined ? [] : [{ cable: id, words }];
      }),
      items: this.items(),
      groups: box.groups.map((group) => group.map(({ id }) => id)),
      itemsFrom: box.groupsFrom,
      atStart: inference.count("start"),
      left: isContradicted ? 0 : inference.count("left"),
      bits: isContradicted ? 0 : inference.bits,
      surviving: isContradicted
        ? []
        : heaviest(inference, MOST_SHOWN).map(({ chosen, weight }) => {
            const roles = chosen.map((option) => roleOf(inference.option(option).lead));
            return { weight: weight / all, roles, words: this.words(chosen) };
          }),
      rejected: isContradicted ? [] : box.cables.flatMap((_, cable) => this.rejections(cable)),
      ...(isContradicted && { contradiction: this.contradiction() }),
      settled,
      notProved: notProvedOf(box, sorted, inference, cables),
      ...(next !== undefined && { next }),
      others: others.slice(0, MOST_OTHERS),
      refused,
      setAside: sorted.setAside,
      holdPoints: holdPointsOf(next),
      cautions: cautionsOf(sorted, next),
      mismatches: isContradicted ? [] : mismatchesOf(box, cables),
    };
  }

  private cable(place: number): SurveyedCable {
    const { inference } = this;
    const at = this.box.cables[place] as BoxAtHand["cables"][number];
    const shares = inference.isContradicted ? [] : [...(inference.shares[place] as Float64Array)];
    const may = shares
      .flatMap((weight, option) => (weight > 0 ? [{ role: roleOf(inference.option(option).lead), weight }] : []))
      .sort((p, q) => q.weight - p.weight);
    const [first] = may;
    const role = may.length === 1 ? first?.role : undefined;
    return {
      id: at.id,
      name: at.name,
      conductors: Object.entries(at.conductors)
        .sort(([, p], [, q]) => p.order - q.order)
        .map(([key, { colour, grounding }]) => ({
          key: key as SurveyedCable["conductors"][number]["key"],
          code: codeOf(at, key),
          words: COLOUR_WORDS[colour],
          grounding,
        })),
      may,
      ...(role !== undefined && { role }),
      evidence: this.evidence(place),
      ...(role !== undefined && this.isTold(place) && { isTold: true }),
      tag: tagOf(at.name, role),
    };
  }

  /** What was read of a cable, and with it among the joined. */
  private evidence(place: number): readonly string[] {
    const { atCable, joinings } = this.sorted;
    return [
      ...new Set([
        ...(atCable[place] ?? []).flatMap((read) => (read.kind === "figure" && read.weak ? [] : [read.taken.words])),
        ...joinings.flatMap(({ taken, cables }) => (cables.has(place) ? [taken.words] : [])),
      ]),
    ];
  }

  /** Said by a person, and no reading that settles was taken at it or with it joined. */
  private isTold(place: number): boolean {
    const { atCable, joinings } = this.sorted;
    const own = atCable[place] ?? [];
    return (
      own.some(({ kind }) => kind === "told") &&
      !own.some((read) => read.kind === "figure" && read.settles) &&
      !joinings.some(({ cables }) => cables.has(place))
    );
  }

  /** Usual roles of a cable that are ruled out, each with the reading that did it. */
  private rejections(cable: number): readonly SurveyRejection[] {
    const { inference, box } = this;
    const at = box.cables[cable] as BoxAtHand["cables"][number];
    return inference.assignments.options.flatMap(({ lead, odds }, option): readonly SurveyRejection[] => {
      if (odds[cable] === 0 || !this.isWorthSaying(cable, option)) return [];
      if ((inference.shares[cable] as Float64Array)[option] !== 0) return [];
      const { reading, because } = this.reasonAgainst(cable, option);
      const reason = wording.cannot(at.name, cannot(lead), because);
      const id: ReadingId | undefined = reading?.id;
      return [{ cable: at.id, role: roleOf(lead), reason, ...(id !== undefined && { reading: id }) }];
    });
  }

  private isWorthSaying(cable: number, option: number): boolean {
    const { lead } = this.inference.option(option);
    return this.inference.isUsual(cable, option) || (isSource(lead) && lead.off !== true && lead.kind === "supply");
  }

  private reasonAgainst(cable: number, option: number): { readonly because: string; readonly reading?: NotedReading } {
    const { inference, box } = this;
    const { lead } = inference.option(option);
    const own = inference.fitOf(cable, option).against[0];
    if (own !== undefined) return { because: own.words, reading: own };
    const giving = box.cables.flatMap((_, place) => {
      const left = leadsLeft(inference, place);
      return left.length > 0 && left.every((one) => inference.menu.givesPower.has(one)) ? [place] : [];
    });
    const [joined] = inference.joinedFit(cable, lead, patternOf(inference.menu, giving)).against;
    if (joined !== undefined && !isSource(lead)) return { because: joined.words, reading: joined };
    const other = box.cables.findIndex((_, place) => {
      const [only, ...more] = leadsLeft(inference, place);
      return (
        place !== cable &&
        more.length === 0 &&
        only !== undefined &&
        only.group === lead.group &&
        lead.group !== undefined
      );
    });
    if (other >= 0) return { because: wording.does(box.cables[other]?.name ?? "") };
    const supply = giving.find((place) => place !== cable);
    if (isSource(lead) && supply !== undefined) return { because: wording.bringsPower(box.cables[supply]?.name ?? "") };
    return { because: wording.noneFits };
  }

  /** What may be ticked as working: what is listed, and what nobody listed where that may be. */
  private items(): SurveyAnswer["items"] {
    const { specials } = this.inference.menu;
    const unlisted = specials.flatMap(({ lead, odds }, index) => {
      const option = this.inference.assignments.options.length - specials.length + index;
      return odds.some((_, cable) => this.inference.isUsual(cable, option)) ? lead.items : [];
    });
    return [...this.box.groups.flat(), ...unlisted];
  }

  private words(chosen: readonly number[]): string {
    return chosen
      .map((option, cable) =>
        wording.role(this.box.cables[cable]?.name ?? "", leadWords(this.inference.option(option).lead)),
      )
      .join("; ");
  }

  private contradiction(): SurveyContradiction {
    const { inference, sorted } = this;
    const isWeak = sorted.taken.some(({ instrument }) => instrument === "meter");
    return {
      words: wording.fitsNone,
      doubt: this.doubt(),
      leastBad: heaviest(inference, 2, true).map((one) => ({
        words: this.words(one.chosen),
        against: this.against(one),
      })),
      lookFor: [
        wording.repeat,
        wording.lookFor,
        ...(this.box.hasReference ? [] : [wording.noReference]),
        ...(isWeak ? [wording.highImpedance] : []),
        ...(this.box.groupsFrom === "drawing" ? [wording.drawnOtherwise] : []),
      ],
    };
  }

  /** Which readings to doubt first, each by what was read and where. */
  private doubt(): readonly (readonly string[])[] {
    const { inference, sorted, box } = this;
    const suspects = heaviest(inference, MOST_SUSPECTED, true).flatMap((one) => this.speakAgainst(one));
    const placeOf = (taken: NotedReading): string => {
      const at = sorted.atCable.findIndex((reads) => reads.some((read) => read.taken === taken));
      return at < 0 ? taken.words : wording.againstIt(box.cables[at]?.name ?? "", taken.words);
    };
    return smallestDoubt(
      readingsThatCount(sorted),
      suspects.map(({ taken }) => taken),
      this.fits,
    ).map((set) => set.map(placeOf));
  }

  private against(walked: Walked): readonly string[] {
    return this.speakAgainst(walked).map(({ cable, taken }) => wording.againstIt(cable, taken.words));
  }

  private speakAgainst({ chosen }: Walked): readonly { readonly cable: string; readonly taken: NotedReading }[] {
    const { inference, box } = this;
    const giving = chosen.flatMap((option, cable) =>
      inference.menu.givesPower.has(inference.option(option).lead) ? [cable] : [],
    );
    const energised = patternOf(inference.menu, giving);
    return chosen.flatMap((option, cable) => {
      const { lead } = inference.option(option);
      const fits = [inference.fitOf(cable, option), inference.joinedFit(cable, lead, energised)];
      return fits.flatMap(({ against }) => against.map((taken) => ({ cable: box.cables[cable]?.name ?? "", taken })));
    });
  }
}

/** A lead as the answer tells it. */
export const roleOf = (lead: Lead): SurveyRole => ({
  key: lead.key,
  kind: lead.kind,
  words: leadWords(lead),
  items: lead.items,
  ...(lead.reversed === true && { reversed: true }),
  ...(lead.openNeutral === true && { openNeutral: true }),
  ...(lead.off === true && { off: true }),
  ...(lead.travels === true && { travels: true }),
});

function cannot(lead: Lead): string {
  if (lead.kind === "feeds")
    return wording.cannotFeed(lead.items.length > 0 ? itemWords(lead.items) : wording.anythingElse);
  if (lead.kind === "leg") return wording.cannotGo(itemWords(lead.items));
  return wording.cannotBe(leadWords(lead));
}

import type { SurveyExposure, SurveyProposal, SurveyRefusedTest, SurveyStep } from "../../answers/survey.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { ConductorKey } from "../../model/ids.ts";
import type { SurveyArrangement, SurveyPoint, SurveyTest } from "../../model/survey.ts";
import { type BoxAtHand, type CableAtHand, noGroundWords } from "./box-at-hand.ts";
import { type Harm, leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource, type Wire } from "./lead.ts";
import { REFUSAL_WORDS as wording } from "./proposal-words.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CLOSED_BELOW_OHM, COSTS, LIVE_FROM_V } from "./survey-values.ts";
import { HOLDS, leadWords, listWords, STEPS } from "./survey-words.ts";

/** From what is touched with nothing live to what is read live; each costs more than the one before. */
export const CLASSES: readonly SurveyExposure[] = ["dead", "outlet", "open-box-live"];

/** Key of the refusal of readings to ground. */
export const NO_REFERENCE = "to-ground";

type Made = Omit<SurveyProposal, "why" | "cost">;

/** What every test of a box begins from: what is known and left open there, how a test is priced, refused and worded. */
export class ProposalGround {
  readonly refused: SurveyRefusedTest[] = [];
  protected readonly box: BoxAtHand;
  protected readonly sorted: SortedReadings;
  protected readonly inference: Inference;
  protected readonly nominalV: number;

  constructor(box: BoxAtHand, sorted: SortedReadings, inference: Inference, nominalV: number) {
    this.box = box;
    this.sorted = sorted;
    this.inference = inference;
    this.nominalV = nominalV;
  }

  protected made(made: Made): SurveyProposal {
    const cost =
      made.minutes + COSTS.powerCycle * made.powerCycles + COSTS.exposureClass * CLASSES.indexOf(made.exposure);
    return { ...made, why: "", cost };
  }

  /** @param remedy What to do first, where something can be done; begins with a space. */
  protected refuse(
    { key, words, remedy = "" }: { readonly key: string; readonly words: string; readonly remedy?: string },
    harm: Harm | undefined,
  ): void {
    if (harm === undefined) return;
    const guess = listWords([...new Set(harm.leads.map((lead) => wording.quoted(leadWords(lead))))]);
    const what = {
      short: wording.short(Math.round(harm.figure / 10) * 10),
      "double-voltage": wording.doubleVoltage(Math.round(harm.figure), this.nominalV),
      "back-feed": wording.backFeed,
    }[harm.because];
    const still = harm.leads.length > 1 ? wording.leftTogether(guess) : wording.left(guess);
    this.refused.push({ key, words, because: harm.because, reason: `${wording.notThis(still, what)}${remedy}` });
  }

  protected needsReference(): SurveyRefusedTest {
    return {
      key: NO_REFERENCE,
      words: wording.voltsToGround,
      because: "needs-reference",
      reason: wording.noReference(inSentence(noGroundWords(this.box))),
    };
  }

  /** Off and proved dead, no current in what is parted, apart: every test begins there. */
  protected dead(): readonly SurveyStep[] {
    return [this.off(), held("A1", HOLDS.current), { arrangement: "A1", words: STEPS.apart }];
  }

  protected off(): SurveyStep {
    return held("A1", HOLDS.dead);
  }

  /** Everyone clear, and on. */
  protected powerOn(arrangement: "A2" | "A3"): readonly SurveyStep[] {
    return [held("A1", HOLDS.clear), { arrangement, words: STEPS.powerOn }];
  }

  protected noShort(): SurveyStep {
    return held("A1", HOLDS.noShort);
  }

  protected offAgain(): SurveyStep {
    return held("A1", HOLDS.deadAgain);
  }

  /** Found open or through a load from each hot to the white, dead: whatever could close its wires did not. */
  protected readonly isOpenDead = (cable: number): boolean => {
    const hots: readonly Wire[] = this.cable(cable).isThreeWire ? ["b", "r"] : ["b"];
    return hots.every((hot) => {
      const read = this.ohmsOf(cable, hot);
      return read.length > 0 && read.every((ohm) => ohm > CLOSED_BELOW_OHM);
    });
  };

  /** Ohms that were read from a hot to the white. */
  protected ohmsOf(cable: number, hot: Wire): readonly number[] {
    return (this.sorted.atCable[cable] ?? []).flatMap((read) => {
      if (read.kind !== "figure" || read.probe.kind !== "ohms") return [];
      const pair: readonly string[] = [read.probe.from, read.probe.to];
      return pair.includes(hot) && pair.includes("w") ? [read.value] : [];
    });
  }

  protected places(): readonly number[] {
    return this.box.cables.map((_, cable) => cable);
  }

  protected unsettled(): readonly number[] {
    return this.places().filter((cable) => leadsLeft(this.inference, cable).length > 1);
  }

  protected cable(place: number): CableAtHand {
    return this.box.cables[place] as CableAtHand;
  }

  protected names(cables: readonly number[]): string {
    return listWords(cables.map((cable) => this.cable(cable).name));
  }

  /** A low-impedance meter found it live. */
  protected isLive(cable: number): boolean {
    return this.isRead(cable, "volts", undefined, undefined, true) && leadsLeft(this.inference, cable).every(isSource);
  }

  protected isRead(cable: number, kind: "ohms" | "volts", from?: Wire, to?: Wire | "ground", live = false): boolean {
    return (this.sorted.atCable[cable] ?? []).some((read) => {
      if (read.kind !== "figure" || read.weak || read.probe.kind !== kind) return false;
      const pair = [read.probe.from, read.probe.to];
      if (from !== undefined && !(pair.includes(from) && to !== undefined && pair.includes(to))) return false;
      return !live || read.value >= LIVE_FROM_V;
    });
  }

  protected pairTest(cable: number, from: Wire, to: Wire | "ground"): SurveyTest {
    const at = this.cable(cable);
    const point = (wire: Wire | "ground"): SurveyPoint => {
      if (wire === "ground") return "ground";
      const key = [...at.wires].find(([, one]) => one === wire)?.[0] as ConductorKey;
      return { cable: at.id, conductor: key };
    };
    return { kind: "pair", from: point(from), to: point(to) };
  }
}

const held = (arrangement: SurveyArrangement, { id, words }: (typeof HOLDS)[keyof typeof HOLDS]): SurveyStep => ({
  arrangement,
  words,
  hold: id,
});

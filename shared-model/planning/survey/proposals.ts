import type { SurveyProposal, SurveyRefusedTest } from "../../answers/survey.ts";
import type { BoxAtHand } from "./box-at-hand.ts";
import { allOn, deadOutcomes, gainAtCable, gainOfAllDead, gainOfAllLive } from "./gains.ts";
import { leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource, type Wire } from "./lead.ts";
import { CLASSES } from "./proposal-ground.ts";
import { TEST_WORDS as wording } from "./proposal-words.ts";
import { TrapProposals } from "./proposals-trap.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CLOSED_BELOW_OHM, LEAST_BITS } from "./survey-values.ts";
import { STEPS } from "./survey-words.ts";
import { withWhy } from "./why-this-test.ts";

/** Tests that would tell something, the best first, and those that may not be done. */
export interface Proposals {
  readonly offered: readonly SurveyProposal[];
  readonly refused: readonly SurveyRefusedTest[];
}

/** Weighs every test that can be done next at a box: what it is expected to tell against what it costs. */
export function proposalsFor(
  box: BoxAtHand,
  sorted: SortedReadings,
  inference: Inference,
  nominalV: number,
): Proposals {
  const planner = new Planner(box, sorted, inference, nominalV);
  const offered = [
    ...planner.deadOhms(),
    ...planner.ohmsAgain(),
    ...planner.liveVolts(),
    ...planner.trap(),
    ...planner.breakers(),
    ...planner.joinings(),
  ].filter(({ bits }) => bits >= LEAST_BITS);
  // Dead tests before others that weigh the same; after all others, what is cheap because it tells next to nothing.
  const most = Math.max(0, ...offered.map(({ bits }) => bits));
  const score = ({ bits, cost }: SurveyProposal): number => bits / cost - (bits < WORTH_SHARE * most ? 1e6 : 0);
  const byScore = offered.sort(
    (p, q) => score(q) - score(p) || CLASSES.indexOf(p.exposure) - CLASSES.indexOf(q.exposure),
  );
  return {
    offered: withWhy(
      byScore,
      box.cables.map(({ id }) => id),
      inference,
      nominalV,
    ),
    refused: planner.refused,
  };
}

/** A test that tells less than this share of the most telling one is not worth doing first. */
const WORTH_SHARE = 0.1;

/** Minutes of work: for the whole of a test and for each cable or thing that is read. Modelling values. */
const MINUTES = {
  ohms: 2,
  eachOhms: 0.5,
  again: 5,
  volts: 3,
  eachVolts: 1,
  breaker: 4,
} as const;

/** Readings of a cable that was about 0, at most: over, back, and over once more. */
const MOST_TURNS = 4;

/** The tests themselves, by what is read and in which arrangement. */
class Planner extends TrapProposals {
  /** Ohms of every cable that may hold a light, with the power off and nothing plugged in. */
  deadOhms(): readonly SurveyProposal[] {
    const cables = this.unsettled().filter((cable) => !this.isRead(cable, "ohms", "b", "w"));
    if (cables.length === 0) return [];
    const around = allOn(this.inference);
    const bits = gainOfAllDead(this.inference, cables, (lead) => deadOutcomes(lead, around, this.nominalV));
    const tests = cables.flatMap((cable) => [
      this.pairTest(cable, "b", "w"),
      ...(this.cable(cable).isThreeWire ? [this.pairTest(cable, "r", "w")] : []),
    ]);
    return [
      this.made({
        key: "ohms",
        words: wording.ohms(this.names(cables)),
        bits,
        minutes: MINUTES.ohms + tests.length * MINUTES.eachOhms,
        powerCycles: 0,
        exposure: "dead",
        steps: [
          ...this.dead(),
          { arrangement: "A1", words: STEPS.unplugged },
          {
            arrangement: "A1",
            words: wording.ohmsStep(this.names(cables)),
          },
        ],
        wanted: {
          arrangement: "A1",
          instrument: "continuity",
          nothingPlugged: true,
          tests,
        },
      }),
    ];
  }

  /** About 0 from hot to white: turned over, the switch of a loop opens it; turned back, it closes it again. */
  ohmsAgain(): readonly SurveyProposal[] {
    return this.unsettled().flatMap((cable) => {
      const read = this.ohmsOf(cable, "b");
      if (!read.some((ohm) => ohm <= CLOSED_BELOW_OHM) || read.length >= MOST_TURNS) return [];
      const { id, name } = this.cable(cable);
      const around = { nothingPlugged: true, switches: [] };
      return [
        this.made({
          key: `again ${id}`,
          words: wording.again(name),
          bits: gainAtCable(this.inference, cable, (lead) => deadOutcomes(lead, around, this.nominalV)),
          minutes: MINUTES.again,
          powerCycles: 0,
          exposure: "dead",
          steps: [
            ...this.dead(),
            { arrangement: "A1", words: wording.turnOver },
            {
              arrangement: "A1",
              words: wording.againStep(name),
            },
          ],
          wanted: { arrangement: "A1", instrument: "continuity", tests: [this.pairTest(cable, "b", "w")] },
        }),
      ];
    });
  }

  /** Volts of every cable that was not read yet, apart and energised, one pair open at a time. */
  liveVolts(): readonly SurveyProposal[] {
    const pairs = (cable: number): readonly (readonly [Wire, Wire | "ground"])[] => {
      const all: (readonly [Wire, Wire | "ground"])[] = [["b", "w"]];
      if (this.box.hasReference) all.push(["b", "ground"], ["w", "ground"]);
      if (this.cable(cable).isThreeWire) all.push(["r", "w"], ["b", "r"]);
      return all.filter(([from, to]) => !this.isRead(cable, "volts", from, to));
    };
    const cables = this.places().filter((cable) => {
      const isNew = !this.isRead(cable, "volts", "b", "w");
      return (
        leadsLeft(this.inference, cable).some(isSource) &&
        (isNew || this.unsettled().includes(cable)) &&
        pairs(cable).length > 0
      );
    });
    if (cables.length === 0) return [];
    // What is a supply by everything else must be read live before anything is joined to it, though that tells nothing new.
    const isAwaited = cables.some((cable) => leadsLeft(this.inference, cable).every(isSource) && !this.isLive(cable));
    const bits = Math.max(gainOfAllLive(this.inference, this.nominalV), isAwaited ? LEAST_BITS : 0);
    const needs = this.box.hasReference ? [] : [this.needsReference()];
    this.refused.push(...needs);
    return [
      this.made({
        key: "volts",
        words: wording.volts(this.names(cables)),
        bits,
        minutes: MINUTES.volts + cables.length * MINUTES.eachVolts,
        powerCycles: 1,
        exposure: "open-box-live",
        steps: [
          ...this.dead(),
          { arrangement: "A1", words: STEPS.switchesOn },
          ...this.powerOn("A2"),
          {
            arrangement: "A2",
            words: wording.voltsStep(this.names(cables)),
          },
          this.offAgain(),
        ],
        wanted: {
          arrangement: "A2",
          instrument: "low-impedance-meter",
          tests: cables.flatMap((cable) => pairs(cable).map(([from, to]) => this.pairTest(cable, from, to))),
        },
      }),
    ];
  }

  /** More than one live cable: which breaker kills which. */
  breakers(): readonly SurveyProposal[] {
    const live = this.places().filter(
      (cable) => this.isLive(cable) && leadsLeft(this.inference, cable).every(isSource),
    );
    const asked = live.filter((cable) => !this.sorted.breakers.some((one) => one.cable === cable));
    if (live.length < 2 || asked.length === 0) return [];
    return [
      this.made({
        key: "breaker",
        words: wording.breaker(this.names(live)),
        // One circuit or two is taken as even: nothing in the box tells.
        bits: 1,
        minutes: MINUTES.breaker * live.length,
        powerCycles: 1,
        exposure: "open-box-live",
        steps: [
          ...this.dead(),
          ...this.powerOn("A2"),
          {
            arrangement: "A2",
            words: wording.breakerOff,
          },
          { arrangement: "A2", words: wording.breakerRead(this.names(live)) },
          this.offAgain(),
        ],
        wanted: {
          arrangement: "A2",
          instrument: "low-impedance-meter",
          tests: asked.map((cable) => ({
            kind: "breaker",
            cable: this.cable(cable).id,
            breaker: "" as never,
            wentDead: false,
          })),
        },
      }),
    ];
  }
}

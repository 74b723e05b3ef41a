import type { SurveyProposal, SurveyRefusedTest } from "../../answers/survey.ts";
import type { SurveySwitch } from "../../model/survey.ts";
import type { BoxAtHand } from "./box-at-hand.ts";
import {
  allOn,
  deadOutcomes,
  gainAtCable,
  gainOfAllDead,
  gainOfAllLive,
  gainOfJoining,
  groundOutcomes,
  lampOutcomes,
} from "./gains.ts";
import { harmOfJoining, harmOfSwitch, harmOfTestLamp, leadsLeft } from "./harm.ts";
import type { Inference } from "./inference.ts";
import { isSource, type Wire } from "./lead.ts";
import { CLASSES, ProposalGround } from "./proposal-ground.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { LEAST_BITS } from "./survey-values.ts";
import { STEPS } from "./survey-words.ts";

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
    offered: byScore.map((one, index) => planner.withWhy(one, index === 0 ? byScore[1] : byScore[0])),
    refused: planner.refused,
  };
}

/** A test that tells less than this share of the most telling one is not worth doing first. */
const WORTH_SHARE = 0.1;

/** Minutes of work: for the whole of a test and for each cable or thing that is read. Modelling values. */
const MINUTES = {
  ohms: 2,
  eachOhms: 0.5,
  volts: 3,
  eachVolts: 1,
  join: 7,
  eachJoined: 1,
  eachItem: 0.5,
  look: 15,
  testLamp: 8,
  breaker: 4,
} as const;

/** The tests themselves, by what is read and in which arrangement. */
class Planner extends ProposalGround {
  withWhy(made: SurveyProposal, against: SurveyProposal | undefined): SurveyProposal {
    const left = this.inference.bits;
    const share = `It is expected to tell ${made.bits.toFixed(2)} of the ${left.toFixed(2)} bits that are left, at a cost of ${round(made.cost)}`;
    const other =
      against === undefined
        ? ""
        : `; ${lowered(against.words)} would tell ${against.bits.toFixed(2)} at ${round(against.cost)}`;
    const dead = made.exposure === "dead" ? " Nothing is live while it is done." : "";
    return { ...made, why: `${share}${other}.${dead}` };
  }

  /** Ohms of every cable that may hold a light, with the power off and nothing plugged in. */
  deadOhms(): readonly SurveyProposal[] {
    const cables = this.unsettled().filter((cable) => !this.isRead(cable, "ohms", "b", "w"));
    if (cables.length === 0) return [];
    const around = allOn(this.inference);
    const bits = gainOfAllDead(this.inference, cables, (lead) => deadOutcomes(lead, around, this.nominalV));
    return [
      this.made({
        key: "ohms",
        words: `Measure ohms from hot to white of ${this.names(cables)}, dead`,
        bits,
        minutes: MINUTES.ohms + cables.length * MINUTES.eachOhms,
        powerCycles: 0,
        exposure: "dead",
        steps: [
          ...this.dead(),
          { arrangement: "A1", words: STEPS.unplugged },
          { arrangement: "A1", words: `Ohms from hot to white of ${this.names(cables)}. Open proves nothing.` },
        ],
        wanted: {
          arrangement: "A1",
          instrument: "continuity",
          nothingPlugged: true,
          tests: cables.map((cable) => this.pairTest(cable, "b", "w")),
        },
      }),
    ];
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
    const bits = gainOfAllLive(this.inference, this.nominalV);
    const needs = this.box.hasReference ? [] : [this.needsReference()];
    this.refused.push(...needs);
    return [
      this.made({
        key: "volts",
        words: `Energise once and read volts at ${this.names(cables)} by low-impedance meter`,
        bits,
        minutes: MINUTES.volts + cables.length * MINUTES.eachVolts,
        powerCycles: 1,
        exposure: "open-box-live",
        steps: [
          ...this.dead(),
          { arrangement: "A2", words: STEPS.powerOn },
          {
            arrangement: "A2",
            words: `Qualified person, meter only, caps on but for the pair that is read, one pair at a time, no touching: ${this.names(cables)}.`,
          },
          { arrangement: "A1", words: STEPS.offAgain, hold: true },
        ],
        wanted: {
          arrangement: "A2",
          instrument: "low-impedance-meter",
          tests: cables.flatMap((cable) => pairs(cable).map(([from, to]) => this.pairTest(cable, from, to))),
        },
      }),
    ];
  }

  /** Reversed supply or white-fed loop: looked into the luminaire's box, ohms to ground, or a test lamp; never a switch. */
  trap(): readonly SurveyProposal[] {
    const { inference, nominalV } = this;
    const found: SurveyProposal[] = [];
    for (const cable of this.places()) {
      if (!this.isLive(cable)) continue;
      const left = leadsLeft(inference, cable);
      const isTrap = left.some(({ kind }) => kind === "loop-fed") && left.some(({ kind }) => kind !== "loop-fed");
      const name = this.cable(cable).name;
      if (!left.every(({ kind }) => kind === "loop-fed"))
        this.refuse(
          `switch ${this.cable(cable).id}`,
          `Put a switch between the wires of ${name}`,
          harmOfSwitch(inference, cable, nominalV),
        );
      if (!isTrap) continue;
      const id = this.cable(cable).id;
      found.push(
        this.made({
          key: `look ${id}`,
          words: `Look into the luminaire's box for the feed of ${name}, power off`,
          bits: gainAtCable(inference, cable, ({ kind }) => new Map([[String(kind === "loop-fed"), 1]])),
          minutes: MINUTES.look,
          powerCycles: 0,
          exposure: "dead",
          steps: [
            { arrangement: "A1", words: STEPS.powerOff, hold: true },
            {
              arrangement: "A1",
              words: "Open the luminaire's box. Is the feed there, with the white of this cable spliced to a black?",
            },
          ],
          wanted: { arrangement: "A1", instrument: "by-eye", tests: [{ kind: "look", cable: id, feedThere: false }] },
        }),
        ...this.groundOhms(cable),
      );
      const harm = harmOfTestLamp(inference, cable, nominalV);
      const words = `Put a 60 W test lamp across ${name} while dead, then energise`;
      if (harm !== undefined) {
        this.refuse(`test-lamp ${id}`, words, harm);
        continue;
      }
      found.push(
        this.made({
          key: `test-lamp ${id}`,
          words,
          bits: gainAtCable(inference, cable, (lead) => lampOutcomes(lead, nominalV)),
          minutes: MINUTES.testLamp,
          powerCycles: 1,
          exposure: "outlet",
          steps: [
            ...this.dead(),
            {
              arrangement: "A1",
              words: `Connect the test lamp through a fused lead across the two wires of ${name}, capped.`,
            },
            { arrangement: "A2", words: STEPS.powerOn },
            {
              arrangement: "A2",
              words:
                "Full brightness and about 120 V: a supply with hot and neutral reversed. Both lamps dim, 40 to 80 V: a loop, fed from the light. An LED lamp beyond may stay dark.",
            },
            { arrangement: "A1", words: STEPS.offAgain, hold: true },
          ],
          wanted: {
            arrangement: "A2",
            instrument: "test-lamp",
            tests: [{ kind: "test-lamp", cable: id, lightGlows: false }],
          },
        }),
      );
    }
    return found;
  }

  /** Dead: a neutral that comes from the panel has no ohms to ground, the far side of a lamp has some. */
  private groundOhms(cable: number): readonly SurveyProposal[] {
    const name = this.cable(cable).name;
    if (!this.cable(cable).hasGround || this.isRead(cable, "ohms", "b", "ground")) return [];
    return [
      this.made({
        key: `ground ${this.cable(cable).id}`,
        words: `Measure ohms from black and from white of ${name} to ground, dead`,
        bits: gainAtCable(this.inference, cable, (lead) => groundOutcomes(lead, this.nominalV)),
        minutes: MINUTES.ohms,
        powerCycles: 0,
        exposure: "dead",
        steps: [
          ...this.dead(),
          {
            arrangement: "A1",
            words: `Ohms from each wire of ${name} to ground. About 0 is a neutral from the panel, 10 to 40 a filament lamp; open may be an LED lamp or a breaker that is off.`,
          },
        ],
        wanted: {
          arrangement: "A1",
          instrument: "continuity",
          tests: (["b", "w"] as const).map((wire) => this.pairTest(cable, wire, "ground")),
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
        words: `Switch off one breaker at a time and read ${this.names(live)} again`,
        // One circuit or two is taken as even: nothing in the box tells.
        bits: 1,
        minutes: MINUTES.breaker,
        powerCycles: 1,
        exposure: "open-box-live",
        steps: [
          {
            arrangement: "A2",
            words: "One breaker off at a time, the others on. Stop if something unexpected goes dead.",
          },
          { arrangement: "A2", words: `Read ${this.names(live)} by low-impedance meter, one pair at a time.` },
          { arrangement: "A1", words: STEPS.offAgain, hold: true },
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

  /** One or two cables joined to the proved supply, while off; on again, what works is listed. */
  joinings(): readonly SurveyProposal[] {
    const { inference, nominalV } = this;
    const supply = this.places().find(
      (cable) => this.isLive(cable) && leadsLeft(inference, cable).every((lead) => inference.menu.givesPower.has(lead)),
    );
    if (supply === undefined) return [];
    const may = this.unsettled().filter((cable) => {
      if (cable === supply) return false;
      const harm = harmOfJoining(inference, [supply, cable], nominalV);
      if (harm === undefined) return true;
      this.refuse(
        `join ${this.cable(cable).id}`,
        `Join ${this.cable(cable).name} to the supply ${this.cable(supply).name}`,
        harm,
      );
      return false;
    });
    const secondFeed = this.places().some((cable) => cable !== supply && leadsLeft(inference, cable).some(isSource));
    // Where more was listed than there are cables, a cable may hold several: one at a time tells which.
    const tooMany = this.box.groups.length > this.box.cables.length - 1;
    const around = allOn(inference);
    const sets: (readonly number[])[] = may.map((cable) => [cable]);
    if (!secondFeed && !tooMany)
      for (const [index, one] of may.entries()) for (const other of may.slice(index + 1)) sets.push([one, other]);
    const seen = new Set<string>();
    const gains = new Map<number, number>();
    const found: SurveyProposal[] = [];
    let budget = MOST_SOLVED;
    for (const cables of sets) {
      const kinds = cables.map((cable) => inference.alike(cable)).sort((p, q) => p - q);
      if (seen.has(kinds.join())) continue;
      seen.add(kinds.join());
      const ways = cables.reduce((product, cable) => product * leadsLeft(inference, cable).length, 1);
      if (cables.length > 1) {
        budget -= ways;
        if (budget < 0) break;
      }
      const bits = gainOfJoining(inference, cables, around);
      for (const cable of cables) if (cables.length === 1) gains.set(cable, bits);
      const harm = harmOfJoining(inference, [supply, ...cables], nominalV);
      if (harm === undefined) found.push(this.joining(supply, cables, bits, around.switches));
    }
    return found;
  }

  private joining(
    supply: number,
    cables: readonly number[],
    bits: number,
    switches: readonly SurveySwitch[],
  ): SurveyProposal {
    const ids = [supply, ...cables].map((cable) => this.cable(cable).id);
    const names = this.names(cables);
    const on = [...new Set(switches.map(({ switch: name }) => name))];
    return this.made({
      key: `join ${ids.slice(1).join(" ")}`,
      words: `Join ${names} to the supply ${this.cable(supply).name} and list what works`,
      bits,
      minutes: MINUTES.join + cables.length * MINUTES.eachJoined + this.box.groups.flat().length * MINUTES.eachItem,
      powerCycles: 1,
      exposure: "outlet",
      steps: [
        ...this.dead(),
        {
          arrangement: "A1",
          words: `Join ${names} to ${this.cable(supply).name}: hot to hot, white to white, grounds as they are. Cap the joints and everything else.`,
        },
        { arrangement: "A3", words: STEPS.powerOn },
        {
          arrangement: "A3",
          words: `List every outlet and light that works${on.length === 0 ? "" : ", switches away from the box on"}. Touch nothing in the box.`,
        },
        { arrangement: "A1", words: STEPS.offAgain, hold: true },
      ],
      wanted: {
        arrangement: "A3",
        instrument: "plug-in-tester",
        joined: ids,
        tests: [{ kind: "works", items: [] }],
      },
    });
  }
}

/** Ways to be solved for pairs of cables, at most: each costs some hundredths of a millisecond. */
const MOST_SOLVED = 400;

const round = (figure: number): string => String(Math.round(figure * 10) / 10);
const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

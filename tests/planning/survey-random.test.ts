/**
 * Random boxes, each with a truth of its own. The tool is driven by its own proposals and answered by the truth without
 * error, by tables and circuits of this file alone: the truth is never ruled out, and nothing that is proposed would short
 * under any hypothesis that is left. The sums over arrangements are compared with listing them one by one, and the number of
 * tests with the best that an exhaustive search finds.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SurveyAnswer, SurveyProposal, SurveyRole } from "../../shared-model/answers/survey.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { SurveyGroup, SurveyTest } from "../../shared-model/model/survey.ts";
import { boxAtHand } from "../../shared-model/planning/survey/box-at-hand.ts";
import { Inference } from "../../shared-model/planning/survey/inference.ts";
import { menuOf } from "../../shared-model/planning/survey/menu-of-box.ts";
import { sortReadings } from "../../shared-model/planning/survey/sort-readings.ts";
import type { GivenReading } from "../../shared-model/planning/survey/survey-box.ts";
import { USUAL_PRIORS } from "../../shared-model/planning/survey/survey-values.ts";
import { analyse } from "../../shared-model/solver/network/network.ts";
import { boxId, cableId } from "../builders/drawing.ts";
import { withRoom } from "../same-seed.ts";
import {
  keyOf,
  lightItem,
  ohmsOf,
  outletItem,
  PLAIN_PRIORS,
  survey,
  type Truth,
  triple,
  unknownBox,
  voltsOf,
  works,
} from "./survey-bench.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const BOXES = LONG ? 4_000 : 300;
const BOX = new Map([2, 3, 4, 5, 6].map((count) => [count, unknownBox(count)]));
const boxOf = (count: number) => BOX.get(count) as ReturnType<typeof unknownBox>;

const lamp = fc.constantFrom("filament", "led", "none" as const);
const source = fc.constantFrom<Truth["is"]>("supply", "supply", "supply", "supply", "reversed", "open-neutral");
const aCase = fc.record({
  count: fc.integer({ min: 2, max: 6 }),
  source,
  /** Where it falls, and whether a second source, a loop or a dead cable takes the place of what is listed. */
  order: fc.array(fc.nat(1000), { minLength: 6, maxLength: 6 }),
  second: fc.nat(9),
  odd: fc.array(fc.nat(29), { minLength: 6, maxLength: 6 }),
  kinds: fc.array(fc.constantFrom("one", "one", "two", "light"), { minLength: 6, maxLength: 6 }),
  lamps: fc.array(lamp, { minLength: 6, maxLength: 6 }),
  lampKnown: fc.boolean(),
  isLoopFed: fc.nat(14),
  volts: fc.double({ min: 114, max: 126, noNaN: true }),
});
type Case = typeof aCase extends fc.Arbitrary<infer T> ? T : never;

interface World {
  readonly count: number;
  readonly groups: readonly SurveyGroup[];
  readonly truths: readonly Truth[];
  readonly switchesHere: number;
  readonly volts: number;
}

function worldOf({ count, source: first, order, second, odd, kinds, lamps, lampKnown, isLoopFed, volts }: Case): World {
  const groups = Array.from({ length: count - 1 }, (_, index): SurveyGroup => {
    const name = `R${index}`;
    if (kinds[index] === "two") return [outletItem(name), outletItem(`${name}b`)];
    if (kinds[index] !== "light") return [outletItem(name)];
    const known = lampKnown ? { lamp: lamps[index] as "led" } : {};
    return [lightItem(`L${index}`, { switches: [`S${index}`], ...known })];
  });
  const isTwo = second === 0 && count > 2;
  const isLoop = isLoopFed === 0;
  const rest = groups.map((_, group): Truth => {
    const at = odd[group] as number;
    if (at === 0) return { is: "dead" };
    if (at === 1) return { is: "loop-open" };
    if (at === 2) return { is: "loop-closed" };
    return { is: "feeds", group, lamp: lamps[group] as "led" };
  });
  const sources: Truth[] = [{ is: isLoop ? (second > 4 ? "loop-fed-led" : "loop-fed-filament") : first } as Truth];
  if (isTwo) sources.push({ is: "supply" });
  const all = [...sources, ...rest.slice(0, count - sources.length)];
  const places = all.map((_, index) => index).sort((p, q) => (order[p] as number) - (order[q] as number) || p - q);
  return { count, groups, truths: places.map((place) => all[place] as Truth), switchesHere: isLoop ? 1 : 0, volts };
}

const nameOf = (place: number): string => `C${place + 1}`;

/** A reading of the truth for one test that is asked for. */
function answerTo(test_: SurveyTest, { wanted }: SurveyProposal, world: World): GivenReading {
  const { truths, groups, volts } = world;
  const all = groups.flat().flatMap(({ switches = [] }) => switches);
  const switches = all.map((name) => ({ switch: name, on: true }));
  const placeOf = (id: string): number => truths.findIndex((_, place) => cableId(nameOf(place)) === id);
  const base = {
    arrangement: wanted.arrangement,
    ...(wanted.joined !== undefined && { joined: wanted.joined }),
    ...(wanted.nothingPlugged === true && { nothingPlugged: true }),
    switches,
  };
  const given = (value: string, done: SurveyTest): GivenReading => ({
    instrument: wanted.instrument,
    value,
    survey: { ...base, test: done },
  });
  switch (test_.kind) {
    case "pair": {
      const cable = [test_.from, test_.to].flatMap((point) => (point === "ground" ? [] : [point.cable]))[0] as string;
      const truth = truths[placeOf(cable)] as Truth;
      const wires = [test_.from, test_.to].map((point) => (point === "ground" ? "g" : point.conductor)).join(" ");
      const index = ["bk wh", "bk g", "wh g"].indexOf(wires);
      if (wanted.arrangement === "A2") return given(String(voltsOf(truth, volts)[index]), test_);
      return given(String(index === 0 ? ohmsOf(truth) : toGround(truth)[index - 1]), test_);
    }
    case "works": {
      const joined = (wanted.joined ?? []).map((id) => truths[placeOf(id)] as Truth);
      const on = joined.some(({ is }) => is === "supply" || is === "reversed");
      const items = joined.flatMap((truth) => {
        if (truth.is !== "feeds" || !on) return [];
        return (groups[truth.group] ?? []).filter(({ kind }) => kind === "outlet" || truth.lamp !== "none");
      });
      return given("", { kind: "works", items: items.map(({ id }) => id) });
    }
    case "look":
      return given("", { ...test_, feedThere: (truths[placeOf(test_.cable)] as Truth).is.startsWith("loop-fed") });
    case "test-lamp": {
      const { is } = truths[placeOf(test_.cable)] as Truth;
      const across =
        is === "loop-fed-filament" ? volts / 2 : is === "loop-fed-led" || is === "open-neutral" ? 0 : volts;
      return given(String(across), { ...test_, lightGlows: is === "loop-fed-filament" });
    }
    case "breaker":
      return given("", { ...test_, breaker: "Q1" as never, wentDead: true });
    case "current":
      return given("0", test_);
  }
}

/** Ohms to ground of black and of white, power off: a neutral comes from the panel, where it is bonded. */
function toGround({ is }: Truth): readonly (number | "open")[] {
  if (is === "supply") return ["open", 0.1];
  if (is === "reversed") return [0.1, "open"];
  return is === "loop-fed-filament" ? [18, "open"] : ["open", "open"];
}

const OHM = 0.1;

/** Volts and amperes with the joined cables of a hypothesis on, straight from the network solver: every source on both legs. */
function worstOf(roles: readonly SurveyRole[], lampOhm: number): { readonly amps: number; readonly volts: number } {
  let [amps, volts] = [0, 0];
  const live = roles.filter((role) => role.off !== true);
  const wires = live.flatMap((role) => feedsOf(role));
  for (let legs = 0; legs < 1 << wires.length; legs++) {
    const sources = wires.map(({ to, sign }, index) => ({
      plus: to === "b" ? 0 : 1,
      minus: -1,
      re: 126 * sign * ((legs >> index) & 1 ? -1 : 1),
      im: 0,
      g: 1 / OHM,
      bS: 0,
    }));
    const neutrals = live.flatMap((role) => neutralsOf(role));
    const ends = [...neutrals.map(({ from }) => (from === "b" ? 0 : 1)), 0];
    const factor = analyse({
      nodeCount: 2,
      a: Int32Array.from(ends),
      b: Int32Array.from([...neutrals.map(() => -1), 1]),
      g: Float64Array.from([...neutrals.map(({ ohm }) => 1 / ohm), 1 / lampOhm]),
      bS: new Float64Array(ends.length),
      sources,
    });
    const { re } = factor.operatingPoint();
    volts = Math.max(volts, Math.abs((re[0] as number) - (re[1] as number)));
    for (const { plus, re: emf, g } of sources) amps = Math.max(amps, Math.abs(emf - (re[plus] as number)) * g);
  }
  return { amps, volts };
}

type Feed = { readonly to: "b" | "w"; readonly sign: 1 | -1 };
const feedsOf = ({ kind, reversed }: SurveyRole): readonly Feed[] => {
  if (kind === "supply" || kind === "switched-supply") return [{ to: reversed === true ? "w" : "b", sign: 1 }];
  if (kind === "multiwire-supply")
    return [{ to: "b", sign: 1 }, ...(reversed === true ? [{ to: "w", sign: -1 } as const] : [])];
  return kind === "loop-fed" ? [{ to: "w", sign: 1 }] : [];
};
const neutralsOf = ({
  kind,
  reversed,
  openNeutral,
}: SurveyRole): readonly { readonly from: "b" | "w"; readonly ohm: number }[] => {
  if (kind === "loop-fed") return [{ from: "b", ohm: 240 }];
  if (!kind.endsWith("supply") || openNeutral === true || (kind === "multiwire-supply" && reversed === true)) return [];
  return [{ from: reversed === true ? "b" : "w", ohm: OHM }];
};

/** Complaints about what is offered: a short of more than 100 A, or 240 V on what is made for 120. */
function harmOf(
  { next, others, surviving, cables }: SurveyAnswer,
  readings: readonly GivenReading[],
): readonly string[] {
  const offers = next === undefined ? [] : [next, ...others];
  return offers.flatMap(({ words, wanted, key }) =>
    surviving.flatMap(({ roles }) => {
      if (wanted.arrangement === "A4") return [`${words}: a switch`];
      const at = (id: string): SurveyRole => roles[cables.findIndex((cable) => cable.id === id)] as SurveyRole;
      const lamped = key.startsWith("test-lamp")
        ? wanted.tests.flatMap((one) => ("cable" in one ? [one.cable] : []))
        : [];
      const joined = (wanted.joined ?? []).map(at);
      // The loop of a switch that is on is a wire from black to white, unless that was measured and is not so.
      const loop = wanted.joined?.find((id) => at(id).kind === "loop" && !isFoundOpen(id, readings));
      if (loop !== undefined) return [`${words}: ${loop} may be a closed loop`];
      const worst =
        joined.length > 0 ? worstOf(joined, 240) : lamped.length > 0 ? worstOf(lamped.map(at), 240) : undefined;
      return worst !== undefined && (worst.amps > 100 || worst.volts > 180)
        ? [`${words}: ${worst.amps} A, ${worst.volts} V under ${roles.map((role) => role.key).join(", ")}`]
        : [];
    }),
  );
}

/** Read open, or through a load, from black to white with the power off. */
const isFoundOpen = (id: string, readings: readonly GivenReading[]): boolean => {
  const ohmsRead = readings.flatMap(({ instrument, value, survey: { test: asked } }) =>
    instrument === "continuity" &&
    asked.kind === "pair" &&
    asked.from !== "ground" &&
    asked.to !== "ground" &&
    asked.from.cable === id
      ? [value]
      : [],
  );
  return ohmsRead.length > 0 && ohmsRead.every((value) => value === "open" || Number(value) > 2);
};

const MOST_STEPS = 12;

test(`under readings without error the truth is never ruled out and nothing shorts, ${BOXES} boxes driven by the proposals`, {
  timeout: withRoom(600_000),
}, () => {
  let settled = 0;
  let steps = 0;
  fc.assert(
    fc.property(aCase, (one) => {
      const world = worldOf(one);
      // Some cables are read beforehand and others not, so that a second feed may still be among those to be joined.
      const readings: GivenReading[] = world.truths.flatMap((truth, cable) =>
        (one.order[cable] as number) % 2 === 0 ? triple(nameOf(cable), voltsOf(truth, world.volts)) : [],
      );
      for (let step = 0; step < MOST_STEPS; step++) {
        const facts = { groups: world.groups, switchesHere: world.switchesHere };
        const answer = survey(boxOf(world.count), facts, readings);
        expect(answer.contradiction).toBeUndefined();
        world.truths.forEach((truth, cable) => {
          expect(answer.cables[cable]?.may.map(({ role }) => role.key)).toContain(keyOf(truth));
        });
        expect(harmOf(answer, readings)).toEqual([]);
        steps++;
        const { next } = answer;
        if (answer.settled) settled++;
        if (next === undefined) return;
        readings.push(...next.wanted.tests.map((asked) => answerTo(asked, next, world)));
      }
    }),
    { numRuns: BOXES },
  );
  // Not vacuous: most boxes end with every cable known, after several tests each.
  expect(settled).toBeGreaterThan(0.4 * BOXES);
  expect(steps).toBeGreaterThan(2 * BOXES);
});

describe("sums without listing are the sums over a list", () => {
  test("weights, shares, entropy and counts, with readings and joins", { timeout: withRoom(120_000) }, () => {
    fc.assert(
      fc.property(aCase, fc.nat(3), (one, stage) => {
        const world = worldOf({ ...one, count: Math.min(4, one.count) });
        const { groups, switchesHere, truths } = world;
        const project = boxOf(world.count);
        const facts = { groups, switchesHere };
        const readings: GivenReading[] = [];
        for (let step = 0; step < stage; step++) {
          const { next } = survey(project, facts, readings);
          if (next === undefined) break;
          readings.push(...next.wanted.tests.map((asked) => answerTo(asked, next, { ...world, truths })));
        }
        const box = boxAtHand(project.asFound, project.asFound.enclosures[boxId("B")] as Box, facts);
        const sorted = sortReadings(box, readings);
        const menu = menuOf(box, sorted, USUAL_PRIORS, 120);
        const inference = new Inference(menu, sorted, 120);
        const all = listed(inference, world.count);
        const sum = all.reduce((total, { weight }) => total + weight, 0);
        expect(inference.weight()).toBeCloseTo(sum, 12 - Math.ceil(Math.log10(Math.max(1, sum))));
        const entropy = all.reduce((bits, { weight }) => bits - (weight / sum) * Math.log2(weight / sum), 0);
        expect(Math.abs(inference.bits - entropy)).toBeLessThan(1e-5);
        inference.shares.forEach((row, cable) => {
          row.forEach((share, option) => {
            const by = all
              .filter(({ chosen }) => chosen[cable] === option)
              .reduce((total, { weight }) => total + weight, 0);
            expect(Math.abs(share - by / sum)).toBeLessThan(1e-9);
          });
        });
      }),
      { numRuns: LONG ? 400 : 40 },
    );
  });

  /** Every choice of one option a cable, weighed by hand: sources, listed groups at most once, lights for switches here. */
  function listed(inference: Inference, cables: number) {
    const { menu, assignments } = inference;
    const found: { readonly chosen: readonly number[]; readonly weight: number }[] = [];
    const options = assignments.options.map((_, index) => index);
    let lists: (readonly number[])[] = [[]];
    for (let cable = 0; cable < cables; cable++)
      lists = lists.flatMap((list) =>
        options.filter((option) => inference.mayBe(cable, option)).map((option) => [...list, option]),
      );
    for (const chosen of lists) {
      const leads = chosen.map((option) => inference.option(option).lead);
      const isSource = (option: number): boolean => option < menu.sources.length;
      const sources = chosen.flatMap((option, cable) => (isSource(option) ? [cable] : []));
      const placed = leads.flatMap(({ group }) => (group === undefined ? [] : [group]));
      if (sources.length < 1 || sources.length > 2 || new Set(placed).size < placed.length) continue;
      if (sources.length === 2 && sources.some((cable) => leads[cable]?.off === true)) continue;
      const giving = sources.filter((cable) => menu.givesPower.has(leads[cable] as never));
      const energised = menu.joinings.map((joined) => giving.some((cable) => joined.has(cable)));
      let weight = sources.length === 2 ? menu.two : 1;
      chosen.forEach((option, cable) => {
        const joined = inference.joinedFit(cable, leads[cable] as never, energised);
        const own = inference.fitOf(cable, option).likelihood * (menu.joinings.length === 0 ? 1 : joined.likelihood);
        weight *= (inference.option(option).odds[cable] as number) * (joined.isOut ? 0 : own);
      });
      for (const { lead } of menu.groups)
        if (!placed.includes(lead.group as number)) {
          const fit = inference.joinedFit(undefined, lead, energised);
          weight *= menu.omitted * (menu.joinings.length === 0 ? 1 : fit.isOut ? 0 : fit.likelihood);
        }
      // All ways to put groups on as many cables are alike.
      for (let index = 0; index < placed.length; index++) weight /= menu.groups.length - index;
      if (weight > 0) found.push({ chosen, weight });
    }
    return found;
  }
});

describe("how many tests it takes", () => {
  /** Outcomes of a test by arrangement: which cable is the supply (0) and which holds group 1, 2 ... */
  type Arrangement = readonly number[];
  const permutations = (count: number): readonly Arrangement[] =>
    count === 1
      ? [[0]]
      : permutations(count - 1).flatMap((rest) =>
          Array.from({ length: count }, (_, at) => [...rest.slice(0, at), count - 1, ...rest.slice(at)]),
        );

  /** The fewest tests that settle the worst of these, over every order of tests. */
  function fewest(left: readonly Arrangement[], lights: ReadonlySet<number>, known: boolean): number {
    if (left.length <= 1 && known) return 0;
    const cables = left[0]?.length ?? 0;
    const splits: (readonly Arrangement[])[][] = [];
    const by = (outcome: (one: Arrangement) => string): (readonly Arrangement[])[] => {
      const found = new Map<string, Arrangement[]>();
      for (const one of left) found.set(outcome(one), [...(found.get(outcome(one)) ?? []), one]);
      return [...found.values()];
    };
    if (!known) {
      // All cables read at once; nothing is joined before.
      const read = by((one) => String(one.indexOf(0)));
      const after = Math.max(...read.map((part) => fewest(part, lights, true)));
      const dead = by((one) => one.map((group) => lights.has(group)).join());
      const first =
        dead.length > 1 ? 1 + Math.max(...dead.map((part) => fewest(part, lights, false))) : Number.POSITIVE_INFINITY;
      return Math.min(1 + after, first);
    }
    splits.push(by((one) => one.map((group) => lights.has(group)).join()));
    for (let one = 0; one < cables; one++)
      for (let other = one; other < cables; other++)
        splits.push(
          by((list) =>
            [list[one], list[other]]
              .filter((group) => group !== 0)
              .sort()
              .join(),
          ),
        );
    const useful = splits.filter((parts) => parts.length > 1);
    return 1 + Math.min(...useful.map((parts) => Math.max(...parts.map((part) => fewest(part, lights, true)))));
  }

  test.each([
    [2, []],
    [3, []],
    [3, [1]],
    [4, []],
    [4, [1]],
    [4, [1, 2]],
  ] as const)("%i cables, lights %j: at most one more than the best order of tests in the worst case", (count, lit) => {
    const lights = new Set<number>(lit);
    const groups = Array.from(
      { length: count - 1 },
      (_, index): SurveyGroup =>
        lights.has(index + 1) ? [lightItem(`L${index}`, { lamp: "filament" })] : [outletItem(`R${index}`)],
    );
    const best = fewest(permutations(count), lights, false);
    let worst = 0;
    for (const truth of permutations(count)) {
      const truths = truth.map(
        (group): Truth =>
          group === 0
            ? { is: "supply" }
            : { is: "feeds", group: group - 1, ...(lights.has(group) && { lamp: "filament" }) },
      );
      const world: World = { count, groups, truths, switchesHere: 0, volts: 120 };
      const readings: GivenReading[] = [];
      let tests = 0;
      for (let answer = ask(); !answer.settled; answer = ask()) {
        const { next } = answer;
        if (next === undefined) throw new Error(`Nothing more to test: ${answer.notProved.join(" ")}`);
        readings.push(...next.wanted.tests.map((asked) => answerTo(asked, next, world)));
        tests++;
      }
      worst = Math.max(worst, tests);
      function ask(): SurveyAnswer {
        return survey(boxOf(count), { groups }, readings, PLAIN_PRIORS);
      }
    }
    expect(best).toBeGreaterThan(0);
    expect(worst).toBeLessThanOrEqual(best + 1);
  });

  test("the helpers of this file are not the program's: the table of volts and a join by hand", () => {
    expect(triple("C1", voltsOf({ is: "reversed" }, 120)).map(({ value }) => value)).toEqual(["120", "0", "120"]);
    expect(works(["C1", "C2"], ["R1"]).survey.test).toEqual({ kind: "works", items: ["R1"] });
    expect(
      worstOf(
        [
          { key: "s", kind: "supply", words: "", items: [] },
          { key: "s", kind: "supply", words: "", items: [] },
        ],
        240,
      ).amps,
    ).toBeGreaterThan(1000);
    expect(worstOf([{ key: "s", kind: "supply", words: "", items: [] }], 240).amps).toBeLessThan(1);
  });
});

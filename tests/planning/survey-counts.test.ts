/**
 * Counts of the survey against a list of every arrangement, made by this file alone: which cable is the supply, and which
 * holds what. And one wrong reading in a random box: each smallest set to doubt, taken out, leaves what fits.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SurveyAnswer } from "../../shared-model/answers/survey.ts";
import type { GivenReading } from "../../shared-model/planning/survey/survey-box.ts";
import { cableId } from "../builders/drawing.ts";
import { ohms, outletItem, PLAIN_PRIORS, survey, triple, unknownBox, works } from "./survey-bench.ts";
import "../same-seed.ts";

const BOX = new Map([3, 4, 5].map((count) => [count, unknownBox(count)]));
const nameOf = (place: number): string => `C${place + 1}`;
const groupsOf = (count: number) => Array.from({ length: count - 1 }, (_, index) => [outletItem(`R${index + 1}`)]);

/** Cable by cable: 0 is the supply, 1 and more a group. */
type Arrangement = readonly number[];
const arrangements = (count: number): readonly Arrangement[] =>
  count === 0
    ? [[]]
    : arrangements(count - 1).flatMap((rest) =>
        rest.concat(count - 1).map((_, at) => rest.toSpliced(at, 0, count - 1)),
      );

const aCase = fc.record({
  count: fc.integer({ min: 3, max: 5 }),
  truth: fc.nat(119),
  joins: fc.array(fc.tuple(fc.nat(4), fc.nat(4)), { maxLength: 2 }),
});

interface World {
  readonly count: number;
  readonly truth: Arrangement;
  readonly supply: number;
  readonly joins: readonly (readonly number[])[];
}

function worldOf({ count, truth: at, joins }: typeof aCase extends fc.Arbitrary<infer T> ? T : never): World {
  const all = arrangements(count);
  const truth = all[at % all.length] ?? [];
  const supply = truth.indexOf(0);
  const pairs = joins.map((pair) => [...new Set(pair.map((one) => one % count))].filter((one) => one !== supply));
  return { count, truth, supply, joins: pairs.filter(({ length }) => length > 0) };
}

const worksIn = (one: Arrangement, joined: readonly number[]): string =>
  joined
    .map((cable) => `R${one[cable]}`)
    .sort()
    .join(" ");

function readingsOf({ truth, supply, joins }: World): GivenReading[] {
  const volts = truth.flatMap((lead, place) => triple(nameOf(place), lead === 0 ? [120, 120, 0] : [0, 0, 0]));
  const dead = truth.flatMap((lead, place) => (lead === 0 ? [] : [ohms(nameOf(place), "open")]));
  const seen = joins.map((joined) => works([supply, ...joined].map(nameOf), worksIn(truth, joined).split(" ")));
  return [...volts, ...dead, ...seen];
}

const ask = ({ count }: World, readings: readonly GivenReading[], priors = PLAIN_PRIORS): SurveyAnswer =>
  survey(BOX.get(count) as ReturnType<typeof unknownBox>, { groups: groupsOf(count) }, readings, priors);

test("what is left, and what a join leaves at most, are what a list of all arrangements says", () => {
  let compared = 0;
  fc.assert(
    fc.property(aCase, (one) => {
      const world = worldOf(one);
      const { count, truth, supply, joins } = world;
      const answer = ask(world, readingsOf(world));
      const left = arrangements(count).filter(
        (each) => each[supply] === 0 && joins.every((joined) => worksIn(each, joined) === worksIn(truth, joined)),
      );
      expect(answer.left).toBe(left.length);
      expect(answer.bits).toBeCloseTo(Math.log2(left.length), 3);
      for (const test_ of [answer.next, ...answer.others]) {
        if (test_ === undefined || !test_.key.startsWith("join ")) continue;
        const joined = (test_.wanted.joined ?? [])
          .slice(1)
          .map((id) => truth.findIndex((_, place) => cableId(nameOf(place)) === id));
        const by = new Map<string, number>();
        for (const each of left) by.set(worksIn(each, joined), (by.get(worksIn(each, joined)) ?? 0) + 1);
        expect(test_.atMost).toBe(Math.max(...by.values()));
        compared++;
      }
    }),
    { numRuns: 40 },
  );
  expect(compared).toBeGreaterThan(20);
}, 60_000);

describe("one wrong reading", () => {
  const wrongOf = (reading: GivenReading, count: number): GivenReading => {
    const { test: read } = reading.survey;
    if (read.kind !== "works") return { ...reading, value: reading.value === "0" ? "120" : "0" };
    const other = Array.from({ length: count - 1 }, (_, index) => `R${index + 1}`).filter(
      (id) => !read.items.includes(id),
    );
    return { ...reading, survey: { ...reading.survey, test: { kind: "works", items: other } } };
  };

  test("among true ones: it is found, or fits; what is to be doubted is one reading, and without it the others fit", () => {
    let contradicted = 0;
    let named = 0;
    fc.assert(
      fc.property(aCase, fc.nat(30), (one, at) => {
        const world = worldOf(one);
        const all = readingsOf(world);
        const place = at % all.length;
        const wrong = all.map((reading, index) => (index === place ? wrongOf(reading, world.count) : reading));
        const { contradiction } = ask(world, wrong, undefined);
        if (contradiction === undefined) return;
        contradicted++;
        const { doubt } = contradiction;
        expect(doubt.length).toBeGreaterThan(0);
        // The true readings fit, so that taking out the wrong one is enough.
        expect(doubt.every((set) => set.length === 1)).toBe(true);
        const enough = wrong.filter(
          (_, index) => ask(world, wrong.toSpliced(index, 1), undefined).contradiction === undefined,
        );
        expect(enough).toContain(wrong[place]);
        expect(doubt.length).toBe(Math.min(4, enough.length));
        if (doubt.length < 4) named++;
      }),
      { numRuns: 12 },
    );
    expect(contradicted).toBeGreaterThan(3);
    expect(named).toBeGreaterThan(0);
  }, 120_000);
});

/** One wrong reading among true ones: it is said that they contradict, and which to doubt. And what a test leaves at most. */
import { describe, expect, test } from "vitest";
import type { SurveyAnswer } from "../../shared-model/answers/survey.ts";
import type { GivenReading } from "../../shared-model/planning/survey/survey-box.ts";
import { narrowsWords } from "../../shared-model/planning/survey/why-this-test.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { ohms, PLAIN_PRIORS, survey, triple, unknownBox, volts, works } from "./survey-bench.ts";

const LAUNDRY = openSample("laundry-box");
const LEADS: Readonly<Record<string, readonly string[]>> = {
  C2: ["R2", "R3"],
  C3: ["R4"],
  C4: ["L1"],
  C5: ["R5"],
};
const CABLES = ["C1", "C2", "C3", "C4", "C5"];
const ON = ["device-S1"];
const join = (...cables: readonly string[]) =>
  works(
    ["C1", ...cables],
    cables.flatMap((name) => (LEADS[name] ?? []).map((item) => `device-${item}`)),
    ON,
  );
const VOLTS = CABLES.flatMap((name) => triple(name, name === "C1" ? [122, 122, 0] : [0, 0, 0]));
const TRUE: readonly GivenReading[] = [
  ...VOLTS,
  ...["C2", "C3", "C5"].map((name) => ohms(name, "open", ON)),
  ohms("C4", 18, ON),
  join("C2"),
  join("C3"),
  join("C4"),
  join("C5"),
];
const ask = (readings: readonly GivenReading[]): SurveyAnswer =>
  survey(LAUNDRY, { lamps: [{ item: "device-L1", lamp: "filament" }] }, readings, undefined, "B1");

describe("a wrong reading", () => {
  test("true readings contradict nothing and settle every cable", () => {
    expect(ask(TRUE)).toMatchObject({ settled: true });
  });

  test.each([
    ["the supply reads nothing black to white", 0, { value: "0" }, "C1: 0 V black to white"],
    ["a dead cable reads live black to ground", 7, { value: "121" }, "C3: 121 V black to ground"],
    [
      "two cables that feed the same outlet",
      20,
      { survey: join("C2").survey },
      "with C1 and C3 joined (A3), R2 and R3 worked",
    ],
    [
      "a join after which all works",
      21,
      { survey: works(["C1", "C4"], ["device-R2", "device-R3", "device-R4", "device-L1"], ON).survey },
      "with C1 and C4 joined (A3), R2, R3, R4 and L1 worked",
    ],
  ] as const)("%s: the smallest set to doubt is that reading alone", (_, place, change, words) => {
    const wrong = TRUE.map((reading, index) =>
      index === place
        ? {
            ...reading,
            ...change,
            ...("survey" in change && { survey: { ...reading.survey, test: change.survey.test } }),
          }
        : reading,
    );
    const { contradiction, next } = ask(wrong);
    expect(next).toBeUndefined();
    const { doubt = [] } = contradiction ?? {};
    expect(doubt.length).toBeGreaterThan(0);
    expect(doubt.every((set) => set.length === 1)).toBe(true);
    expect(doubt.flat().some((one) => one.includes(words))).toBe(true);
  });

  test("each reading that is to be doubted alone is enough: without it the others fit", () => {
    const wrong = [...TRUE, join("C5"), works(["C1", "C5"], ["device-R2"], ON)];
    const { contradiction } = ask(wrong);
    expect(contradiction?.doubt[0]).toHaveLength(1);
    expect(ask(wrong.slice(0, -1)).contradiction).toBeUndefined();
    expect(contradiction?.doubt.flat().join(" ")).toContain("R2 worked");
  });

  test("two wrong readings are named together, the true ones are not", () => {
    const wrong = [...TRUE, works(["C1", "C5"], ["device-R2"], ON), works(["C1", "C3"], ["device-L1"], ON)];
    const [set] = ask(wrong).contradiction?.doubt ?? [];
    expect([...(set ?? [])].sort()).toEqual([
      "with C1 and C3 joined (A3), L1 worked",
      "with C1 and C5 joined (A3), R2 worked",
    ]);
  });
});

describe("what a test leaves", () => {
  const plain = (readings: readonly GivenReading[]) =>
    survey(LAUNDRY, { lamps: [{ item: "device-L1", lamp: "filament" }] }, readings, PLAIN_PRIORS, "B1");
  const atMost = (answer: SurveyAnswer, words: RegExp) =>
    [answer.next, ...answer.others].find((one) => one !== undefined && words.test(one.words))?.atMost;

  test("at most: one energisation 4! = 24 of 120; of 24 one join 3! = 6, two at once 2! × 2! = 4", () => {
    expect(atMost(plain([]), /^Energise once/)).toBe(24);
    expect(atMost(plain(VOLTS), /^Join C2 to/)).toBe(6);
    expect(atMost(plain(VOLTS), /^Join C2 and C3 to/)).toBe(4);
    expect(atMost(plain([]), /^Measure ohms/)).toBeUndefined();
  });

  test("with two live cables no test leaves less than one", () => {
    const live = ["C1", "C2"].map((name) => volts(name, "b", "w", 120));
    const answer = survey(unknownBox(3), {}, [...live, volts("C3", "b", "w", 0)]);
    const counts = [answer.next, ...answer.others].flatMap((one) => one?.atMost ?? []);
    expect(counts.length).toBeGreaterThan(0);
    expect(Math.min(...counts)).toBeGreaterThan(0);
  });

  test("is what is left in the worst case when it is done", () => {
    const pairs = Object.keys(LEADS).flatMap((one, index, all) => all.slice(index + 1).map((other) => [one, other]));
    // Whichever two of the four groups work, by truth of the drawing: 2 on these two cables, 2 on the others.
    const left = pairs.map(([one = "", other = ""]) => plain([...VOLTS, join(one, other)]).left);
    expect(left).toEqual(pairs.map(() => 4));
  });

  test("why is told in the words of the trade, with what it leaves and how long it takes, and without bits", () => {
    const start = plain([]);
    const energise = [start.next, ...start.others].find((one) => one?.words.startsWith("Energise"));
    expect(energise?.why).toMatch(
      /^It narrows what is possible down to about one in 5 as a rule; whatever it shows, at most 24 of the 120 possible wirings are left\. It takes about \d+ minutes, with readings in the open box, the power on\./,
    );
    for (const one of [start.next, ...start.others]) expect(one?.why).not.toMatch(/\bbits?\b|entropy|NaN|undefined/);
    expect(start.next?.why).toContain("by itself it rules nothing out");
  });

  test.each([
    [0.05, "hardly"],
    [0.42, "three quarters"],
    [0.6, "two thirds"],
    [1, "in half"],
    [Math.log2(3), "a third"],
    [2, "a quarter"],
    [Math.log2(5), "one in 5"],
    [Math.log2(24), "one in 24"],
  ])("%f bits: %s", (bits, words) => {
    expect(narrowsWords(bits)).toContain(words);
  });
});

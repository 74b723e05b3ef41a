import { beforeAll, describe, expect, test } from "vitest";
import { buildLoadside, loadside, withFile } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

/** Five 12/2 cables with grounds, one yoke, internal clamps, in a 30.3 in³ box. */
const LAUNDRY_CASE = {
  id: "laundry",
  edition: 2020,
  box: { volumeIn3: 30.3 },
  conductors: [{ awg: "12", count: 10, as: "ends" }],
  grounds: [{ awg: "12", count: 5 }],
  internalClamps: 1,
  devices: [{ awg: "12", gangs: 1 }],
};

function fill(input: unknown) {
  const { status, stdout, stderr } = loadside(["fill", "-"], { input: JSON.stringify(input) });
  return { status, stderr, answer: stdout === "" ? undefined : JSON.parse(stdout) };
}

describe("one case", () => {
  test("is answered line by line, exactly", () => {
    const { status, answer } = fill(LAUNDRY_CASE);
    expect(status).toBe(1);
    // By hand, NFPA 70 (2020) 314.16(B): 12 AWG is 2.25 in³; the fifth ground a quarter of that.
    expect(answer).toMatchObject({
      id: "laundry",
      edition: 2020,
      editionVerified: true,
      totalIn3: 32.0625,
      volumeIn3: 30.3,
      spareIn3: -1.7625,
      verdict: "overfull",
    });
    expect(
      answer.lines.map(({ item, count, eachIn3, in3 }: Record<string, unknown>) => [item, count, eachIn3, in3]),
    ).toEqual([
      ["conductors", 10, 2.25, 22.5],
      ["clamps", 1, 2.25, 2.25],
      ["devices", 2, 2.25, 4.5],
      ["grounds", 1, 2.25, 2.25],
      ["grounds", 1, 0.5625, 0.5625],
    ]);
  });

  test("reads from a file as from standard input", () => {
    withFile(JSON.stringify(LAUNDRY_CASE), (file) => {
      expect(loadside(["fill", file, "--json"])).toEqual(
        loadside(["fill", "-"], { input: JSON.stringify(LAUNDRY_CASE) }),
      );
    });
  });

  test("exactly full fits, and one ten-thousandth less does not", () => {
    const box = (volumeIn3: number) => fill({ ...LAUNDRY_CASE, box: { volumeIn3 } });
    expect(box(32.0625)).toMatchObject({ status: 0, answer: { verdict: "fits", spareIn3: 0 } });
    expect(box(32.0624)).toMatchObject({ status: 1, answer: { verdict: "overfull", spareIn3: -0.0001 } });
  });

  test("an unknown volume or a conductor too thick to count leaves status 0", () => {
    const { box: _, ...noBox } = LAUNDRY_CASE;
    expect(fill(noBox)).toMatchObject({ status: 0, answer: { verdict: "volume-unknown", volumeIn3: null } });
    expect(fill({ ...LAUNDRY_CASE, conductors: [{ awg: "4", count: 3, as: "ends" }] })).toMatchObject({
      status: 0,
      answer: { verdict: "not-applicable", why: expect.stringMatching(/./) },
    });
  });
});

describe("an array of cases", () => {
  test("comes back as an array in order, each by its own edition; status 1 when one is overfull", () => {
    const editions = [2011, 2014, 2017, 2020, 2023, 2026];
    const { status, answer } = fill(editions.map((edition) => ({ ...LAUNDRY_CASE, id: `in ${edition}`, edition })));
    expect(status).toBe(1);
    expect(
      answer.map((one: Record<string, unknown>) => [one.id, one.edition, one.editionVerified, one.totalIn3]),
    ).toEqual([
      ["in 2011", 2011, true, 31.5],
      ["in 2014", 2014, true, 31.5],
      ["in 2017", 2017, true, 31.5],
      ["in 2020", 2020, true, 32.0625],
      ["in 2023", 2023, true, 32.0625],
      ["in 2026", 2026, false, 32.0625],
    ]);
  });

  test("of one case, or of none, is still an array", () => {
    expect(fill([{ ...LAUNDRY_CASE, box: { volumeIn3: 42 } }])).toMatchObject({
      status: 0,
      answer: [{ verdict: "fits" }],
    });
    expect(fill([])).toEqual({ status: 0, stderr: "", answer: [] });
  });

  test("of five thousand cases is answered within seconds", () => {
    const cases = Array.from({ length: 5000 }, (_, index) => ({
      ...LAUNDRY_CASE,
      id: `case ${index}`,
      box: { volumeIn3: 20 + (index % 200) / 10 },
    }));
    const started = performance.now();
    const { answer } = fill(cases);
    expect(performance.now() - started).toBeLessThan(10_000);
    expect(answer).toHaveLength(5000);
    const overfull = cases.filter(({ box }) => box.volumeIn3 < 32.0625).map(({ id }) => id);
    expect(
      answer.filter((one: { verdict: string }) => one.verdict === "overfull").map((one: { id: string }) => one.id),
    ).toEqual(overfull);
  });
});

describe("bad input is told with its place, a line for each problem, and nothing is printed", () => {
  // Where the input is no case at all there is no path to compare.
  test.each<[string, unknown, readonly string[]]>([
    ["a missing edition", { ...LAUNDRY_CASE, edition: undefined }, ["/edition"]],
    ["an edition that is none", { ...LAUNDRY_CASE, edition: 2019 }, ["/edition"]],
    ["a size that is none", { ...LAUNDRY_CASE, grounds: [{ awg: "13", count: 1 }] }, ["/grounds/0/awg"]],
    [
      "a count below zero",
      { ...LAUNDRY_CASE, conductors: [{ awg: "12", count: -1, as: "ends" }] },
      ["/conductors/0/count"],
    ],
    ["a volume for no box", { ...LAUNDRY_CASE, box: { volumeIn3: "30" } }, ["/box/volumeIn3"]],
    ["a field that is not known", { ...LAUNDRY_CASE, clamps: 1 }, ["/clamps"]],
    [
      "two bad cases of three",
      [{ ...LAUNDRY_CASE, edition: 1 }, LAUNDRY_CASE, { ...LAUNDRY_CASE, devices: 1 }],
      ["/0/edition", "/2/devices"],
    ],
    ["a text", "hello", []],
    ["nothing", null, []],
  ])("%s", (_, input, paths) => {
    const { status, stderr, answer } = fill(input);
    expect([status, answer]).toEqual([2, undefined]);
    const lines = stderr.trimEnd().split("\n");
    for (const line of lines) expect(line).toMatch(/^standard input: .*[.]$/);
    if (paths.length > 0) expect(lines.map((line) => line.split(": ")[1])).toEqual(paths);
  });

  test("a key that stands twice is not taken for either", () => {
    const input = JSON.stringify(LAUNDRY_CASE).replace('"edition":2020', '"edition":2017,"edition":2020');
    const { status, stdout, stderr } = loadside(["fill", "-"], { input });
    expect([status, stdout, stderr]).toEqual([
      2,
      "",
      'standard input: /edition: The key "edition" stands twice in one object. Keep one of the two.\n',
    ]);
  });
});

describe("by CSA C22.1", () => {
  /** Rule 12-3034, by hand: nine 8 AWG and three connectors, which are one pair: 10 × 45.1 mL (an exam guide prints 451). */
  const NINE = {
    edition: "CSA-C22.1",
    conductors: [{ awg: "8", count: 9 }],
    connectors: [{ awg: "8", count: 3 }],
    grounds: [{ awg: "8", count: 4 }],
    internalClamps: 2,
  };

  test("counts in millilitres, exactly: exactly full fits", () => {
    const full = fill({ ...NINE, box: { volumeMl: 451 } });
    expect(full).toMatchObject({
      status: 0,
      answer: {
        edition: "CSA-C22.1",
        lines: [
          { item: "conductors", count: 9, eachMl: 45.1, ml: 405.9, section: "12-3034 and Table 22" },
          { item: "connectors", count: 1, eachMl: 45.1, ml: 45.1, section: "12-3034" },
        ],
        totalMl: 451,
        volumeMl: 451,
        spareMl: 0,
        verdict: "fits",
      },
    });
    expect(fill({ ...NINE, box: { volumeMl: 450.9 } })).toMatchObject({ status: 1, answer: { spareMl: -0.1 } });
  });

  test("other editions print what they printed before", () => {
    expect(Object.keys(fill(LAUNDRY_CASE).answer)).not.toContain("totalMl");
    expect(fill({ ...LAUNDRY_CASE, box: { volumeMl: 451 } }).stderr).toContain("/box/volumeMl");
  });
});

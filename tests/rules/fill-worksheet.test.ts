import { describe, expect, test } from "vitest";
import { DATED_EDITIONS } from "../../shared-model/model/project.ts";
import { type FillAnswer, type FillCase, fillCase } from "../../shared-model/rules/fill/fill-case.ts";
import { readFillCases } from "../../shared-model/rules/fill/read-fill-case.ts";

const answer = (input: unknown): FillAnswer => {
  const read = readFillCases(input);
  if (!read.ok) throw new Error(read.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return fillCase(read.value as FillCase);
};
const total = (input: object, edition = 2020): number | null => answer({ edition, ...input }).totalIn3;
const refusals = (input: unknown): readonly string[] => {
  const read = readFillCases(input);
  return read.ok ? [] : read.problems.map(({ path, code }) => `${path} ${code}`);
};

const LAUNDRY = {
  id: "laundry box",
  box: { volumeIn3: 30.3 },
  conductors: [{ awg: "12", count: 10, as: "ends" }],
  grounds: [{ awg: "12", count: 5 }],
  internalClamps: 1,
  devices: [{ awg: "12", gangs: 1 }],
};

describe("the answer", () => {
  test("names every line of the laundry box in 2020", () => {
    expect(answer({ ...LAUNDRY, edition: 2020 })).toEqual({
      id: "laundry box",
      edition: 2020,
      editionVerified: true,
      lines: [
        { item: "conductors", awg: "12", count: 10, eachIn3: 2.25, in3: 22.5, section: "314.16(B)(1)" },
        { item: "clamps", awg: "12", count: 1, eachIn3: 2.25, in3: 2.25, section: "314.16(B)(2)" },
        { item: "devices", awg: "12", count: 2, eachIn3: 2.25, in3: 4.5, section: "314.16(B)(4)" },
        { item: "grounds", awg: "12", count: 1, eachIn3: 2.25, in3: 2.25, section: "314.16(B)(5)" },
        { item: "grounds", awg: "12", count: 1, eachIn3: 0.5625, in3: 0.5625, section: "314.16(B)(5)" },
      ],
      totalIn3: 32.0625,
      volumeIn3: 30.3,
      spareIn3: -1.7625,
      verdict: "overfull",
    });
  });

  test("flags 2026 and answers it with the text of 2023", () => {
    const blocks = { ...LAUNDRY, terminalBlocks: [{ awg: "10" }] };
    const { editionVerified, edition, ...in2026 } = answer({ ...blocks, edition: 2026 });
    const { editionVerified: _verified, edition: _edition, ...in2023 } = answer({ ...blocks, edition: 2023 });
    expect({ editionVerified, edition }).toEqual({ editionVerified: false, edition: 2026 });
    expect(in2026).toEqual(in2023);
  });

  test("has no volume and no spare where the box is not known, and still a total", () => {
    const { box: _none, ...rest } = LAUNDRY;
    for (const input of [rest, { ...rest, box: {} }]) {
      const { totalIn3, volumeIn3, spareIn3, verdict } = answer({ ...input, edition: 2017 });
      expect({ totalIn3, volumeIn3, spareIn3, verdict }).toEqual({
        totalIn3: 31.5,
        volumeIn3: null,
        spareIn3: null,
        verdict: "volume-unknown",
      });
    }
  });

  test.each(["conductors", "grounds", "devices", "terminalBlocks"])("does not apply from 4 AWG up, in %s", (where) => {
    const { verdict, lines, totalIn3, spareIn3, why } = answer({
      ...LAUNDRY,
      edition: 2023,
      [where]: [{ awg: "4", ...(where === "conductors" || where === "grounds" ? { count: 1 } : {}) }],
    });
    expect({ verdict, lines, totalIn3, spareIn3 }).toEqual({
      verdict: "not-applicable",
      lines: [],
      totalIn3: null,
      spareIn3: null,
    });
    expect(why).toMatch(/4 AWG/);
  });

  test("exactly full fits, a ten-thousandth less does not", () => {
    const full = (volumeIn3: number) => answer({ ...LAUNDRY, edition: 2020, box: { volumeIn3 } });
    expect(full(32.0625)).toMatchObject({ verdict: "fits", spareIn3: 0 });
    expect(full(32.0624)).toMatchObject({ verdict: "overfull", spareIn3: -0.0001 });
  });

  test("takes a box of the catalogue by its size, its id or its title", () => {
    for (const size of ["4x2-1/8 square", "square-4-2-1-8", "4 in. square × 2-1/8"])
      expect(answer({ edition: 2020, box: { size } }).volumeIn3).toBe(30.3);
    expect(answer({ edition: 2020, box: { size: "plastic-old-1" } }).volumeIn3).toBe(16);
  });

  test("rings add to a known box", () => {
    expect(answer({ edition: 2020, box: { volumeIn3: 30.3 }, ringsIn3: [3, 0.7625] }).volumeIn3).toBe(34.0625);
  });

  test("an array is answered in order", () => {
    const read = readFillCases([
      { id: "b", edition: 2017 },
      { id: "a", edition: 2023 },
    ]);
    expect(read.ok && (read.value as FillCase[]).map((one) => fillCase(one).id)).toEqual(["b", "a"]);
  });
});

/** Worked by hand from the counting rules of 314.16(B); allowances 12 AWG 2.25, 14 AWG 2.00, 10 AWG 2.50, 18 AWG 1.50, 16 AWG 1.75. */
describe("what counts", () => {
  const one = (as: string, awg = "12", count = 1) => ({ conductors: [{ awg, count, as }] });

  test("a conductor that ends, and one that passes, once; a loop of twice the free length, twice; inside, nothing", () => {
    expect(["ends", "through", "loop", "inside"].map((as) => total(one(as)))).toEqual([2.25, 2.25, 4.5, 0]);
  });

  test("up to four wires of a canopy thinner than 14 AWG are left out, the thickest first", () => {
    expect([3, 4, 5, 7].map((count) => total(one("canopy", "18", count)))).toEqual([0, 0, 1.5, 4.5]);
    expect(total(one("canopy", "14", 2))).toBe(4);
    const mixed = [
      { awg: "18", count: 3, as: "canopy" },
      { awg: "16", count: 3, as: "canopy" },
    ];
    // Three of 16 and one of 18 are left out; two of 18 stay.
    expect(total({ conductors: mixed })).toBe(3);
    expect(total({ conductors: mixed.toReversed() })).toBe(3);
  });

  test("clamps and supports go by the largest conductor in the box, grounds and pigtails included", () => {
    const box = { conductors: [{ awg: "14", count: 1, as: "ends" }], grounds: [{ awg: "10", count: 1 }] };
    expect(total({ ...box, internalClamps: 1 })).toBe(2 + 2.5 + 2.5);
    expect(total({ ...box, supports: ["stud"] })).toBe(2 + 2.5 + 2.5);
    expect(
      total({
        conductors: [
          { awg: "14", count: 1 },
          { awg: "10", count: 1, as: "inside" },
        ],
        internalClamps: 1,
      }),
    ).toBe(4.5);
  });

  test("any number of clamps is one allowance; each kind of support is one, however many", () => {
    expect(total({ ...one("ends"), internalClamps: 6 })).toBe(4.5);
    expect(total({ ...one("ends"), supports: ["stud", "hickey", "stud"] })).toBe(6.75);
  });

  test("clamps in a box that holds no conductor have nothing to go by", () => {
    expect(total({ internalClamps: 2, supports: ["stud"] })).toBe(0);
  });

  test("a device counts two of its own largest conductor for each gang", () => {
    expect(total({ ...one("ends", "10"), devices: [{ awg: "14", gangs: 1 }] })).toBe(2.5 + 4);
    expect(total({ devices: [{ awg: "12", gangs: 2 }, { awg: "14" }] })).toBe(9 + 4);
  });

  test("grounds: one allowance of the largest, and from 2020 a quarter of it for each past the fourth", () => {
    const grounds = (count: number) => ({
      grounds: [
        { awg: "14", count: count - 1 },
        { awg: "10", count: 1 },
      ],
    });
    for (const edition of [2011, 2014, 2017])
      expect([1, 4, 5, 9].map((count) => total(grounds(count), edition))).toEqual([2.5, 2.5, 2.5, 2.5]);
    for (const edition of [2020, 2023, 2026])
      expect([1, 4, 5, 9].map((count) => total(grounds(count), edition))).toEqual([2.5, 2.5, 3.125, 5.625]);
  });

  test("isolated grounds: a set of its own through 2017, counted with the rest from 2020", () => {
    const both = {
      grounds: [
        { awg: "12", count: 4, isolated: false },
        { awg: "10", count: 1, isolated: true },
      ],
    };
    expect([2011, 2014, 2017].map((edition) => total(both, edition))).toEqual([4.75, 4.75, 4.75]);
    expect([2020, 2023, 2026].map((edition) => total(both, edition))).toEqual([3.125, 3.125, 3.125]);
    expect(total({ grounds: [{ awg: "12", count: 2, isolated: true }] }, 2017)).toBe(2.25);
  });

  test("terminal blocks count from 2023", () => {
    const blocks = { terminalBlocks: [{ awg: "12" }, { awg: "12" }, { awg: "10" }] };
    expect(DATED_EDITIONS.map((edition) => total(blocks, edition))).toEqual([0, 0, 0, 0, 7, 7]);
  });
});

describe("a refusal names the place", () => {
  test.each([
    [{}, ["/edition unknown-edition"]],
    [{ edition: "2020" }, ["/edition unknown-edition"]],
    [{ edition: "CSA-C22.2" }, ["/edition unknown-edition"]],
    [{ edition: 2008 }, ["/edition unknown-edition"]],
    [null, [" not-an-object", "/edition unknown-edition"]],
    ["text", [" not-an-object", "/edition unknown-edition"]],
    [{ edition: 2020, conductor: [] }, ["/conductor unknown-field"]],
    [JSON.parse('{"edition":2020,"__proto__":{"box":1}}'), ["/__proto__ unknown-field"]],
    [{ edition: 2020, id: 7 }, ["/id not-a-text"]],
    [{ edition: 2020, conductors: {} }, ["/conductors not-a-list"]],
    [{ edition: 2020, conductors: [{ awg: "12" }] }, ["/conductors/0/count not-a-count"]],
    [{ edition: 2020, conductors: [{ awg: "12", count: -1 }] }, ["/conductors/0/count not-a-count"]],
    [{ edition: 2020, conductors: [{ awg: "12", count: 1.5 }] }, ["/conductors/0/count not-a-count"]],
    [{ edition: 2020, conductors: [{ awg: "12", count: 1e9 }] }, ["/conductors/0/count not-a-count"]],
    [{ edition: 2020, conductors: [{ awg: 12, count: 1 }] }, ["/conductors/0/awg not-a-choice"]],
    [{ edition: 2020, conductors: [{ awg: "13", count: 1 }] }, ["/conductors/0/awg not-a-choice"]],
    [{ edition: 2020, conductors: [{ awg: "12", count: 1, as: "pigtail" }] }, ["/conductors/0/as not-a-choice"]],
    [
      {
        edition: 2020,
        conductors: [
          { awg: "12", count: 1 },
          { awg: "12", count: 1, from: "x" },
        ],
      },
      ["/conductors/1/from unknown-field"],
    ],
    [{ edition: 2020, grounds: [{ awg: "12", count: 1, isolated: "no" }] }, ["/grounds/0/isolated not-true-or-false"]],
    [
      { edition: 2020, grounds: [7] },
      ["/grounds/0 not-an-object", "/grounds/0/awg not-a-choice", "/grounds/0/count not-a-count"],
    ],
    [{ edition: 2020, internalClamps: true }, ["/internalClamps not-a-count"]],
    [{ edition: 2020, supports: ["bar"] }, ["/supports/0 not-a-choice"]],
    [{ edition: 2020, devices: [{ awg: "12", gangs: 0 }] }, ["/devices/0/gangs not-a-count"]],
    [{ edition: 2020, terminalBlocks: [{}] }, ["/terminalBlocks/0/awg not-a-choice"]],
    [{ edition: 2020, box: { volumeIn3: 0 } }, ["/box/volumeIn3 not-a-volume"]],
    [{ edition: 2020, box: { volumeIn3: 30.30001 } }, ["/box/volumeIn3 not-a-volume"]],
    [{ edition: 2020, box: { volumeIn3: Number.NaN } }, ["/box/volumeIn3 not-a-volume"]],
    [{ edition: 2020, box: { volumeIn3: "30.3" } }, ["/box/volumeIn3 not-a-volume"]],
    [{ edition: 2020, box: { volumeIn3: 30.3, size: "4x2-1/8 square" } }, ["/box two-volumes"]],
    [{ edition: 2020, box: { size: "panel-16" } }, ["/box/size unknown-box"]],
    [{ edition: 2020, box: { size: "constructor" } }, ["/box/size unknown-box"]],
    [{ edition: 2020, box: 30.3 }, ["/box not-an-object"]],
    [{ edition: 2020, ringsIn3: [-1] }, ["/ringsIn3/0 not-a-volume"]],
    [[{ edition: 2020 }, { edition: 2020, box: [] }], ["/1/box not-an-object"]],
  ])("%j", (input, wanted) => {
    expect(refusals(input)).toEqual(wanted);
  });

  test("in a sentence that says what would do", () => {
    const read = readFillCases({ edition: 2020, box: { volumeIn3: "big" } });
    expect(read.ok ? [] : read.problems.map(({ message }) => message)).toEqual([
      'Give a volume in in³, more than 0, with at most four decimals; it is "big".',
    ]);
  });
});

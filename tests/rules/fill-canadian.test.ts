import { describe, expect, test } from "vitest";
import { type FillAnswer, type FillCase, fillCase } from "../../shared-model/rules/fill/fill-case.ts";
import { readFillCases } from "../../shared-model/rules/fill/read-fill-case.ts";
import reference from "../reference/canadian-box-fill.json" with { type: "json" };

/** CSA C22.1 Rule 12-3034. Where a figure is not of the reference file, it is worked by hand from its tables. */
function answer(input: object): FillAnswer {
  const read = readFillCases({ edition: "CSA-C22.1", ...input });
  if (!read.ok) throw new Error(read.problems.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return fillCase(read.value as FillCase);
}
const refusals = (input: object): readonly string[] => {
  const read = readFillCases({ edition: "CSA-C22.1", ...input });
  return read.ok ? [] : read.problems.map(({ path, code }) => `${path} ${code}`);
};
const wires = (awg: string, count: number, as = "ends") => ({ awg, count, as });
const inMl = (input: object): number | null | undefined => answer(input).totalMl;

interface Example {
  readonly c: Readonly<Record<string, number>>;
  readonly connectors?: number;
  readonly connector_awg?: string;
  readonly devices?: number;
  readonly device_awg?: string;
  readonly box_in3?: number;
}

function worksheetOf({ c, connectors, connector_awg, devices = 0, device_awg, box_in3 }: Example): object {
  return {
    conductors: Object.entries(c).map(([awg, count]) => wires(awg, count)),
    // The sources have grounds and clamps, or may have: they are free.
    grounds: [{ awg: "14", count: 5 }],
    internalClamps: 2,
    ...(connectors !== undefined && { connectors: [{ awg: connector_awg, count: connectors }] }),
    devices: Array.from({ length: devices }, () => ({ awg: device_awg })),
    ...(box_in3 !== undefined && { box: { volumeIn3: box_in3 } }),
  };
}
const unitsOf = ({ lines }: FillAnswer): number => lines.reduce((sum, { count }) => sum + count, 0);

describe("the worked examples", () => {
  const byId = (id: string) => {
    const found = reference.examples.find((one) => one.id === id);
    if (found === undefined) throw new Error(`No example ${id}.`);
    return answer(worksheetOf(found.inputs as Example));
  };

  test.each(reference.examples.filter((one) => one.published_ml !== undefined))(
    "$id gives what $source prints",
    ({ id, published_ml, published_units }) => {
      expect({ ml: byId(id).totalMl, units: unitsOf(byId(id)) }).toEqual({ ml: published_ml, units: published_units });
    },
  );

  test("CA-E3: ten units, 15 in³, as the reply to the asker says", () => {
    expect([unitsOf(byId("CA-E3")), byId("CA-E3").totalIn3]).toEqual([10, 15]);
  });

  test("CA-E4: 32 units of 1.5 in³ in 50 in³, where the asker charged switches and caps otherwise", () => {
    expect(byId("CA-E4")).toMatchObject({ totalIn3: 48, volumeIn3: 50, spareIn3: 2, verdict: "fits" });
    expect(unitsOf(byId("CA-E4"))).toBe(32);
  });

  test("CA-E5: nine units of 1.75 in³ do not fit 12 in³, where a poster counted grounds too", () => {
    expect(byId("CA-E5")).toMatchObject({ totalIn3: 15.75, verdict: "overfull" });
    expect(unitsOf(byId("CA-E5"))).toBe(9);
  });
});

describe("the tables", () => {
  test.each(reference.allowances)("$awg AWG takes $ml mL", ({ awg, ml, in3 }) => {
    expect(answer({ conductors: [wires(awg, 3)] }).lines).toEqual([
      {
        item: "conductors",
        awg,
        count: 3,
        eachIn3: in3,
        in3: in3 * 3,
        section: "12-3034 and Table 22",
        eachMl: ml,
        ml: Math.round(ml * 30) / 10,
      },
    ]);
  });

  test.each(reference.boxes)("Table 23: $size holds its count of each size, and no more", ({ size, counts }) => {
    for (const [awg, count] of Object.entries(counts)) {
      const verdict = (conductors: number): string =>
        answer({ box: { size }, conductors: [wires(awg, conductors)] }).verdict;
      expect([size, awg, verdict(count), verdict(count + 1)]).toEqual([size, awg, "fits", "overfull"]);
    }
  });

  test("a size that the table does not have is refused, though the stock has it", () => {
    expect(refusals({ box: { size: "4x1-1/4 square" } })).toEqual(["/box/size unknown-box"]);
    expect(refusals({ box: { size: "square-4-2-1-8" } })).toEqual([]);
  });
});

describe("exactly full fits, in the unit in which the box is told", () => {
  const ten = { conductors: [wires("8", 10)] };
  test("in millilitres: 10 × 45.1 = 451", () => {
    expect(answer({ ...ten, box: { volumeMl: 451 } })).toMatchObject({ verdict: "fits", spareMl: 0, volumeIn3: null });
    expect(answer({ ...ten, box: { volumeMl: 450.9 } })).toMatchObject({ verdict: "overfull", spareMl: -0.1 });
    // 73.7 mL is 4.4975 in³, less than the 4.5 of Table 22: judged in cubic inches it would not fit.
    expect(answer({ conductors: [wires("6", 1)], box: { volumeMl: 73.7 } }).verdict).toBe("fits");
  });

  test("in cubic inches: 12 × 1.5 = 18, though 12 × 24.6 mL is more than the 294.97 mL that these are", () => {
    const twelve = { conductors: [wires("14", 12)] };
    expect(answer({ ...twelve, box: { volumeIn3: 18 } })).toMatchObject({
      verdict: "fits",
      spareIn3: 0,
      spareMl: null,
    });
    expect(answer({ ...twelve, box: { volumeIn3: 17.9999 } }).verdict).toBe("overfull");
  });

  test("rings add in the unit of the box and in no other", () => {
    expect(answer({ ...ten, box: { volumeMl: 400 }, ringsMl: [51] }).verdict).toBe("fits");
    expect(answer({ ...ten, box: { volumeIn3: 25 }, ringsIn3: [2.5] }).verdict).toBe("fits");
    expect(refusals({ box: { volumeMl: 400 }, ringsIn3: [3] })).toEqual(["/ringsIn3 two-units"]);
    expect(refusals({ box: { volumeIn3: 30 }, ringsMl: [50] })).toEqual(["/ringsMl two-units"]);
  });

  test("millilitres are a matter of this rule set, to a tenth", () => {
    expect(refusals({ edition: 2020, box: { volumeMl: 451 } })).toEqual(["/box/volumeMl not-in-millilitres"]);
    expect(refusals({ box: { volumeMl: 24.55 } })).toEqual(["/box/volumeMl not-a-volume"]);
    expect(refusals({ box: { volumeMl: 0 } })).toEqual(["/box/volumeMl not-a-volume"]);
    expect(refusals({ box: { volumeMl: 300, volumeIn3: 18 } })).toEqual(["/box two-volumes"]);
  });
});

describe("what counts", () => {
  test("one for a conductor that ends, passes or loops, none for one that stays or for fixture wires", () => {
    expect(inMl({ conductors: [wires("14", 1), wires("14", 1, "through"), wires("14", 1, "loop")] })).toBe(73.8);
    expect(inMl({ conductors: [wires("14", 4, "inside"), wires("18", 7, "canopy"), wires("16", 7, "canopy")] })).toBe(
      0,
    );
    expect(inMl({ conductors: [wires("14", 1, "canopy")] })).toBe(24.6);
  });

  test.each([
    [0, 0],
    [1, 0],
    [2, 1],
    [3, 1],
    [4, 2],
    [5, 2],
  ])("%i connectors count as %i", (count, units) => {
    expect(unitsOf(answer({ connectors: [{ awg: "12", count }] }))).toBe(units);
  });

  test("a pair of connectors goes by the larger of the two; the one that is left over is the smallest", () => {
    const lines = (...connectors: { awg: string; count: number }[]) =>
      answer({ connectors }).lines.map(({ awg, count }) => `${count} × ${awg}`);
    expect(lines({ awg: "14", count: 2 }, { awg: "8", count: 1 })).toEqual(["1 × 8"]);
    expect(lines({ awg: "14", count: 1 }, { awg: "8", count: 1 })).toEqual(["1 × 8"]);
    expect(lines({ awg: "14", count: 2 }, { awg: "8", count: 2 })).toEqual(["1 × 8", "1 × 14"]);
    expect(lines({ awg: "14", count: 3 }, { awg: "8", count: 1 })).toEqual(["1 × 8", "1 × 14"]);
    expect(lines({ awg: "12", count: 1 }, { awg: "14", count: 1 }, { awg: "8", count: 1 })).toEqual(["1 × 8"]);
  });

  test("a stud and a hickey one each, of the largest conductor that counts", () => {
    const supports = ["stud", "hickey"];
    expect(inMl({ conductors: [wires("14", 2), wires("12", 1)], grounds: [{ awg: "8", count: 1 }], supports })).toBe(
      Math.round((2 * 24.6 + 28.7 + 2 * 28.7) * 10) / 10,
    );
  });

  test("two for a device; one that reaches in more than 2.54 cm takes 32 mL for each of its centimetres instead", () => {
    expect(inMl({ devices: [{ awg: "14" }] })).toBe(49.2);
    expect(inMl({ devices: [{ awg: "14", depthCm: 2.54 }] })).toBe(49.2);
    expect(inMl({ devices: [{ awg: "14", depthCm: 2.55 }] })).toBe(81.6);
    const [line] = answer({ devices: [{ awg: "14", depthCm: 4 }] }).lines;
    expect(line).toMatchObject({ item: "deep-devices", count: 1, ml: 128 });
    // 128 mL / 16.387064 = 7.81103... in³, rounded up to its step.
    expect(line?.in3).toBe(7.8111);
    expect(refusals({ devices: [{ awg: "14", depthCm: -1 }] })).toEqual(["/devices/0/depthCm not-a-depth"]);
  });

  test("a size that Table 22 does not have is no guess", () => {
    for (const awg of ["18", "16", "4"]) {
      const { verdict, why, totalMl } = answer({ conductors: [wires(awg, 1)], box: { volumeIn3: 30 } });
      expect([verdict, totalMl]).toEqual(["not-applicable", null]);
      expect(why).toContain("Table 22");
    }
    // A thick ground is free like any other.
    expect(answer({ conductors: [wires("14", 1)], grounds: [{ awg: "4", count: 1 }] }).totalMl).toBe(24.6);
  });
});

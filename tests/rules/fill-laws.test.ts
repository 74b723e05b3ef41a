import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DATED_EDITIONS } from "../../shared-model/model/project.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { type BoxContents, CONDUCTOR_STANDINGS } from "../../shared-model/rules/fill/box-contents.ts";
import { countFill } from "../../shared-model/rules/fill/count-fill.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";

const SIZES: readonly WireSize[] = ["18", "16", "14", "12", "10", "8", "6"];
const size = fc.constantFrom(...SIZES);
const count = fc.integer({ min: 0, max: 6 });
const edition = fc.constantFrom(...DATED_EDITIONS).map((year) => ({ year }));

const contents: fc.Arbitrary<BoxContents> = fc.record({
  conductors: fc.array(fc.record({ awg: size, count, as: fc.constantFrom(...CONDUCTOR_STANDINGS) }), { maxLength: 5 }),
  grounds: fc.array(fc.record({ awg: size, count, isolated: fc.boolean() }), { maxLength: 4 }),
  clamps: fc.boolean(),
  supports: fc.array(fc.constantFrom("stud" as const, "hickey" as const), { maxLength: 3 }),
  devices: fc.array(fc.record({ awg: size, gangs: fc.integer({ min: 1, max: 3 }) }), { maxLength: 4 }),
  terminalBlocks: fc.array(size, { maxLength: 3 }),
});

function totalOf(box: BoxContents, year: (typeof DATED_EDITIONS)[number]): number {
  const counted = countFill(box, getEdition(year));
  if (!counted.applies) throw new Error(counted.reason);
  return counted.total;
}

describe("whatever a box holds", () => {
  test("the order in which it is written down changes nothing", () => {
    fc.assert(
      fc.property(contents, edition, (box, { year }) => {
        const turned: BoxContents = {
          ...box,
          conductors: box.conductors.toReversed(),
          grounds: box.grounds.toReversed(),
          supports: box.supports.toReversed(),
          devices: box.devices.toReversed(),
          terminalBlocks: box.terminalBlocks.toReversed(),
        };
        expect(countFill(turned, getEdition(year))).toEqual(countFill(box, getEdition(year)));
      }),
    );
  });

  test("one row of two is two rows of one", () => {
    fc.assert(
      fc.property(contents, edition, (box, { year }) => {
        const split: BoxContents = {
          ...box,
          conductors: box.conductors.flatMap((row) => Array.from({ length: row.count }, () => ({ ...row, count: 1 }))),
          grounds: box.grounds.flatMap((row) => Array.from({ length: row.count }, () => ({ ...row, count: 1 }))),
        };
        expect(totalOf(split, year)).toBe(totalOf(box, year));
      }),
    );
  });

  test("nothing that is added makes it emptier", () => {
    fc.assert(
      fc.property(contents, contents, edition, (box, more, { year }) => {
        const both: BoxContents = {
          conductors: [...box.conductors, ...more.conductors],
          grounds: [...box.grounds, ...more.grounds],
          clamps: box.clamps || more.clamps,
          supports: [...box.supports, ...more.supports],
          devices: [...box.devices, ...more.devices],
          terminalBlocks: [...box.terminalBlocks, ...more.terminalBlocks],
        };
        expect(totalOf(both, year)).toBeGreaterThanOrEqual(totalOf(box, year));
      }),
    );
  });

  test("a pigtail of a size that is there already changes nothing", () => {
    fc.assert(
      fc.property(contents, edition, size, (box, { year }, awg) => {
        const has = { ...box, conductors: [...box.conductors, { awg, count: 1, as: "ends" as const }] };
        const more = { ...has, conductors: [...has.conductors, { awg, count: 3, as: "inside" as const }] };
        expect(totalOf(more, year)).toBe(totalOf(has, year));
      }),
    );
  });

  test("the lines add up to the total, each its count times its allowance, and no line is empty", () => {
    fc.assert(
      fc.property(contents, edition, (box, { year }) => {
        const counted = countFill(box, getEdition(year));
        if (!counted.applies) throw new Error(counted.reason);
        let sum = 0;
        for (const line of counted.lines) {
          expect(line.volume).toBe(line.each * line.count);
          expect(line.count).toBeGreaterThan(0);
          expect(Number.isInteger(line.volume)).toBe(true);
          sum += line.volume;
        }
        expect(sum).toBe(counted.total);
      }),
    );
  });

  test("editions agree where neither blocks, isolated grounds nor a fifth ground are present", () => {
    fc.assert(
      fc.property(contents, (box) => {
        const plain = {
          ...box,
          grounds: box.grounds.slice(0, 1).map((row) => ({ ...row, count: Math.min(row.count, 4), isolated: false })),
          terminalBlocks: [],
        };
        expect(new Set(DATED_EDITIONS.map((year) => totalOf(plain, year))).size).toBe(1);
      }),
    );
  });
});

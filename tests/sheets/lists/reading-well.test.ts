/** What makes lists quick to read: nothing twice, figures as they are measured, points under one another. */
import { expect, it } from "vitest";
import type { Finding } from "../../../shared-model/answers/finding.ts";
import { measure } from "../../../shared-model/sheets/page/measure.ts";
import { textsOf } from "../../../shared-model/sheets/text-boxes.ts";
import { sampleProject } from "../sheet-inputs.ts";
import { inputFor, pagesOf, rowsOf, tablesOf, textMarks, wordsOf } from "./list-case.ts";

const laundry = sampleProject("laundry-proposed.loadside");
const kitchen = sampleProject("kitchen-multiwire.loadside");
const PROPOSED = { state: "proposed" } as const;

it("box fill writes no zero that says nothing, and keeps points under one another", () => {
  const figures = textMarks(pagesOf(laundry, "box-fill", { ...PROPOSED, box: "B1" })).filter(
    ({ text, tabular, anchor }) => tabular && anchor === "end" && /^\d+(\.\d+)?$/.test(text),
  );
  expect(figures.filter(({ text }) => /\.\d*0$/.test(text))).toEqual([]);
  // Of the column of volumes as found: that of the sum with four places.
  const sum = figures.find(({ text }) => text === "32.0625");
  if (sum === undefined) throw new Error("No sum.");
  const pointOf = ({ text, x, size, weight }: (typeof figures)[number]): number =>
    x - measure(/\..*$/.exec(text)?.[0] ?? "", size, weight, 0, true);
  const column = figures.filter(({ x }) => x <= sum.x && x > sum.x - 9);
  expect(column.map(({ text }) => text)).toEqual(
    expect.arrayContaining(["22.5", "2.25", "4.5", "0.5625", "32.0625", "30.3", "1.7625"]),
  );
  for (const one of column.filter(({ text }) => text.includes(".")))
    expect(Math.abs(pointOf(one) - pointOf(sum)), one.text).toBeLessThan(0.2);
});

it("voltages to be expected have one place after the point, as a meter shows them", () => {
  for (const kind of ["steps", "test-record"] as const) {
    const said = wordsOf(pagesOf(laundry, kind, PROPOSED)).match(/\d+(\.\d+)? V, within/g) ?? [];
    expect(said.length).toBeGreaterThan(10);
    for (const each of said) expect(each).toMatch(/^(0|\d+\.\d) V, within$/);
  }
});

it("a pigtail that comes off at both ends is clamped once", () => {
  const steps = inputFor(kitchen, PROPOSED).scope?.steps ?? [];
  const clamped = steps.filter(({ hold }) => hold === "HP2");
  expect(clamped.flatMap(({ readings }) => readings.map(({ what }) => what))).toContain("BK1q WH");
  for (const { readings } of clamped) {
    const names = readings.map(({ what }) => what);
    expect(new Set(names).size).toBe(names.length);
  }
});

it("short instructions stand two on a line, with what is to be known of them", () => {
  const marks = pagesOf(laundry, "steps", PROPOSED).flatMap((page) => textsOf(page.marks));
  const at = (text: string) => marks.find((mark) => mark.text === text)?.box;
  const [left, right] = [at("Take C2 BK out of X."), at("Take C5 BK out of X.")];
  if (left === undefined || right === undefined) throw new Error("Not written.");
  expect(right.y).toBe(left.y);
  expect(right.x).toBeGreaterThan(left.x + 60);
  // The number of each stands before it.
  for (const { number, text } of inputFor(laundry, PROPOSED).scope?.steps ?? []) {
    if (!text.startsWith("Take C")) continue;
    const words = at(text);
    const isIts = ({ y, x }: { readonly x: number; readonly y: number }): boolean =>
      words !== undefined && Math.abs(y - words.y) < 0.5 && x < words.x && x > words.x - 12;
    expect(
      marks.some((mark) => mark.text === String(number) && isIts(mark.box)),
      text,
    ).toBe(true);
  }
  expect(at("On the plan: b WH.")?.y).toBe(at("Take q WH off R1 N.")?.y);
});

it("what is to be done if a test fails is said once for tests in a row that share it", () => {
  const page = wordsOf(pagesOf(laundry, "steps", PROPOSED));
  expect(page.match(/Write down what is found: a fault/g)).toHaveLength(1);
  expect(page.match(/Supply, neutral or ground does not arrive/g)).toHaveLength(1);
});

it("materials name a thing once, with the sum, and tell how many of it are for what", () => {
  for (const project of [laundry, kitchen]) {
    const { materials = [] } = inputFor(project, PROPOSED).scope ?? {};
    const marks = textMarks(pagesOf(project, "materials", PROPOSED)).map(({ text }) => text);
    for (const what of new Set(materials.map((one) => one.what)))
      expect(marks.filter((text) => text === what).length, what).toBeLessThanOrEqual(1);
  }
  const page = wordsOf(pagesOf(laundry, "materials", PROPOSED));
  expect(page).toContain("4 twist-on connector, large 3: the joint is opened");
  expect(page).toContain("1: verify listing");
  // The table keeps them apart.
  expect(rowsOf(tablesOf(laundry, "materials", PROPOSED), "Materials").map(({ Quantity }) => Quantity)).toContain(3);
});

it("the scope says in words what is found", () => {
  const page = wordsOf(pagesOf(laundry, "scope", PROPOSED));
  const { findings } = inputFor(laundry, PROPOSED).scope ?? {};
  const rules = new Set(Object.values(findings ?? {}).flatMap((all) => all.map((one: Finding) => one.rule)));
  expect(rules.size).toBeGreaterThan(3);
  for (const rule of rules) expect(page).not.toContain(rule);
  expect(page).toContain("B1 needs 32.0625 in³ and has 30.3: 1.7625 in³ too much.");
});

it.each([
  ["test-record", "tested by"],
  ["as-found", "recorded by"],
  ["directory", "corrected"],
] as const)("%s: lines to sign stand on no page of their own", (kind, caption) => {
  for (const name of ["laundry-proposed.loadside", "wrong-on-purpose.loadside"])
    for (const paper of ["letter", "a4"] as const)
      for (const page of pagesOf(sampleProject(name), kind, { paper })) {
        const words = wordsOf([page]);
        if (words.includes(caption)) expect(words, `${name} on ${paper}`).toMatch(/Mind|Each circuit is named/);
      }
});

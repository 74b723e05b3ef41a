import { expect, test } from "vitest";
import { type CommandLine, findLines } from "../../renderer/state/commands/entry.ts";

const line = (title: string, note = ""): CommandLine => ({
  key: title,
  title,
  note,
  run: () => undefined,
});
const found = (typed: string, ...lines: readonly CommandLine[]) => findLines(lines, typed).map(({ title }) => title);

test("every word must occur, in the title or the note, in any case", () => {
  expect(found("gfci b1", line("Place: GFCI receptacle", "in B1"), line("Place: GFCI receptacle, 20 A"))).toEqual([
    "Place: GFCI receptacle",
  ]);
});

test("the thing of that very name comes before what begins with it, and that before what holds it", () => {
  expect(found("b1", line("R1 in B1"), line("B10"), line("B1"))).toEqual(["B1", "B10", "R1 in B1"]);
});

test("nothing typed shows the first ones, and no more than a person can look through", () => {
  const many = Array.from({ length: 500 }, (_, index) => line(`B${index}`));
  expect(findLines(many, "")).toHaveLength(40);
});

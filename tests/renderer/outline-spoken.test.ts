import { expect, test } from "vitest";
import { findPicked } from "../../renderer/panels/pick/find-picked.ts";
import type { Pick, PickLine } from "../../renderer/state/pick-store.ts";
import { spokenFindings, spokenStep } from "../../renderer/state/spoken.ts";
import * as historyOf from "../../shared-model/commands/history.ts";
import { emptyHistory, type History } from "../../shared-model/commands/history.ts";

const after = (history: History, title: string): History =>
  historyOf.record(
    history,
    { title, patches: [{ op: "replace", path: ["notes"], value: "" }], inverse: [] } as never,
    0,
  );

test("a step is told when it is done, taken back and done again", () => {
  const one = after(emptyHistory, "Cap C1 BK");
  expect(spokenStep(emptyHistory, one)).toBe("Cap C1 BK.");
  const back = historyOf.undo(one)?.history ?? emptyHistory;
  expect(spokenStep(one, back)).toBe("Undone: Cap C1 BK.");
  const again = historyOf.redo(back)?.history ?? emptyHistory;
  expect(spokenStep(back, again)).toBe("Done again: Cap C1 BK.");
  expect(spokenStep(again, again)).toBeUndefined();
});

test("findings are told by count, worst and how many are new, and never as a verdict", () => {
  const a = { key: "a", severity: "advice" } as const;
  const b = { key: "b", severity: "violation" } as const;
  const before = { findings: [a], couldNotTell: 0 };
  expect(spokenFindings(before, { findings: [a, b], couldNotTell: 2 })).toBe(
    "2 findings, worst: violation, 1 new. 2 could not be told.",
  );
  expect(spokenFindings(before, { findings: [a], couldNotTell: 0 })).toBe("1 finding, worst: advice.");
  expect(spokenFindings(before, { findings: [], couldNotTell: 1 })).toBe("No findings. 1 could not be told.");
});

const line = (key: string, title: string, note?: string): PickLine => ({
  key,
  title,
  run: () => undefined,
  ...(note !== undefined && { note }),
});
const pick: Pick = {
  title: "Test",
  lines: () => [line("1", "Splice H1", "with C1 BK"), line("2", "R1 H", "free"), line("3", "R1 H", "with C2 BK")],
};

test("a list is searched by all words, a whole title first, and twins say which they are", () => {
  expect(findPicked(pick, "").map(({ note }) => note)).toEqual(["with C1 BK", "1 of 2, free", "2 of 2, with C2 BK"]);
  expect(findPicked(pick, "r1 h").map(({ key }) => key)).toEqual(["2", "3"]);
  expect(findPicked(pick, "c2 r1").map(({ key }) => key)).toEqual(["3"]);
  expect(findPicked(pick, "h1").map(({ key }) => key)).toEqual(["1"]);
  expect(findPicked(pick, "zz")).toEqual([]);
});

test("what a person types comes before what the list has", () => {
  const typed: Pick = { ...pick, typed: { label: "Words", line: (text) => line(`own ${text}`, `Write ${text}`) } };
  expect(findPicked(typed, "R1").map(({ key }) => key)).toEqual(["own R1", "2", "3"]);
  expect(findPicked(typed, "R1 H").map(({ key }) => key)).toEqual(["2", "3"]);
});

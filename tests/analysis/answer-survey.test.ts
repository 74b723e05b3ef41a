/** What the worker answers of a survey: from the document alone, and a sentence where it cannot. */
import { expect, test } from "vitest";
import { answerSurvey } from "../../shared-model/analysis/answer-survey.ts";
import { boxId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

test("a box: its cables, and a test to do next", () => {
  const reply = answerSurvey(openSample("laundry-box"), { kind: "box", box: boxId("B1") });
  expect(reply).toMatchObject({
    kind: "box",
    answer: { box: { name: "B1" }, atStart: 120, left: 120, settled: false },
  });
  expect(reply.kind === "box" && reply.answer.next?.steps[0]?.hold).toBe("HP1");
});

test("a panel, or a box that is gone, cannot be surveyed, and it says so", () => {
  const project = openSample("laundry-box");
  for (const name of ["P", "B99"])
    expect(answerSurvey(project, { kind: "box", box: boxId(name) })).toEqual({
      kind: "cannot",
      why: expect.stringMatching(/^There is no such box as found\./),
    });
});

test("the circuits: every outlet as found, and nothing known before a breaker was off", () => {
  const reply = answerSurvey(openSample("laundry-box"), { kind: "map" });
  expect(reply.kind === "map" && reply.map.outlets.map(({ name, breakers }) => [name, breakers.length])).toEqual([
    ["R1", 0],
    ["R2", 0],
    ["R3", 0],
    ["R4", 0],
    ["R5", 0],
    ["L1", 0],
  ]);
  expect(reply).toMatchObject({ map: { notObserved: [{ name: "Q14" }], remarks: [], directory: [] } });
});

/** What the survey shows between a reading and the answer to it, with a worker that answers when the test says so. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { documentStore, openDocument, undo } from "../../renderer/state/document-store.ts";
import { surveyBy } from "../../renderer/state/survey/ask-survey.ts";
import { surveyBox, surveyStore } from "../../renderer/state/survey/survey-store.ts";
import { chooseTest, followSurvey, refresh, shownTest, tickNext } from "../../renderer/state/survey/surveying.ts";
import { writeResults } from "../../renderer/state/survey/write-reading.ts";
import { testedByStore } from "../../renderer/state/test-record.ts";
import type { SurveyReply } from "../../shared-model/analysis/protocol.ts";
import type { SurveyAnswer, SurveyProposal } from "../../shared-model/answers/survey.ts";
import { asId, type ConductorKey, type EnclosureId } from "../../shared-model/model/ids.ts";
import { boxId, cableId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const B1 = boxId("B1") as EnclosureId;
const steps = ["HP1", "HP2", "HP6", "HP3"].map((hold) => ({ arrangement: "A1", words: hold, hold }));
const proposal = (key: string) => ({ key, words: key, steps }) as unknown as SurveyProposal;
const answerOf = (...keys: readonly string[]): SurveyReply => {
  const [next, ...others] = keys.map(proposal);
  return { kind: "box", answer: { next, others } as unknown as SurveyAnswer };
};

let asked: ((reply: SurveyReply | undefined) => void)[] = [];
let stop = (): void => {};
const shown = (): string | undefined => shownTest(surveyStore.get())?.key;
const settled = (): Promise<void> => new Promise((done) => setTimeout(done));
/** Answers the question that was asked last; earlier ones are overtaken. */
async function answer(...keys: readonly string[]): Promise<void> {
  asked.at(-1)?.(answerOf(...keys));
  await settled();
}
const write = () => {
  const point = (conductor: string) => ({ cable: cableId("C1"), conductor: asId<ConductorKey>(conductor) });
  const read = { kind: "pair", from: point("bk"), to: point("wh") } as const;
  const around = { box: B1, arrangement: "A2", instrument: "low-impedance-meter" } as const;
  return writeResults(around, [{ test: read, value: "122", unit: "V" }]);
};

beforeEach(async () => {
  asked = [];
  openDocument({ project: openSample("laundry-box") });
  testedByStore.merge({ by: "Pat Example" });
  surveyBy(() => new Promise((done) => asked.push(done)));
  surveyBox(B1);
  stop = followSurvey();
  await answer("ohms", "volts", "join C2");
});
afterEach(() => stop());

test("after it is written down the old test stays until the answer comes, then what tells most is shown, unticked", async () => {
  chooseTest("volts");
  tickNext();
  expect(write()).toEqual({ ok: true });
  expect(surveyStore.get()).toMatchObject({ stale: true, goOn: true, ticks: [] });
  expect(shown()).toBe("volts");
  await settled();
  expect(shown()).toBe("volts");
  await answer("join C2", "volts");
  expect(surveyStore.get()).toMatchObject({ stale: false, goOn: false, chosen: undefined });
  expect(shown()).toBe("join C2");
});

test("a change that is no result of the test keeps what was chosen, and its ticks", async () => {
  chooseTest("volts");
  tickNext();
  write();
  undo();
  surveyStore.merge({ goOn: false });
  tickNext();
  await answer("ohms", "volts");
  expect(shown()).toBe("volts");
  expect(surveyStore.get().ticks).toHaveLength(1);
});

test("a test that is offered no longer gives way to the next, and what was ticked for it is void", async () => {
  chooseTest("join C2");
  tickNext();
  write();
  surveyStore.merge({ goOn: false, ticks: [{ point: "1", by: "Pat Example", at: 0 }] });
  await answer("ohms", "volts");
  expect(shown()).toBe("ohms");
  expect(surveyStore.get().ticks).toEqual([]);
});

test("ticks carry the number of the hold point, not their count", () => {
  for (const _ of steps) tickNext();
  expect(surveyStore.get().ticks.map(({ point }) => point)).toEqual(["1", "2", "6", "3"]);
  write();
  const [reading] = Object.values(documentStore.get().project.readings);
  expect(reading?.remark).toMatch(/^Hold point 1: Pat Example, .*; Hold point 6: .*; Hold point 3: /);
});

test("of two answers the later counts: one to an earlier question changes nothing", async () => {
  refresh();
  const early = asked.at(-1);
  refresh();
  await answer("join C3");
  early?.(answerOf("join C4"));
  await settled();
  expect(shown()).toBe("join C3");
});

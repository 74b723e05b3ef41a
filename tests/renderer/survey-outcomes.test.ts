/** How results of a survey are entered and written down, without the window around them. */
import { beforeEach, describe, expect, test } from "vitest";
import { wentOf } from "../../renderer/panels/survey/went.ts";
import { documentStore, openDocument, undo } from "../../renderer/state/document-store.ts";
import {
  type Entered,
  figuresOfOneLive,
  inTrap,
  isComplete,
  likelyWorks,
  NOTHING_ENTERED,
  resultsOf,
  unreadable,
} from "../../renderer/state/survey/outcomes.ts";
import { surveyStore } from "../../renderer/state/survey/survey-store.ts";
import { tickNext, untick } from "../../renderer/state/survey/surveying.ts";
import {
  breakerOff,
  factsOf,
  surveyReadings,
  takeBack,
  writeBreakerOff,
  writeFacts,
  writeResults,
} from "../../renderer/state/survey/write-reading.ts";
import { testedByStore } from "../../renderer/state/test-record.ts";
import type { SurveyAnswer, SurveyedCable, SurveyRole } from "../../shared-model/answers/survey.ts";
import { asId, type CableId, type ConductorKey, type EnclosureId, outletKey } from "../../shared-model/model/ids.ts";
import type { SurveyPoint, SurveyTest } from "../../shared-model/model/survey.ts";
import { boxId, cableId, deviceId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const at = (cable: CableId, conductor: string): SurveyPoint => ({ cable, conductor: asId<ConductorKey>(conductor) });
const pair = (from: SurveyPoint, to: SurveyPoint): SurveyTest => ({ kind: "pair", from, to });
const entered = (...figures: readonly string[]): Entered => ({ ...NOTHING_ENTERED, figures: { ...figures } });

const C1 = cableId("C1");
const C2 = cableId("C2");
const across = (cable: CableId): SurveyTest => pair(at(cable, "bk"), at(cable, "wh"));
const cable = (id: CableId, ...may: readonly SurveyRole[]): SurveyedCable => ({
  id,
  name: id,
  conductors: [
    { key: asId("bk"), code: "BK", words: "black", grounding: false },
    { key: asId("wh"), code: "WH", words: "white", grounding: false },
    { key: asId("cu"), code: "bare", words: "bare", grounding: true },
  ],
  may: may.map((role) => ({ role, weight: 1 / may.length })),
  evidence: [],
  tag: id,
});

describe("what is typed", () => {
  test.each([
    ["121.8", "121.8"],
    ["121,8 V", "121.8"],
    [" 0v ", "0"],
  ])("%j are volts", (typed, value) => {
    const wanted = { arrangement: "A2", tests: [across(C1)] } as const;
    expect(unreadable(wanted, entered(typed))).toBeUndefined();
    expect(resultsOf(wanted, entered(typed))).toEqual([{ test: across(C1), value, unit: "V" }]);
  });

  test.each(["lots", "12 ohm nearly", "1001", "-4", "open"])("%j is none", (typed) => {
    expect(unreadable({ arrangement: "A2", tests: [across(C1)] }, entered(typed))).toBe(typed);
  });

  test("with the power off it is ohms, and open is a result", () => {
    const wanted = { arrangement: "A1", tests: [across(C1), across(C2)] } as const;
    expect(isComplete(wanted, entered("open"))).toBe(false);
    expect(unreadable(wanted, entered("Open", "18 Ω"))).toBeUndefined();
    expect(resultsOf(wanted, entered("Open", "18 Ω")).map(({ value, unit }) => [value, unit])).toEqual([
      ["open", undefined],
      ["18", "ohm"],
    ]);
  });
});

test("one live cable among dead ones: hot to white and hot to ground read volts, white to ground none", () => {
  const toGround = (id: CableId, wire: string): SurveyTest => pair(at(id, wire), "ground");
  const tests = [across(C1), toGround(C1, "bk"), toGround(C1, "wh"), across(C2), toGround(C2, "bk")];
  const cables = [cable(C1), cable(C2)];
  expect(Object.values(figuresOfOneLive({ tests }, cables, C1, 120))).toEqual(["120", "120", "0", "0", "0"]);
  expect(Object.values(figuresOfOneLive({ tests }, cables, undefined, 120))).toEqual(["0", "0", "0", "0", "0"]);
});

const SUPPLY: SurveyRole = { key: "s", kind: "supply", words: "supply", items: [] };
const REVERSED: SurveyRole = { key: "r", kind: "supply", words: "supply, reversed", items: [], reversed: true };
const LOOP: SurveyRole = { key: "l", kind: "loop-fed", words: "loop", items: [] };
const R2 = { id: "R2", name: "R2", kind: "outlet" } as const;
const R4 = { id: "R4", name: "R4", kind: "outlet" } as const;
const feeds = (item: typeof R2 | typeof R4): SurveyRole => ({
  key: item.id,
  kind: "feeds",
  words: `feeds ${item.id}`,
  items: [item],
});

test("what may be seen to work: what the joined cables lead to in what is left, with its share", () => {
  const C3 = cableId("C3");
  const answer = {
    cables: [cable(C1), cable(C2), cable(C3)],
    items: [R2, R4],
    left: 2,
    surviving: [
      { weight: 0.75, roles: [SUPPLY, feeds(R2), feeds(R4)], words: "" },
      { weight: 0.25, roles: [SUPPLY, feeds(R4), feeds(R2)], words: "" },
    ],
  } as unknown as SurveyAnswer;
  expect(likelyWorks(answer, [C1, C2])).toEqual([
    { key: "R2", items: ["R2"], weight: 0.75 },
    { key: "R4", items: ["R4"], weight: 0.25 },
  ]);
  expect(likelyWorks(answer, [C1, C2, C3])).toEqual([{ key: "R2 R4", items: ["R2", "R4"], weight: 1 }]);
  expect(likelyWorks({ ...answer, left: 3 }, [C1, C2])).toEqual([]);
});

test("the trap is named while a cable may be a reversed supply or the switch end of a loop, and not before or after", () => {
  const named = (...may: readonly SurveyRole[]) => inTrap({ cables: [cable(C1, ...may)] }).length;
  expect([named(SUPPLY, REVERSED, LOOP), named(REVERSED), named(LOOP), named(SUPPLY, LOOP)]).toEqual([1, 0, 0, 0]);
  // Before anything is read every cable may still be dead.
  expect(named(feeds(R2), REVERSED, LOOP)).toBe(0);
});

describe("in the document", () => {
  const B1 = boxId("B1") as EnclosureId;
  const own = (box?: EnclosureId) => surveyReadings(documentStore.get().project.readings, box);
  const around = { box: B1, arrangement: "A2", instrument: "low-impedance-meter" } as const;

  beforeEach(() => {
    openDocument({ project: openSample("laundry-box") });
    testedByStore.set({ by: "Pat Example", day: "2026-05-04", instrument: "meter", instrumentId: "M-17" });
    surveyStore.merge({ ticks: [] });
  });

  test("all results of one test are one step, with the ticked hold points beside each", () => {
    tickNext();
    tickNext();
    untick();
    const tests = [across(C1), across(C2)];
    expect(writeResults(around, resultsOf({ arrangement: "A2", tests }, entered("122", "0")))).toEqual({ ok: true });
    expect(own(B1)).toMatchObject([
      {
        value: "122",
        unit: "V",
        by: "Pat Example",
        instrumentId: "M-17",
        survey: { arrangement: "A2", test: tests[0] },
      },
      {
        value: "0",
        unit: "V",
        points: ["cable-C2.bk.a", "cable-C2.wh.a"],
        remark: expect.stringMatching(/^Hold point 1: Pat Example, \d{4}-\d\d-\d\d \d\d:\d\d$/),
      },
    ]);
    expect(own(B1)[0]?.remark).not.toContain("Hold point 2");
    expect(surveyStore.get().ticks).toEqual([]);
    undo();
    expect(own(B1)).toEqual([]);
  });

  test("nobody without a name ticks", () => {
    testedByStore.merge({ by: " " });
    tickNext();
    expect(surveyStore.get().ticks).toEqual([]);
  });

  test("a reading can be taken back, and others stay", () => {
    writeResults(around, [{ test: across(C1), value: "122", unit: "V" }]);
    writeResults(around, [{ test: across(C2), value: "0", unit: "V" }]);
    const [first] = own(B1);
    if (first === undefined) throw new Error("Nothing was written.");
    takeBack(first.id);
    expect(own(B1).map(({ value }) => value)).toEqual(["0"]);
  });

  test("facts add up, and an emptied one is said no longer: a reference that is not proved proves nothing", () => {
    writeFacts(B1, { referenceProved: "water pipe" });
    writeFacts(B1, { switchesHere: 0 });
    expect(factsOf(B1)?.facts).toEqual({ referenceProved: "water pipe", switchesHere: 0 });
    writeFacts(B1, { referenceProved: undefined });
    expect(factsOf(B1)?.facts).toStrictEqual({ switchesHere: 0 });
    expect(own(B1)).toHaveLength(1);
  });

  test("a breaker has one account: a new one takes the place of the old, and half dead is dead and live", () => {
    const Q14 = deviceId("Q14");
    const [r1, r2, r5] = [outletKey(deviceId("R1")), outletKey(deviceId("R2")), outletKey(deviceId("R5"))];
    writeBreakerOff(Q14, "Q14", [r1], []);
    writeBreakerOff(Q14, "Q14", [r1, r2], [r2, r5]);
    expect(own()).toHaveLength(1);
    // What was seen live stays live when it is looked at again; what nobody looked at is in no list.
    expect(wentOf(breakerOff(documentStore.get().project.readings, Q14))).toEqual({
      [r1]: "dead",
      [r2]: "half",
      [r5]: "live",
    });
  });

  test("what a person knows of a cable is kept with how it is known", () => {
    const known = [{ cable: C1, leadsTo: "panel", how: "followed to the panel" }] as const;
    expect(writeFacts(B1, { known })).toEqual({ ok: true });
    expect(factsOf(B1)?.facts).toEqual({ known });
    writeFacts(B1, { known: undefined });
    expect(factsOf(B1)?.facts).toEqual({});
  });
});

/** What the test record expects, against hand calculation and against the laundry job worked out on paper. */
import { describe, expect, test } from "vitest";
import { expectedTests } from "../../shared-model/analysis/expected-tests.ts";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { asId, type DeviceId, type LoadId } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import type { RecordStage, RecordTest } from "../../shared-model/model/test-record.ts";
import { RESULT_TITLES } from "../../shared-model/queries/record-words.ts";
import { RESULT_WORDS } from "../../shared-model/queries/recorded-value.ts";
import { TESTER_WORDS } from "../../shared-model/solver/circuit/plug-in-tester.ts";
import { drawing } from "../builders/drawing.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { Drawing } from "../rules/drawing.ts";
import { inRoom, replacing } from "../rules/two-states.ts";

const one = (project: Project, test: RecordTest, point: string, stage: RecordStage = "after") => {
  const [answer] = expectedTests(project, [{ stage, test, point }]);
  return answer;
};
const expectedOf = (...asked: Parameters<typeof one>) => one(...asked)?.expected;
const namesOf = (...asked: Parameters<typeof one>) => {
  const expected = expectedOf(...asked);
  return expected?.kind === "outlets" ? expected.names : expected;
};

describe("the laundry job", () => {
  const job = openSample("laundry-proposed");

  /** At 122 V, with the stair light on and nothing plugged in. */
  const quiet = (): Project => {
    const bare = (installation: Installation): Installation => ({
      ...installation,
      loads: {} as Record<LoadId, never>,
    });
    return {
      ...job,
      supply: { ...job.supply, nominalV: 122 },
      asFound: bare(job.asFound),
      proposed: bare(job.proposed as Installation),
    };
  };

  test.each(["R1b", "R2", "R3", "R5", "R4b"])("%s: 121.9 / 121.9 / 0.04 and the tester says correct", (name) => {
    const at = (kind: RecordTest) => expectedOf(quiet(), kind, deviceId(name));
    const [hn, hg, ng] = (["hot-neutral", "hot-ground", "neutral-ground"] as const).map(at);
    // 60 W at 120 V take half an ampere through 55 ft of 12 AWG, 1.588 ohm in 1000 ft: 0.044 V on each conductor.
    for (const [figure, volts, within] of [
      [hn, 121.9, 5],
      [hg, 121.9, 5],
      [ng, 0.04, 1],
    ] as const) {
      expect(figure).toMatchObject({ kind: "figure", unit: "V", within });
      expect(Math.abs((figure?.kind === "figure" ? figure.value : 0) - volts)).toBeLessThan(0.06);
    }
    expect(at("polarity")).toEqual({ kind: "word", word: "correct" });
  });

  test("TEST and RESET of each device: who goes dark and comes on, and who is to be looked at besides", () => {
    const all = ["R1b", "R2", "R3", "R4b", "R5", "L1"];
    for (const button of ["own-test", "reset"] as const) {
      expect(namesOf(job, button, deviceId("R1b"))).toEqual(["R1b", "R2", "R3", "R5"]);
      expect(namesOf(job, button, deviceId("R4b"))).toEqual(["R4b"]);
      expect(one(job, button, deviceId("R1b"))?.around?.map(({ name }) => name)).toEqual(all);
    }
    expect(namesOf(job, "plug-in-button", deviceId("R3"))).toEqual(["R1b", "R2", "R3", "R5"]);
    expect(namesOf(job, "plug-in-button", deviceId("R4b"))).toEqual(["R4b"]);
  });

  test("before the work nothing has a button, and R1 is the receptacle that R1b comes for", () => {
    expect(one(job, "own-test", deviceId("R1"), "before")).toEqual({
      stage: "before",
      test: "own-test",
      point: deviceId("R1"),
    });
    expect(expectedOf(job, "hot-neutral", deviceId("R1"), "before")).toMatchObject({ kind: "figure" });
    expect(expectedOf(job, "hot-neutral", deviceId("R1b"), "before")).toBeUndefined();
    expect(expectedOf(job, "hot-neutral", deviceId("R1"))).toBeUndefined();
  });

  test("a luminaire lights, a box is to be dead, ohms and notes are not foretold", () => {
    expect(expectedOf(job, "works", deviceId("L1"))).toEqual({ kind: "word", word: "works" });
    expect(expectedOf(job, "dead", boxId("B1"))).toEqual({ kind: "word", word: "dead" });
    expect(expectedOf(job, "continuity", deviceId("R1b"))).toBeUndefined();
    expect(expectedOf(job, "note", deviceId("R1b"))).toBeUndefined();
  });
});

/** Before the work and after it, an outlet is measured with lamps lit and nothing running: CM4 of the commissioning. */
describe.each(["laundry-proposed", "kitchen-multiwire", "two-wire-bedroom"] as const)("%s", (name) => {
  test("record and work steps lead to expect the same at every outlet, before the work and after it", () => {
    const job = openSample(name);
    const steps = scopeAnswer(openSession(job))?.steps ?? [];
    const wanted = steps.flatMap(({ stage, test: at, readings }) =>
      stage === 1 || at === "CM4"
        ? readings.flatMap(({ test: kind, point, expected }) =>
            kind === undefined || point === undefined || expected === undefined
              ? []
              : [{ stage: stage === 1 ? ("before" as const) : ("after" as const), test: kind, point, expected }],
          )
        : [],
    );
    expect(new Set(wanted.map(({ stage }) => stage)).size).toBe(2);
    const answers = expectedTests(
      job,
      wanted.map(({ stage, test: kind, point }) => ({ stage, test: kind, point })),
    );
    expect(answers.map(({ expected }) => expected)).toEqual(wanted.map(({ expected }) => expected));
  });
});

test("what runs at a receptacle is not running when outlets are measured", () => {
  const job = openSample("laundry-proposed");
  expect(Object.keys(job.proposed?.loads ?? {}).length).toBeGreaterThan(0);
  const bare = { ...job, proposed: { ...(job.proposed as Installation), loads: {} } };
  for (const name of ["R1b", "R2", "R4b"])
    for (const kind of ["hot-neutral", "hot-ground", "neutral-ground"] as const)
      expect(expectedOf(job, kind, deviceId(name))).toEqual(expectedOf(bare, kind, deviceId(name)));
});

describe("what is not foretold", () => {
  test("a floating contact shows what a meter of its make shows", () => {
    const open = inRoom(["utility"]).put({ "C1.wh@A": "cap" });
    expect(expectedOf(open.project(), "neutral-ground", "R1")).toMatchObject({ value: 0 });
    // 200 ft of cable beside the hot hold the open neutral up; a lamp would take it down.
    open.box("B", 18).cable("C2", "nm-12-2-g", "A", "B").put({ "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2" });
    Object.assign(open.cables.C2 as object, { lengthFt: 200 });
    expect(expectedOf(open.project(), "neutral-ground", "R1")).toBeUndefined();
    expect(expectedOf(open.project(), "polarity", "R1")).toEqual({ kind: "word", word: "open-neutral" });
  });

  test("an outlet whose supply is not drawn: nobody may take it for dead", () => {
    // The cable comes from somewhere beyond the drawing, or from a box that nothing is known of.
    for (const isBeyond of [true, false]) {
      const wired = new Drawing(2020).box("A", 18).device("R1", "gfci-receptacle-15", "A");
      if (!isBeyond) wired.box("E", 18);
      wired.cable("C1", "nm-14-2-g", "A", "E");
      wired.put({ "C1.bk@A": "R1.LINE_H", "C1.wh@A": "R1.LINE_N", "C1.cu@A": "R1.G" });
      expect("outside" in (wired.cables.C1?.sides.b ?? {})).toBe(isBeyond);
      for (const kind of ["hot-neutral", "hot-ground", "neutral-ground", "polarity"] as const)
        expect(expectedOf(wired.project(), kind, "R1"), kind).toBeUndefined();
    }
    // What a drawn breaker feeds as far as an open joint is dead by the drawing.
    const cut = inRoom(["utility"]).put({ "C1.bk@A": "cap" }).project();
    expect(expectedOf(cut, "hot-neutral", "R1")).toMatchObject({ value: 0 });
  });

  test("a luminaire that is dark as drawn may light in another position of its switches", () => {
    const dark = drawing().box("B1").device("L1", "luminaire-60", "B1").project;
    expect(expectedOf(dark, "works", deviceId("L1"))).toBeUndefined();
  });

  test("two devices in a row, where either may open first", () => {
    const row = new Drawing(2020)
      .panel("P")
      .breaker("Q1", 20, {}, "breaker-gfci-1")
      .box("A", 30)
      .device("G1", "gfci-receptacle-15", "A")
      .cable("C1", "nm-12-2-g", "P", "A")
      .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "Q1.LOAD_N", "C1.cu@P": "P-GB.BAR" })
      .put({ "C1.bk@A": "G1.LINE_H", "C1.wh@A": "G1.LINE_N", "C1.cu@A": "G1.G" })
      .project();
    expect(one(row, "plug-in-button", "G1")).toMatchObject({ around: [{ outlet: "G1", name: "G1" }] });
    expect(expectedOf(row, "plug-in-button", "G1")).toBeUndefined();
    // Its own TEST flows inside of it and by the breaker both ways.
    expect(namesOf(row, "own-test", "G1")).toEqual(["G1"]);
    expect(namesOf(row, "own-test", "Q1")).toEqual(["G1"]);
  });

  test("without its neutral a device does not open by TEST: nothing is expected to go dark", () => {
    const asleep = inRoom(["utility"], { type: "gfci-receptacle-15" }).put({ "C1.wh@A": "cap" }).project();
    expect(namesOf(asleep, "own-test", "R1")).toEqual([]);
    expect(expectedOf(asleep, "reset", "R1")).toBeUndefined();
  });
});

test("TEST of an arc-fault receptacle opens it, whatever flows to ground", () => {
  const drawn = replacing(["bedroom"], "afci-receptacle-15").project();
  expect(namesOf(drawn, "own-test", "R2")).toEqual(["R2"]);
  expect(namesOf(drawn, "reset", "R2")).toEqual(["R2"]);
});

test("before proposed is started both stages are tested on what was found", () => {
  const found = openSample("laundry-box");
  const point = deviceId("R1");
  expect(expectedOf(found, "hot-neutral", point)).toEqual(expectedOf(found, "hot-neutral", point, "before"));
});

test("a thing that is not drawn has no expected result", () => {
  const job = openSample("laundry-proposed");
  const gone = asId<DeviceId>("gone");
  for (const kind of ["hot-neutral", "polarity", "works", "own-test", "reset", "plug-in-button"] as const)
    expect(one(job, kind, gone)).toEqual({ stage: "after", test: kind, point: gone });
});

test("results of a plug-in tester are the names on its label, and each has its title", () => {
  expect([...(RESULT_WORDS.polarity ?? [])].sort()).toEqual(Object.keys(TESTER_WORDS).sort());
  for (const [name, { title }] of Object.entries(TESTER_WORDS)) expect(RESULT_TITLES[name]).toBe(title);
});

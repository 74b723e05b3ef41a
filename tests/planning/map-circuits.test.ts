/** The map of circuits and the order along one, on the laundry sample, whose wiring is known from its drawing. */
import { describe, expect, test } from "vitest";
import { circuitSurvey, surveyAnswer } from "../../shared-model/analysis/survey-answer.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { SurveyTold } from "../../shared-model/model/survey.ts";
import { mapCircuits } from "../../shared-model/planning/survey/map-circuits.ts";
import { type OrderSeen, orderAlong } from "../../shared-model/planning/survey/order-along.ts";
import { boxId, deviceId, outlet } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { ohms, triple, works } from "./survey-bench.ts";

const LAUNDRY = openSample("laundry-box");
const Q14 = deviceId("Q14");
const ALL = ["R1", "R2", "R3", "R4", "R5", "L1"].map((name) => outlet(name));

describe("one breaker off at a time", () => {
  test("what the drawing shows gives no remark, and a directory line from what went dead", () => {
    const map = mapCircuits(LAUNDRY, [{ breaker: Q14, dead: ALL }]);
    expect(map.remarks).toEqual([]);
    expect(map.outlets.filter(({ differs }) => differs)).toEqual([]);
    expect(map.outlets.find(({ name }) => name === "R3")).toMatchObject({
      breakers: [{ id: Q14, name: "Q14" }],
      drawn: [{ id: Q14, name: "Q14" }],
    });
    const [line] = map.directory;
    expect(line?.breaker).toBe(Q14);
    expect(line?.words).not.toBe(line?.was);
    expect(line?.words.length).toBeGreaterThan(5);
    expect(map.notObserved.map(({ id }) => id)).not.toContain(Q14);
  });

  test("an outlet that stayed live is a mismatch, said plainly, and a half that stays live in the box a warning", () => {
    const dead = ALL.filter((key) => key !== outlet("R5"));
    const { outlets, remarks } = mapCircuits(LAUNDRY, [{ breaker: Q14, dead, stillLive: [outlet("R5")] }]);
    expect(outlets.find(({ name }) => name === "R5")).toMatchObject({ differs: true, breakers: [] });
    expect(remarks).toContain("R5 is drawn on Q14; it stayed live with Q14 off.");
    expect(remarks.join(" ")).not.toContain("beside what went dead");
    const half = mapCircuits(LAUNDRY, [{ breaker: Q14, dead: ALL, stillLive: [outlet("R5")] }]);
    expect(half.remarks.join(" ")).toContain("With Q14 off, R5 stays live beside what went dead");
    expect(half.outlets.find(({ name }) => name === "R5")).toMatchObject({ differs: false, live: [] });
  });

  test("what nobody looked at is neither dead nor live, differs from nothing, and is named", () => {
    const [r1, r2, l1] = [outlet("R1"), outlet("R2"), outlet("L1")];
    const { outlets, remarks, directory } = mapCircuits(LAUNDRY, [{ breaker: Q14, dead: [r1, r2], stillLive: [l1] }]);
    const of = (name: string) => outlets.find((one) => one.name === name);
    const here = [{ id: Q14, name: "Q14" }];
    expect(of("R1")).toMatchObject({ breakers: here, live: [], notLookedAt: [], differs: false });
    expect(of("R4")).toMatchObject({ breakers: [], live: [], notLookedAt: here, differs: false });
    expect(of("L1")).toMatchObject({ breakers: [], live: here, notLookedAt: [], differs: true });
    expect(remarks).toContain("With Q14 off nobody looked at R3, R4 and R5: they may hang on it.");
    expect(remarks.some((line) => line.startsWith("R4 is drawn"))).toBe(false);
    expect(directory).toMatchObject([{ notLookedAt: 3 }]);
  });

  test("what stayed live in a box where nothing went dead is no second circuit", () => {
    const { remarks } = mapCircuits(LAUNDRY, [
      { breaker: Q14, dead: ALL.filter((key) => key !== outlet("L1")), stillLive: [outlet("L1")] },
    ]);
    expect(remarks).toEqual(["L1 is drawn on Q14; it stayed live with Q14 off."]);
  });

  test("nothing is said of breakers that nobody switched off; the last observation of one counts", () => {
    const none = mapCircuits(LAUNDRY, []);
    expect(none.remarks).toEqual([]);
    expect(none.notObserved.map(({ id }) => id)).toContain(Q14);
    const again = mapCircuits(LAUNDRY, [
      { breaker: Q14, dead: [] },
      { breaker: Q14, dead: ALL },
    ]);
    expect(again.remarks).toEqual([]);
  });
});

describe("the order along a circuit", () => {
  test("opened joints prove what is beyond; a drop under load makes it likely", () => {
    const seen: readonly OrderSeen[] = [
      { kind: "opened", at: outlet("R2"), dead: [outlet("R3")] },
      { kind: "drop", loadAt: outlet("R1"), at: outlet("R1"), volts: 3 },
      { kind: "drop", loadAt: outlet("R1"), at: outlet("R2"), volts: 3.05 },
      { kind: "drop", loadAt: outlet("R4"), at: outlet("R4"), volts: 4.5 },
      { kind: "drop", loadAt: outlet("R4"), at: outlet("R2"), volts: 3 },
    ];
    const order = orderAlong(LAUNDRY, seen);
    expect(order.before.map(({ near, far, proved }) => [near, far, proved])).toEqual([
      [outlet("R2"), outlet("R3"), true],
      [outlet("R1"), outlet("R2"), false],
    ]);
    expect(order.first).toEqual([outlet("R1")]);
    expect(order.notKnown).toEqual(["Where R4 comes in is not known yet."]);
    expect(order.contradictions).toEqual([]);
  });

  test("each beyond the other is a contradiction, and a load too small tells nothing", () => {
    const both: readonly OrderSeen[] = [
      { kind: "opened", at: outlet("R2"), dead: [outlet("R3")] },
      { kind: "opened", at: outlet("R3"), dead: [outlet("R2")] },
    ];
    expect(orderAlong(LAUNDRY, both).contradictions).toEqual(["R2 and R3 are each found beyond the other. Repeat it."]);
    const small: readonly OrderSeen[] = [
      { kind: "drop", loadAt: outlet("R1"), at: outlet("R1"), volts: 0.3 },
      { kind: "drop", loadAt: outlet("R1"), at: outlet("R2"), volts: 0.3 },
    ];
    expect(orderAlong(LAUNDRY, small).before).toEqual([]);
  });
});

describe("as the document keeps it", () => {
  const keep = (project: Project, reading: object, id: string): Project => {
    const done = runCommand(project, { command: "add-reading", args: { id, reading } });
    if (!done.ok) throw new Error(done.refusal.message);
    return done.project;
  };
  const told = (project: Project, test_: SurveyTold, id: string, more: object = {}) =>
    keep(project, { instrument: "by-eye", points: ["x"], value: "", survey: { ...more, test: test_ } }, id);

  test("observations are read from the readings; computed ones and those of other boxes do not count", () => {
    let now = told(LAUNDRY, { kind: "breaker-off", breaker: Q14, dead: ALL }, "m1");
    now = told(now, { kind: "opened", at: outlet("R2"), dead: [outlet("R3")] }, "m2");
    const { map, order } = circuitSurvey(now);
    expect(map.directory).toHaveLength(1);
    expect(order.before).toHaveLength(1);
  });

  test("a survey reads facts and readings of its box in their order, and takes over in one step that can be undone", () => {
    const box = boxId("B1");
    const readings = [
      ...triple("C1", [122, 122, 0]),
      ...["C2", "C3", "C4", "C5"].flatMap((name) => triple(name, [0, 0, 0])),
      ohms("C4", 18, ["device-S1"]),
      works(["C1", "C2"], [outlet("R2"), outlet("R3")]),
    ];
    let now = LAUNDRY;
    readings.forEach(({ instrument, value, survey }, index) => {
      now = keep(now, { instrument, value, points: ["x"], survey: { ...survey, box } }, `m${index}`);
    });
    now = told(now, { kind: "facts", facts: { lamps: [{ item: outlet("L1"), lamp: "filament" }] } }, "f1", { box });
    const answer = surveyAnswer(now, box);
    if (!answer.ok) throw new Error(answer.problems.map(({ message }) => message).join(" "));
    expect(answer.value.cables.slice(0, 2).map(({ role }) => role?.words)).toEqual(["supply", "feeds R2 and R3"]);
    expect(answer.value.items.find(({ name }) => name === "L1")).toMatchObject({ lamp: "filament" });
    expect(answer.value.rejected[0]?.reading).toBe("m1");
    const { takeOver } = answer.value;
    if (takeOver === undefined) throw new Error("Nothing to take over.");
    const before = JSON.stringify(now.asFound);
    const done = runCommand(now, takeOver.call);
    if (!done.ok) throw new Error(done.refusal.message);
    expect(JSON.stringify(now.asFound)).toBe(before);
    const { asFound } = done.project;
    expect(asFound.intent.boxes[box]).toEqual({ supply: "cable-C1" });
    expect(asFound.cables["cable-C1" as never]).toMatchObject({ evidence: { sides: "measured" } });
    // Tags only of what is settled: C1, C2 and the light by its filament, not the others.
    const tagged = Object.entries(asFound.enclosures[box]?.places ?? {}).flatMap(([end, { tag }]) =>
      tag === undefined ? [] : [end],
    );
    expect(tagged.filter((end) => end.includes("C3") || end.includes("C5"))).toEqual([]);
    expect(tagged.filter((end) => end.includes("C1"))).toHaveLength(2);
    // Nothing joined was parted, nothing moved.
    const ats = (project: Project) => Object.values(project.asFound.enclosures[box]?.places ?? {}).map(({ at }) => at);
    expect(ats(done.project)).toEqual(ats(now));
  });

  test("no box as found, and a panel, are refused in a sentence", () => {
    const no = surveyAnswer(LAUNDRY, boxId("gone"));
    expect(no).toMatchObject({ ok: false, problems: [expect.objectContaining({ code: "no-such-box" })] });
  });
});

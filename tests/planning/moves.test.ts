/**
 * Moves of conductor ends from what is there, by hand: one to take an end off, one to put it on. The laundry box as planned
 * takes 10 off and 16 on with three new joints; with everything behind the device 8 and 10 with one. Both were counted from
 * the drawing end by end, and agree with an independent exhaustive search over the homes of the joints.
 */
import { describe, expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type FitProposal, fitDevice } from "../../shared-model/planning/fit-device.ts";
import { type MakeUpProposal, makeUp } from "../../shared-model/planning/make-up.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { boxId, cableId, deviceId, drawing, laundryAsFound, laundryDrawing, outlet } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { down, intent } from "./worked-boxes.ts";

const CABLES = ["C2", "C3", "C4", "C5"];
const DUAL = [{ device: deviceId("R1"), type: "dual-function-receptacle-15" }];

function made(
  project: Project,
  state: "as-found" | "proposed",
  box: string,
  asked: ReturnType<typeof intent>,
): MakeUpProposal {
  const done = makeUp(project, state, boxId(box), asked);
  if (!done.ok) throw new Error(done.refusal.message);
  expect(invariantProblems(done.value.project)).toEqual([]);
  return done.value;
}

function fitted(
  project: Project,
  request: Parameters<typeof fitDevice>[1],
): FitProposal & { readonly result: Project } {
  const done = fitDevice(project, request);
  if (!done.ok) throw new Error(done.refusal.message);
  const ran = runCommand(project, done.value.call);
  if (!ran.ok) throw new Error(ran.refusal.message);
  expect(invariantProblems(ran.project)).toEqual([]);
  return { ...done.value, result: ran.project };
}

const joints = ({ plan }: Pick<MakeUpProposal, "plan">): Readonly<Record<string, number>> =>
  Object.fromEntries(plan.splices.map(({ word, count }) => [word, count]));

describe("the laundry box", () => {
  const started = laundryDrawing().propose().project;

  test("as planned: 10 off, 16 on, three new joints, and the grounds in 5 and 4", () => {
    const asked = intent("C1", {
      downstream: CABLES.map((cable) => down(cable, cable === "C2" || cable === "C5")),
      replace: DUAL,
    });
    const done = made(started, "proposed", "B1", asked);
    expect(done.plan.moves).toEqual({ detach: 10, attach: 16, newSplices: 3 });
    expect(joints(done)).toEqual({ HL: 4, NL: 4, HD: 3, ND: 3, E1: 5, E2: 4 });
  });

  test("everything behind the device: only the supply pair leaves, 8 off, 10 on, one new joint", () => {
    const asked = intent("C1", { downstream: CABLES.map((cable) => down(cable, true)), replace: DUAL });
    const done = made(started, "proposed", "B1", asked);
    expect(done.plan.moves).toEqual({ detach: 8, attach: 10, newSplices: 1 });
    expect(joints(done)).toEqual({ HD: 5, ND: 5, E1: 5, E2: 4 });
  });

  test("hall left out: four on LINE and a pigtail still fit one connector", () => {
    const asked = intent("C1", { downstream: CABLES.map((cable) => down(cable, cable === "C2")), replace: DUAL });
    const done = made(started, "proposed", "B1", asked);
    expect(joints(done)).toMatchObject({ HL: 5, NL: 5 });
  });

  test("light protected too: its pair goes over together", () => {
    const asked = intent("C1", { downstream: CABLES.map((cable) => down(cable, cable !== "C3")), replace: DUAL });
    expect(joints(made(started, "proposed", "B1", asked))).toMatchObject({ HL: 3, NL: 3, HD: 4, ND: 4 });
  });

  test("a make-up that is there already takes no move", () => {
    const asked = intent("C1", {
      downstream: CABLES.map((cable) => down(cable, cable === "C2" || cable === "C5")),
      replace: DUAL,
    });
    const once = made(started, "proposed", "B1", asked).project;
    const again = made(once, "proposed", "B1", { ...asked, replace: [] });
    expect(again.plan.moves).toEqual({ detach: 0, attach: 0, newSplices: 0 });
    expect(again.project).toBe(once);
  });
});

describe("fitting a ground-fault device", () => {
  const sample = openSample("laundry-box");
  const first = fitted(sample, { outlet: outlet("R1") });

  test("at the laundry: what is wished or required goes behind it, the freezer and the light stay, the clamps come out", () => {
    expect(first.device).toMatchObject({ name: "R1b", type: "dual-function-receptacle-15" });
    expect(first.plan.moves).toEqual({ detach: 10, attach: 16, newSplices: 3 });
    expect(joints(first)).toEqual({ HL: 4, NL: 4, HD: 3, ND: 3, E1: 5, E2: 4 });
    const sides = Object.fromEntries(first.sides.flatMap(({ cables, side }) => cables.map((id) => [id, side])));
    expect(sides).toEqual({
      "cable-C1": "LINE",
      "cable-C2": "LOAD",
      "cable-C3": "LINE",
      "cable-C4": "LINE",
      "cable-C5": "LOAD",
    });
    const left = first.sides.flatMap((one) => one.left.map(({ standing, by }) => [standing.outlet.name, by]));
    expect(left).toEqual([["R4", "210.8(A)"]]);
    expect(first.room).toMatch(/clamps of B1/);
    // The fill of the job sheet, edition 2020: 32.0625 in 30.3 before, 29.8125 after.
    expect([first.fill.before.total, first.fill.after.total]).toEqual([320_625, 298_125]);
    expect([first.fill.before.verdict, first.fill.after.verdict]).toEqual(["overfull", "fits"]);
    expect(first.judged.introduces).toEqual([]);
  });

  test("the plain type is told and not offered, because a new receptacle in a laundry needs arc-fault protection", () => {
    expect(first.notOffered).toMatchObject([
      { type: "gfci-receptacle-15", why: expect.stringMatching(/arc-fault list.*dual-function/) },
    ]);
    const asked = fitDevice(sample, { outlet: outlet("R1"), type: "gfci-receptacle-15" });
    expect(asked.ok ? "" : asked.refusal.code).toBe("introduces");
  });

  test("the freezer's receptacle then gets its own: face only, 3 off and 3 on, and what is proposed is the plan of the job", () => {
    const both = fitted(first.result, { outlet: outlet("R4") });
    expect(both.plan.moves).toMatchObject({ detach: 3, attach: 3 });
    const by = Object.fromEntries(both.protection.after.map(({ name, by: devices }) => [name, devices]));
    expect(by).toEqual({ R1b: ["R1b"], R2: ["R1b"], R3: ["R1b"], R4b: ["R4b"], R5: ["R1b"], L1: [] });
    const planned = openSample("laundry-proposed").proposed?.enclosures[boxId("B1")];
    const box = both.result.proposed?.enclosures[boxId("B1")];
    if (planned === undefined || box === undefined) throw new Error("No B1.");
    const cablesIn = (one: typeof box): readonly string[] =>
      Object.values(one.splices)
        .map(
          ({ id, connector }) =>
            `${connector}: ${membersOf(one, id)
              .filter((end) => end.startsWith("cable-"))
              .join(" ")} of ${membersOf(one, id).length}`,
        )
        .sort();
    expect(cablesIn(box)).toEqual(cablesIn(planned));
    expect(Object.keys(box.jumpers)).toHaveLength(Object.keys(planned.jumpers).length);
  });

  test("a decision goes before wish and requirement", () => {
    const asked = fitted(sample, {
      outlet: outlet("R1"),
      decided: new Map([
        [cableId("C3"), true],
        [cableId("C5"), false],
      ]),
    });
    expect(joints(asked)).toMatchObject({ HL: 4, HD: 3 });
    expect(asked.protection.after.find(({ name }) => name === "R4")?.by).toEqual(["R1b"]);
    expect(asked.sides.find(({ cables }) => cables.includes(cableId("C5")))?.left).toMatchObject([{ by: "a wish" }]);
  });

  test("where no room is entered nobody says that protection is not needed", () => {
    const house = drawing()
      .panel("P")
      .breaker("Q", "P")
      .box("B1")
      .box("B2")
      .device("R1", "receptacle-15", "B1")
      .device("R2", "receptacle-15", "B2");
    house.cable("C1", "P", "B1").cable("C2", "B1", "B2").land("C1.bk@P", "Q.OUT").land("C1.wh@P", "P neutral.BAR");
    house.land("C1.bk@B1", "R1.H1").land("C1.wh@B1", "R1.N1").land("C2.bk@B1", "R1.H2").land("C2.wh@B1", "R1.N2");
    house.land("C2.bk@B2", "R2.H1").land("C2.wh@B2", "R2.N1");
    const asked = fitted(house.project, { outlet: outlet("R1") });
    expect(asked.sides.find(({ cables }) => cables.includes(cableId("C2")))).toMatchObject({
      side: "LINE",
      why: expect.stringMatching(/whether R2 must be protected cannot be told/),
    });
  });

  test("it stays off what it cannot do", () => {
    const refusal = (project: Project, name: string): string => {
      const done = fitDevice(project, { outlet: outlet(name) });
      return done.ok ? "fitted" : `${done.refusal.code}: ${done.refusal.message}`;
    };
    expect(refusal(first.result, "R2")).toMatch(/^protected-already: R2 is protected already, by R1b/);
    expect(refusal(sample, "S1")).toMatch(/^not-a-receptacle: S1 is no receptacle \(single-pole switch\)/);
    expect(refusal(first.result, "R1")).toMatch(/^no-such-outlet/);
    const split = laundryDrawing().set({ kind: "device", id: deviceId("R5") }, "hotTab", "removed").project;
    expect(refusal(split, "R5")).toMatch(/^split: /);
    const dead = new Drawing(laundryAsFound(), "as-found").land("C5.wh@B1", "capped").project;
    expect(refusal(dead, "R5")).toMatch(/^not-fed: /);
    expect(refusal(drawing().box("BX").device("R1", "receptacle-15", "BX").project, "R1")).toMatch(/^not-fed: /);
  });
});

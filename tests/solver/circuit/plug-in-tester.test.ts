import { describe, expect, test } from "vitest";
import type { Project } from "../../../shared-model/model/project.ts";
import type { OperatingSetting } from "../../../shared-model/solver/circuit/circuit.ts";
import { TESTER_WORDS, testerReading } from "../../../shared-model/solver/circuit/plug-in-tester.ts";
import { deviceId } from "../../builders/ids.ts";
import { physicsCircuit } from "../../builders/physics-circuit.ts";
import conditions from "../../reference/plug-in-tester.json" with { type: "json" };
import { outletAt, readOutlet } from "./measure.ts";
import { circuitOf } from "./solve.ts";

const OFF = { idle: new Set([deviceId("L1")]) };

describe("the plug-in tester", () => {
  const twoHots = (): Project =>
    physicsCircuit()
      .breaker("Q2", "P", { ratingA: 15 })
      .set({ kind: "device", id: deviceId("Q2") }, "legs", ["B"])
      .land("PA.wh@P", "Q2.OUT").project;
  const rotated = (): Project =>
    physicsCircuit().land("AB.bk@B", "R2.N1").land("AB.wh@B", "splice GB").land("AB.cu@B", "R2.H1").project;
  const cases: Readonly<Record<string, readonly [Project, Partial<OperatingSetting>?]>> = {
    correct: [physicsCircuit().project],
    "open ground": [physicsCircuit("F14").project],
    "open neutral, nothing in use": [physicsCircuit("F12").project, OFF],
    "open neutral, a lamp on": [physicsCircuit("F12").project],
    "open hot": [physicsCircuit("F10").project],
    "hot and neutral exchanged": [physicsCircuit("F08").project],
    "hot and ground exchanged": [physicsCircuit("F16").project],
    "neutral and ground exchanged": [physicsCircuit("F17").project],
    "neutral joined to ground, no ground wire": [physicsCircuit("F18").project],
    "the same with hot and neutral exchanged": [physicsCircuit("F19").project],
    "open ground, hot and neutral exchanged": [physicsCircuit("F34").project],
    "open neutral and ground, neutral joined to ground": [physicsCircuit("F35").project],
    "two hots on the slots": [twoHots()],
    "ground of high resistance": [physicsCircuit().setEnd("AB.cu@A", "jointOhm", 100).project],
    "neutral of high resistance under load": [physicsCircuit("F25").project],
    "loose joint with nothing in use": [physicsCircuit().setEnd("AB.wh@A", "jointOhm", 50).project, OFF],
    "two-wire supply": [physicsCircuit("F15").project],
    "an open device, the hot taken past it, nothing in use": [
      physicsCircuit("F06").project,
      { ...OFF, tripped: new Set([deviceId("R1")]) },
    ],
    "hot on neutral, neutral on ground, ground on hot": [rotated(), OFF],
  };

  test.each(conditions.rows.map((row) => [row.condition, row] as const))("%s", (condition, { name, tells }) => {
    const [project, setting = {}] = cases[condition] ?? [];
    if (project === undefined) throw new Error(`Nothing is drawn for ${condition}.`);
    const tester = readOutlet(circuitOf(project, setting), outletAt(project, "R2")).tester;
    expect(tester?.name).toBe(name);
    // What the name does not tell must be among what it may be.
    if (!tells) expect(TESTER_WORDS[tester?.name ?? "correct"].mayBe.length).toBeGreaterThan(0);
  });

  test("names follow the lamps, lit from 80 V on", () => {
    const names = [
      [120, 120, 0],
      [120, 0, 0],
      [0, 120, 0],
      [0, 0, 0],
      [0, 120, 120],
      [120, 0, 120],
      [80, 79.9, 0],
      [240, 120, 120],
      [0, 0, 120],
    ].map(([hn = 0, hg = 0, ng = 0]) => testerReading(hn, hg, ng).name);
    expect(names).toEqual([
      "correct",
      "open-ground",
      "open-neutral",
      "open-hot",
      "hot-ground-reversed",
      "hot-neutral-reversed",
      "open-ground",
      "unnamed",
      "unnamed",
    ]);
  });

  test("at an outlet without ground contact there is none, and one pair to read", () => {
    const project = physicsCircuit().device("R3", "receptacle-two-slot", "B").project;
    const reading = readOutlet(circuitOf(project), outletAt(project, "R3"));
    expect(Object.keys(reading).sort()).toEqual(["hn", "outlet"]);
  });
});

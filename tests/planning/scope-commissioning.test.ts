/**
 * Commissioning values of the laundry job, at 122 V. The expected figures were computed by an independent program (nodal
 * analysis in another language, on a model of its own of the same job) and are compared within their stated rounding; it
 * takes contacts at joints otherwise, which is worth some hundredths of a volt under 10 A.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { ScopeAnswer, StepReading, WorkStep } from "../../shared-model/answers/scope.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { opensAlone } from "../../shared-model/planning/steps/opens-alone.ts";
import { circuitOfSection } from "../../shared-model/solver/circuit/section-circuit.ts";
import { ownTestOf, plugInTestAt } from "../../shared-model/solver/circuit/test-currents.ts";
import { runTrips } from "../../shared-model/solver/circuit/trips.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { deviceId, jumperId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";

/** Half of the last digit that is stated, and what the two models of a joint are apart. */
const WITHIN_V = 0.06;
const WITHIN_NEUTRAL_V = 0.03;

function job(change: (plan: Drawing) => unknown = () => undefined): Project {
  const sample = openSample("laundry-proposed");
  const plan = new Drawing({ ...sample, supply: { ...sample.supply, nominalV: 122 } }, "proposed");
  change(plan);
  return plan.project;
}

function answerOf(project: Project): ScopeAnswer {
  const answer = scopeAnswer(openSession(project));
  if (answer === undefined) throw new Error("Nothing is proposed.");
  return answer;
}

const figure = (reading: StepReading | undefined): number =>
  reading?.expected?.kind === "figure" ? reading.expected.value : Number.NaN;

describe("the laundry job", () => {
  let answer: ScopeAnswer;
  beforeAll(() => {
    answer = answerOf(job());
  });
  const all = (test: string): readonly WorkStep[] => answer.steps.filter((step) => step.test === test);
  const readings = (test: string): readonly StepReading[] => all(test).flatMap((step) => step.readings);
  const find = (test: string, what: string): StepReading | undefined => readings(test).find((one) => one.what === what);

  test("CM1 to CM13 are there, in their order", () => {
    const numbers = [...new Set(answer.steps.flatMap((step) => step.test ?? []))];
    expect(numbers).toEqual(Array.from({ length: 13 }, (_, index) => `CM${index + 1}`));
  });

  test("CM1: before RESET R1b, R2, R3, R5 show 0 / 0 / 0", () => {
    expect(new Set(readings("CM1").map(({ name }) => name))).toEqual(new Set(["R1b", "R2", "R3", "R5"]));
    expect(readings("CM1")).toHaveLength(12);
    for (const reading of readings("CM1")) expect(figure(reading)).toBe(0);
  });

  test("CM2: R4b is 0 until reset, L1 lights, for it is on LINE", () => {
    expect(readings("CM2").map(({ what, expect: words }) => `${what}: ${words}`)).toEqual([
      "R4b hot to neutral: 0 V, within 5 V",
      "R4b hot to ground: 0 V, within 5 V",
      "R4b neutral to ground: 0 V, within 1 V",
      "L1: works",
    ]);
  });

  test("CM3: 122 / 122 / less than 1 at LINE of R1b", () => {
    expect(Math.round(figure(find("CM3", "R1b LINE H to N")))).toBe(122);
    expect(Math.round(figure(find("CM3", "R1b LINE H to G")))).toBe(122);
    expect(figure(find("CM3", "R1b LINE N to G"))).toBeLessThan(1);
  });

  test.each(["R1b", "R2", "R3", "R5", "R4b"])("CM4: %s 121.9 / 121.9 / 0.04, the tester says correct", (name) => {
    expect(Math.abs(figure(find("CM4", `${name} hot to neutral`)) - 121.9)).toBeLessThan(WITHIN_V);
    expect(Math.abs(figure(find("CM4", `${name} hot to ground`)) - 121.9)).toBeLessThan(WITHIN_V);
    expect(Math.abs(figure(find("CM4", `${name} neutral to ground`)) - 0.04)).toBeLessThan(WITHIN_NEUTRAL_V);
    expect(find("CM4", `${name} plug-in tester`)?.expect).toBe("correct");
  });

  test("tolerances are 5 V, and 1 V from neutral to ground", () => {
    for (const reading of [...readings("CM4"), ...readings("CM11")]) {
      if (reading.expected?.kind !== "figure") continue;
      expect(reading.expected.within).toBe(reading.test === "neutral-ground" ? 1 : 5);
    }
  });

  test("CM5: L1 121.8 with S1 on, 0 with it off", () => {
    expect(Math.abs(figure(find("CM5", "L1, S1 on")) - 121.8)).toBeLessThan(WITHIN_V);
    expect(figure(find("CM5", "L1, S1 off"))).toBe(0);
  });

  test("CM6 and CM7: who goes dark by TEST and who stays", () => {
    expect(readings("CM6").map(({ expect: words }) => words)).toEqual(["R1b, R2, R3, R5 go dark"]);
    expect(all("CM6")[0]?.details).toEqual(["Stays on: R4b, L1."]);
    expect(readings("CM7").map(({ expect: words }) => words)).toEqual(["R4b goes dark"]);
    expect(all("CM7")[0]?.details).toEqual(["Stays on: R1b, R2, R3, R5, L1."]);
  });

  test("CM8 and CM9: R1b holds with a heater anywhere behind it, and with nothing behind it", () => {
    expect(readings("CM8").map(({ expect: words }) => words)).toEqual(["holds", "holds", "holds", "holds"]);
    expect(readings("CM9").map(({ expect: words }) => words)).toEqual(["holds"]);
  });

  test("CM10: the button trips R1b from R1b, R2, R3, R5, and R4b from R4b", () => {
    const trips = Object.fromEntries(
      readings("CM10").map(({ name, expect: words }) => [name, /^trips (\S+):/.exec(words)?.[1]]),
    );
    expect(trips).toEqual({ R1b: "R1b", R2: "R1b", R3: "R1b", R5: "R1b", R4b: "R4b" });
  });

  test.each([
    ["R1b", 119.7, 0.9],
    ["R2", 119.1, 1.19],
    ["R3", 118.42, 1.54],
    ["R5", 118.9, 1.3],
    ["R4b", 118.8, 1.36],
  ])("CM11: a 12 ohm heater at %s: %d V hot to neutral, %d V neutral to ground", (name, hot, neutral) => {
    expect(Math.abs(figure(find("CM11", `${name} hot to neutral, loaded`)) - hot)).toBeLessThan(WITHIN_V);
    expect(Math.abs(figure(find("CM11", `${name} neutral to ground, loaded`)) - neutral)).toBeLessThan(
      WITHIN_NEUTRAL_V,
    );
  });

  test("CM12: the worst drop is at R3, 9.9 A, 3.58 V or 2.9 %", () => {
    expect(all("CM12")[0]?.text).toMatch(/at R3, .*\(9\.9 A\)/);
    expect(Math.abs(figure(readings("CM12")[0]) - 3.58)).toBeLessThan(WITHIN_V);
    expect(readings("CM12")[0]?.expect).toMatch(/2\.9 % of 122 V$/);
  });

  test("CM13: breaker off, all of B1 and B4 dead", () => {
    expect(all("CM13")[0]?.text).toBe("Breaker Q14 off: everything on it is dead, at its outlets and in B1 and B4.");
    expect(readings("CM13").map(({ name }) => name)).toEqual(["R1b", "R2", "R3", "R4b", "R5", "L1"]);
  });

  test("before the work the same outlets are measured as found", () => {
    const before = answer.steps.filter(({ kind }) => kind === "record");
    expect(before.flatMap(({ items }) => items.map(({ name }) => name))).toEqual(["R1", "R2", "R3", "R4", "R5", "L1"]);
    expect(Math.round(figure(before[0]?.readings[0]))).toBe(122);
  });
});

describe("a wrong plan is told as it would behave", () => {
  test("the white of C2 left on LINE: R1b trips on load at R2 and R3, which stay no longer behind it", () => {
    const { steps } = answerOf(job((plan) => plan.land("C2.wh@B1", "splice Y")));
    const told = steps
      .filter((step) => step.test === "CM8")
      .flatMap(({ readings }) => readings.map(({ what, expect: words }) => `${what}: ${words}`));
    expect(told).toContain("R1b with a heater at R2: trips, by this drawing");
    expect(told).toContain("R1b with a heater at R3: trips, by this drawing");
    expect(told).toContain("R1b with a heater at R5: holds");
    // Its neutrals are crossed: the dead test would find it before power.
    const dead = steps.find(({ id }) => id === "HP5:box-B1")?.readings ?? [];
    expect(dead.find(({ what }) => what === "R1b LOAD N to LINE N")?.expect).toBe("open");
  });

  test("LOAD and LINE neutral joined: the dead test reads near 0 ohms, the freezer trips R1b", () => {
    const { steps } = answerOf(job((plan) => plan.jumper("y", "B1", "splice Y", "splice ND", { colour: "white" })));
    const dead = steps.find(({ id }) => id === "HP5:box-B1")?.readings ?? [];
    expect(figure(dead.find(({ what }) => what === "R1b LOAD N to LINE N"))).toBeLessThan(0.1);
    expect(dead.find(({ what }) => what === "R1b LOAD N to G")?.expect).not.toBe("open");
  });

  test("the ground pigtail of R1b left off: CM3 finds hot to neutral, and nothing to ground", () => {
    const { steps } = answerOf(job((plan) => plan.remove({ kind: "jumper", id: jumperId("r") })));
    const line = steps.find(({ id }) => id === `CM3:${deviceId("R1b")}`)?.readings ?? [];
    expect(Math.round(figure(line.find(({ what }) => what === "R1b LINE H to N")))).toBe(122);
    expect(figure(line.find(({ what }) => what === "R1b LINE H to G"))).toBe(0);
  });
});

/** The short way by superposition against following every trip on a circuit with the resistance in it. */
test.each(["laundry-proposed", "kitchen-multiwire", "house-twelve-circuits", "wrong-on-purpose", "bath-fan-light"])(
  "%s: what opens alone is what opens when it is followed",
  (name) => {
    const sample = openSample(name);
    const installation = sample.proposed ?? sample.asFound;
    let told = 0;
    for (const section of allSections(installation)) {
      const bare = circuitOfSection(section, sample.supply);
      const first = runTrips(bare);
      const base = first.outcomes[0]?.circuit;
      if (base === undefined || first.outcomes.length !== 1) continue;
      const atOutlets = section.outlets().flatMap(({ outlet }) => {
        const { device, hot, neutral } = outlet;
        const at = (node: string) => ({ kind: "device", device: device.id, node }) as const;
        return [{ from: at(hot), to: at(neutral), ohm: 12 }, plugInTestAt(outlet)];
      });
      for (const added of [...atOutlets, ...section.sensingDevices().map(({ device }) => ownTestOf(device))]) {
        if (added === undefined) continue;
        const found = opensAlone(base, added);
        if (found === "follow") continue;
        told += 1;
        const run = runTrips(base.inSetting({ ...base.setting, added: [added] }));
        expect(run.outcomes).toHaveLength(1);
        expect(run.outcomes[0]?.opened.flat()).toEqual(found === undefined ? [] : [found]);
      }
    }
    expect(told).toBeGreaterThan(4);
  },
);

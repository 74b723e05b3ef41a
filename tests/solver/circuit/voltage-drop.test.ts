import { describe, expect, test } from "vitest";
import type { Project } from "../../../shared-model/model/project.ts";
import { outletsOf, type PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { voltageDrops } from "../../../shared-model/solver/circuit/voltage-drop.ts";
import { ohmsPerFoot } from "../../../shared-model/solver/circuit/wire-resistance.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { deviceId, drawing } from "../../builders/drawing.ts";
import { physicsCircuit } from "../../builders/physics-circuit.ts";
import { circuitOf } from "./solve.ts";

const outletsIn = ({ asFound }: Project): readonly PlacedOutlet[] =>
  Object.values(asFound.enclosures).flatMap(({ devices }) => Object.values(devices).flatMap(outletsOf));

/** One receptacle at the end of a cable. */
const run = (item: string, ft: number): Project =>
  drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q", "P")
    .box("B")
    .device("R", "receptacle-20", "B")
    .cable("C", "P", "B", { item, ft })
    .land("C.bk@P", "Q.OUT")
    .land("C.wh@P", "P neutral.BAR")
    .land("C.bk@B", "R.H1")
    .land("C.wh@B", "R.N1").project;

/**
 * 10 A over 140 ft, at 20 degrees C, as printed at https://smartsolve.ai/question/35-a-120-volt-branch-circuit-supplies-a-
 * resistive-heating-load-of-10-amperes-the-distance-from-the-panel-to-th-5c009e39d7 (a homework site; V = 2 L R I).
 */
const PUBLISHED_AT_20 = [
  ["14", 7.07],
  ["12", 4.45],
  ["10", 2.8],
  ["8", 1.76],
] as const;

/** Printed with a resistance at 75 degrees C, or with K = 12.9 ohm-cmil/ft, which is about that of copper there. */
const PUBLISHED_AT_75: readonly (readonly [
  source: string,
  WireSize,
  stranded: boolean,
  amps: number,
  ft: number,
  volts: number,
  within: number,
])[] = [
  ["https://tradelicenseprep.com/nc-sp-ph-prep/calc-voltage-drop", "12", false, 20, 100, 7.9, 0.03],
  ["http://electrician2.com/weltrain05/lpage135.html", "16", true, 4, 100, 4, 0.01],
  ["textbook-style exercise, from memory", "10", false, 24, 160, 9.5, 0.03],
];

describe("published examples", () => {
  test.each(PUBLISHED_AT_20)("%s AWG: %d V", (awg, volts) => {
    expect(2 * 140 * 10 * ohmsPerFoot({ awg, material: "copper", stranded: false })).toBeCloseTo(volts, 1);
  });

  test.each(PUBLISHED_AT_20.slice(0, 3))("%s AWG, drawn: %d V and its share of 120 V", (awg, volts) => {
    const project = run(`nm-${awg}-2-g`, 140);
    const [drop] = voltageDrops(circuitOf(project), outletsIn(project), 10);
    // The breaker's contact is in it: 10 mV.
    expect(drop?.dropV).toBeCloseTo(volts + 0.01, 1);
    expect(drop?.percent).toBeCloseTo((100 * (volts + 0.01)) / 120, 0);
  });

  test.each(PUBLISHED_AT_75)("%s", (_, awg, stranded, amps, ft, volts, within) => {
    const drop = 2 * ft * amps * ohmsPerFoot({ awg, material: "copper", stranded }, 75);
    expect(Math.abs(drop / volts - 1)).toBeLessThan(within);
  });
});

describe("outlets of a circuit", () => {
  test("drop by the loads that are on, and more by a test current", () => {
    const { project } = physicsCircuit().load("Heater", "heater-1200", "R2");
    const circuit = circuitOf(project, { idle: new Set([deviceId("L1")]) });
    const drops = new Map(voltageDrops(circuit, outletsIn(project)).map((drop) => [drop.outlet.name, drop]));
    // By hand: 120 V over 12 ohm, 0.05 ohm of source, 85 ft of 2.5254 ohm in 1000 ft there and back, three contacts. The
    // electronics of R1 take 4 mA more.
    const amps = 120 / (12 + 0.05 + 2 * 0.085 * 2.5254 + 0.003);
    expect(drops.get("R2")?.dropV).toBeCloseTo(amps * (2 * 0.085 * 2.5254 + 0.003), 2);
    expect(drops.get("R1")?.dropV).toBeCloseTo(amps * (2 * 0.06 * 2.5254 + 0.003), 2);
    const [more] = voltageDrops(
      circuit,
      outletsIn(project).filter(({ name }) => name === "R2"),
      5,
    );
    // The heater takes less at the lower voltage: 5 A split between it and the way back to the source.
    const loop = 2 * 0.085 * 2.5254 + 0.003;
    const through = (5 * 12) / (12 + loop + 0.05);
    expect((more?.dropV ?? 0) - (drops.get("R2")?.dropV ?? 0)).toBeCloseTo(through * loop, 2);
  });

  test("240 V: both legs are rails", () => {
    const project = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q", "P", { type: "breaker-2" })
      .box("B")
      .device("W", "appliance-240", "B")
      .cable("C", "P", "B", { item: "nm-10-2-g", ft: 100 })
      .land("C.bk@P", "Q.OUT1")
      .land("C.wh@P", "Q.OUT2")
      .land("C.bk@B", "W.L1")
      .land("C.wh@B", "W.L2").project;
    const [drop] = voltageDrops(circuitOf(project), outletsIn(project));
    const loop = 2 * 0.1 * 0.9988 + 0.002;
    expect(drop?.dropV).toBeCloseTo((240 * loop) / (16 + loop + 0.1), 2);
    expect(drop?.percent).toBeCloseTo((100 * loop) / (16 + loop + 0.1), 2);
  });

  test("dead outlets, open neutrals and short circuits have none", () => {
    for (const fault of ["F09", "F10", "F12", "F22"] as const) {
      const { project } = physicsCircuit(fault);
      const names = voltageDrops(circuitOf(project), outletsIn(project)).map(({ outlet }) => outlet.name);
      expect(names).toEqual(fault === "F09" || fault === "F22" ? [] : ["R1"]);
    }
  });
});

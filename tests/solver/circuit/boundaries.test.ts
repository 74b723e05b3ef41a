/**
 * Each limit of instruments and trips, tried close to it on both sides. Where the limits come from stands beside them in
 * `trip-limits.ts`, `instrument-values.ts` and `live-after.ts`; volts and ohms here are worked out by hand.
 */
import { describe, expect, test } from "vitest";
import type { OperatingSetting, Probe } from "../../../shared-model/solver/circuit/circuit.ts";
import { readOhms, readVolts, signalsNoncontact } from "../../../shared-model/solver/circuit/instruments.ts";
import { liveAfter } from "../../../shared-model/solver/circuit/live-after.ts";
import { leakAt } from "../../../shared-model/solver/circuit/test-currents.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { boxId, deviceId } from "../../builders/ids.ts";
import { type PhysicsFault, physicsCircuit } from "../../builders/physics-circuit.ts";
import { outletAt, stateOf } from "./measure.ts";
import { circuitOf } from "./solve.ts";

const [R1, R2, L1] = [deviceId("R1"), deviceId("R2"), deviceId("L1")];
const at = (node: string): Probe => ({ kind: "device", device: R2, node });
const EARTH: Probe = { kind: "earth" };
const BUS: Probe = { kind: "panel", panel: boxId("P"), node: "@busA" };

/** The circuit of the table of faults with the lamp off. */
const quiet = (fault: PhysicsFault, setting: Partial<OperatingSetting> = {}) =>
  circuitOf(physicsCircuit(fault).project, { idle: new Set([L1]), ...setting });

/** Ohms of 14 AWG: 2.5254 in 1000 ft. */
const wire = (ft: number): number => (ft * 2.5254) / 1000;

describe("a way around the sensor, in ohms: 2 must open it, 4 may", () => {
  // From LOAD neutral over the contact at B and the ground back to LINE neutral: 25 ft and 25 ft, then 60 ft twice.
  const around = 2 * wire(25) + 2 * wire(60);
  const withLoop = (ohm: number) =>
    stateOf(quiet("F01", { added: [{ from: at("N1"), to: at("G"), ohm: ohm - around }] }), R1);

  test.each([
    [1.97, "yes"],
    [2.03, "may"],
    [3.97, "may"],
    [4.03, "no"],
  ] as const)("%d ohm: %s", (ohm, trips) => {
    const state = withLoop(ohm);
    expect(Math.abs((state.loops.neutral ?? Number.NaN) - ohm)).toBeLessThan(0.02);
    expect([state.byResidual, state.trips]).toEqual(["no", trips]);
  });
});

describe("residual of a Class A device: more than 4 mA may open it, 6 mA must", () => {
  // 120 V over so many ohms from the hot slot of B to earth; nothing else of the circuit counts beside kilohms.
  test.each([
    [3.95, "no"],
    [4.05, "may"],
    [5.95, "may"],
    [6.05, "yes"],
  ] as const)("%d mA: %s", (mA, trips) => {
    const leak = leakAt(outletAt(physicsCircuit().project, "R2"), "hot", 120_000 / mA);
    const state = stateOf(quiet("F01", { added: leak === undefined ? [] : [leak] }), R1);
    expect(Math.abs(state.residualMa - mA)).toBeLessThan(0.02);
    expect(state.trips).toBe(trips);
  });
});

describe("electronics work from 70 V at LINE, in whole volts", () => {
  // 12 ohm at B beside nothing else, a joint before the device: 120 x (12 + 2 x 25 ft) over the whole loop.
  const rest = 12 + 2 * wire(25) + 0.05 + 2 * wire(60) + 0.003;
  const withLine = (volts: number) => {
    const ohm = (120 * (12 + 2 * wire(25))) / volts - rest;
    const { project } = physicsCircuit().setEnd("PA.wh@A", "jointOhm", ohm).load("Heater", "heater-1200", "R2");
    const leak = leakAt(outletAt(project, "R2"));
    return stateOf(circuitOf(project, { idle: new Set([L1]), added: leak === undefined ? [] : [leak] }), R1);
  };

  test.each([
    [69.3, false],
    [69.7, true],
    [70.3, true],
  ] as const)("%d V: powered %s", (volts, powered) => {
    const state = withLine(volts);
    expect(Math.abs(state.supplyV - volts)).toBeLessThan(0.1);
    expect(state.powered).toBe(powered);
    if (!powered) expect(state.trips).toBe("no");
  });
});

describe("continuity sounds up to 30 ohm", () => {
  test.each([
    [29.8, true],
    [30.2, false],
  ] as const)("%d ohm: %s", (ohm, continuous) => {
    // The ground of B is left open at A: between it and the hot there is what is put in, and kilohms of capacitance none.
    const circuit = quiet("F14", { added: [{ from: at("UH"), to: at("UG"), ohm }] });
    const reading = readOhms(circuit, at("UH"), at("UG"));
    expect(Math.abs((reading?.ohm ?? Number.NaN) - ohm)).toBeLessThan(0.05);
    expect(reading?.continuous).toBe(continuous);
  });
});

/** B's hot slot, cut off at A, between the bus of 120 V and earth by two resistances that give it these volts. */
const divided = (volts: number, total: number) =>
  quiet("F10", {
    added: [
      { from: BUS, to: at("UH"), ohm: total * (1 - volts / 120) },
      { from: at("UH"), to: EARTH, ohm: (total * volts) / 120 },
    ],
  });
const isLive = (circuit: ReturnType<typeof quiet>): boolean =>
  liveAfter(runTrips(circuit), [outletAt(physicsCircuit().project, "R2")]).some(({ contact }) => contact === "hot");

describe("50 V", () => {
  test.each([
    [49.8, false],
    [50.2, true],
  ] as const)("%d V to earth: %s, for a non-contact tester and for what counts as live", (volts, shows) => {
    const circuit = divided(volts, 2000);
    expect(Math.abs((readVolts(circuit, at("UH"), EARTH)?.volts ?? Number.NaN) - volts)).toBeLessThan(0.1);
    expect(signalsNoncontact(circuit, at("UH"))).toBe(shows);
    expect(isLive(circuit)).toBe(shows);
  });
});

describe("live has less than 50 kilohms behind it", () => {
  test.each([
    [49_700, true],
    [50_300, false],
  ] as const)("%d ohm before 120 V: %s", (ohm, live) => {
    // Two resistances side by side are behind the slot: 60 V from twice the ohms each way.
    expect(isLive(divided(60, 4 * ohm))).toBe(live);
    // A non-contact tester signals at both: there is voltage, whatever is behind it.
    expect(signalsNoncontact(divided(60, 4 * ohm), at("UH"))).toBe(true);
  });
});

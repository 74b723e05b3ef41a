import { describe, expect, test } from "vitest";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Added, OperatingSetting, Probe } from "../../../shared-model/solver/circuit/circuit.ts";
import { readVolts } from "../../../shared-model/solver/circuit/instruments.ts";
import { leakAt, ownTestOf, plugInTestAt } from "../../../shared-model/solver/circuit/test-currents.ts";
import { classALimitS } from "../../../shared-model/solver/circuit/trip-limits.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { deviceId } from "../../builders/ids.ts";
import { type PhysicsFault, physicsCircuit } from "../../builders/physics-circuit.ts";
import { differences, type Expected, outletAt, readOutlet, stateOf } from "./measure.ts";
import { circuitOf } from "./solve.ts";

/*
 * Faults that need a kind of device: volts hot-neutral / hot-ground / neutral-ground and mA. The figures were computed
 * apart from this program by nodal analysis of the same circuits (complex, 60 Hz, Python), with the modelling values that
 * stand in tests/reference/circuit-faults.json.
 */
const [Q1, R1, R2, L1] = [deviceId("Q1"), deviceId("R1"), deviceId("R2"), deviceId("L1")];
const OFF = new Set([L1]);
const DEAD = [0, 0, 0];
const GOOD = [119.8, 119.9, 0.1];

const at = (device: DeviceId, node: string): Probe => ({ kind: "device", device, node });

/** A fault with its outlets, read and asked. */
function bench(fault: PhysicsFault) {
  const { project } = physicsCircuit(fault);
  const outlet = (name: string) => outletAt(project, name);
  const circuit = (setting: Partial<OperatingSetting> = {}) => circuitOf(project, setting);
  const adding = (added: Added | undefined, setting: Partial<OperatingSetting> = {}) => {
    if (added === undefined) throw new Error("Nothing to add.");
    return circuit({ ...setting, added: [added] });
  };
  return {
    project,
    outlet,
    circuit,
    adding,
    /** Residuals of devices, with something added. */
    residuals: (devices: readonly DeviceId[], added?: Added, setting: Partial<OperatingSetting> = {}) => {
      const made = added === undefined ? circuit(setting) : adding(added, setting);
      return devices.map((device) => stateOf(made, device).residualMa);
    },
    reads: (name: string, expected: readonly Expected[], setting: Partial<OperatingSetting> = {}) =>
      expect(differences(readOutlet(circuit(setting), outlet(name)), expected)).toEqual([]),
    tester: (name: string, setting: Partial<OperatingSetting> = {}) =>
      readOutlet(circuit(setting), outlet(name)).tester?.name,
  };
}

const near = (read: readonly number[], expected: readonly number[]): void => {
  for (const [index, ma] of expected.entries())
    expect(Math.abs((read[index] ?? Number.NaN) - ma)).toBeLessThan(Math.max(0.03, ma * 0.002));
};

test("F26: supply on LOAD of a device that denies: it never closes, LOAD stays live, face and B are dead", () => {
  const { circuit, outlet, adding } = bench("F26");
  const { energised, devices, outcomes } = runTrips(circuit());
  expect(devices[0]).toMatchObject({ reversed: true, open: true, powered: false, trips: "no" });
  expect(devices[0]?.supplyV).toBeLessThan(0.1);
  expect(outcomes.map(({ opened }) => opened)).toEqual([[]]);
  for (const name of ["R1", "R2", "L1"]) {
    const reading = readOutlet(energised, outlet(name));
    expect(differences(reading, DEAD)).toEqual([]);
    expect(reading.tester?.name).toBe("open-hot");
  }
  const load = [at(R1, "LOAD_H"), at(R1, "LOAD_N"), at(R1, "G")] as const;
  expect(readVolts(energised, load[0], load[1])?.volts).toBeCloseTo(120, 0);
  expect(readVolts(energised, load[0], load[2])?.volts).toBeCloseTo(120, 0);
  expect(readVolts(energised, load[1], load[2])?.volts).toBeLessThan(0.05);
  for (const added of [leakAt(outlet("R2")), ownTestOf(outlet("R1").device), plugInTestAt(outlet("R2"))]) {
    const [state] = runTrips(adding(added)).devices;
    expect([state?.trips, state?.powered]).toEqual(["no", false]);
    expect(state?.residualMa).toBeLessThan(0.05);
  }
});

test("F27: the same with an old device: it closes and works backwards; after a trip its face stays live", () => {
  const { circuit, outlet, reads, tester, residuals } = bench("F27");
  const run = runTrips(circuit());
  expect(run.devices[0]).toMatchObject({ reversed: true, open: false, powered: true, trips: "no" });
  reads("R1", GOOD);
  reads("R2", GOOD);
  expect([tester("R1"), tester("R2")]).toEqual(["correct", "correct"]);
  near(residuals([R1]), [0.04]);
  near(residuals([R1], leakAt(outlet("R2"))), [6.31]);
  near(residuals([R1], leakAt(outlet("R1"))), [0.04]);
  near(residuals([R1], ownTestOf(outlet("R1").device)), [7.99]);
  near(residuals([R1], plugInTestAt(outlet("R2"))), [7.99]);
  near(residuals([R1], plugInTestAt(outlet("R1"))), [0.04]);
  const tripped = { tripped: new Set([R1]) };
  reads("R1", [120, 120, 0], tripped);
  reads("R2", DEAD, tripped);
});

test("F28: an open shared neutral: 228.2 V on the lamp, 11.4 V on the heater, 108.4 V on the neutral", () => {
  const { circuit } = bench("F28");
  const read = (one: Probe, other: Probe) => readVolts(circuit(), one, other)?.volts ?? Number.NaN;
  const [m1, m2] = [deviceId("M1"), deviceId("M2")];
  expect(Math.abs(read(at(m1, "H"), at(m1, "N")) - 228.2)).toBeLessThan(0.2);
  expect(Math.abs(read(at(m2, "H1"), at(m2, "N1")) - 11.4)).toBeLessThan(0.2);
  expect(Math.abs(read(at(m2, "N1"), at(m2, "G")) - 108.4)).toBeLessThan(0.2);
  expect(runTrips(circuit()).outcomes.map(({ opened }) => opened)).toEqual([[]]);
});

describe("F29: a ground-fault receptacle behind another", () => {
  const { project, outlet, reads, tester, residuals, adding } = bench("F29");
  const both = [R1, R2];

  test("readings and residuals of first and second", () => {
    reads("R1", GOOD);
    reads("R2", GOOD);
    expect([tester("R1"), tester("R2")]).toEqual(["correct", "correct"]);
    near(residuals(both), [0.04, 0.01]);
    near(residuals(both, leakAt(outlet("R2"))), [6.31, 6.31]);
    near(residuals(both, leakAt(outlet("R1"))), [6.31, 0.01]);
    near(residuals(both, ownTestOf(outlet("R1").device)), [7.99, 0.01]);
    near(residuals(both, ownTestOf(outlet("R2").device)), [0.04, 7.98]);
    near(residuals(both, plugInTestAt(outlet("R2"))), [7.99, 7.99]);
  });

  test("a leak behind both: either may open first, and B is dead either way", () => {
    const { devices, outcomes } = runTrips(adding(leakAt(outlet("R2"))));
    expect(devices.map(({ trips, orFirst }) => [trips, orFirst])).toEqual([
      ["yes", [R2]],
      ["yes", [R1]],
    ]);
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[R1]], [[R2]]]);
    for (const { circuit } of outcomes) expect(differences(readOutlet(circuit, outlet("R2")), DEAD)).toEqual([]);
  });

  test("a leak at each: the first opens for its own in any case, the second only if it is faster", () => {
    const added = ["R1", "R2"].flatMap((name) => leakAt(outlet(name)) ?? []);
    const { devices, outcomes } = runTrips(circuitOf(project, { added }));
    expect(devices.map(({ trips, orFirst }) => [trips, orFirst])).toEqual([
      ["yes", []],
      ["yes", [R1]],
    ]);
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[R1]]]);
  });

  test("a leak at the face of the first opens the first alone: its face is not behind the second", () => {
    const { devices, outcomes } = runTrips(adding(leakAt(outlet("R1"))));
    expect(devices.map(({ trips, orFirst }) => [trips, orFirst])).toEqual([
      ["yes", []],
      ["no", []],
    ]);
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[R1]]]);
  });
});

describe("F30: a ground-fault breaker, then a receptacle", () => {
  const { project, outlet, reads, tester, residuals, adding } = bench("F30");
  const both = [Q1, R1];

  test("readings and residuals of breaker and receptacle", () => {
    reads("R1", GOOD);
    reads("R2", GOOD);
    expect([tester("R1"), tester("R2")]).toEqual(["correct", "correct"]);
    near(residuals(both), [0.09, 0.04]);
    near(residuals(both, leakAt(outlet("R2"))), [6.31, 6.31]);
    near(residuals(both, leakAt(outlet("R1"))), [6.31, 6.31]);
    near(residuals(both, ownTestOf(outlet("R1").device)), [0.09, 7.99]);
    near(residuals(both, plugInTestAt(outlet("R2"))), [7.99, 7.99]);
  });

  test("the breaker's own TEST opens the breaker alone", () => {
    const [panel] = Object.values(project.asFound.enclosures).filter(({ kind }) => kind === "panel");
    const breaker = panel?.devices[Q1];
    const own = breaker === undefined ? undefined : ownTestOf(breaker);
    near(residuals(both, own), [8.0, 0.04]);
    expect(runTrips(adding(own)).outcomes.map(({ opened }) => opened)).toEqual([[[Q1]]]);
  });

  test("a leak at the face of A: either may open first; the breaker opens the hot alone", () => {
    const { devices, outcomes } = runTrips(adding(leakAt(outlet("R1"))));
    expect(devices.map(({ trips, orFirst }) => [trips, orFirst])).toEqual([
      ["yes", [R1]],
      ["yes", [Q1]],
    ]);
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[Q1]], [[R1]]]);
    for (const { circuit } of outcomes) expect(differences(readOutlet(circuit, outlet("R2")), DEAD)).toEqual([]);
  });
});

test("F31: 80 mA through a person from hot to neutral open nothing; to earth they open the device within 0.138 s", () => {
  const { residuals, outlet, adding } = bench("F31");
  const b = outlet("R2");
  const across: Added = { from: at(R2, b.hot), to: at(R2, b.neutral), ohm: 1500 };
  near(residuals([R1], across, { idle: OFF }), [0.04]);
  expect(runTrips(adding(across)).outcomes.map(({ opened }) => opened)).toEqual([[]]);
  const toEarth = leakAt(b, "hot", 1500);
  near(residuals([R1], toEarth, { idle: OFF }), [80]);
  const { time, trips } = stateOf(adding(toEarth), R1);
  expect(trips).toBe("yes");
  expect(Math.abs((time?.latestS ?? 0) - 0.138)).toBeLessThan(0.001);
  expect(Math.abs(classALimitS(80) - 0.138)).toBeLessThan(0.001);
});

test("F32: a switch in the neutral of the lamp", () => {
  const { reads, residuals, outlet, circuit } = bench("F32");
  const off = { positions: new Map([[deviceId("S1"), 1]]) };
  reads("L1", [119.7, 119.8, 0.1]);
  reads("L1", [0, 120, 120], off);
  reads("L1", [{ about: 72 }, 120, { about: 29 }], { ...off, idle: OFF });
  near(residuals([R1]), [0.04]);
  const [centre, shell] = [leakAt(outlet("L1")), leakAt(outlet("L1"), "neutral")];
  near(residuals([R1], centre), [6.31]);
  near(residuals([R1], centre, off), [6.31]);
  near(residuals([R1], shell, off), [6.24]);
  near(residuals([R1], shell), [0.04]);
  for (const setting of [{}, off])
    for (const added of [ownTestOf(outlet("R1").device), plugInTestAt(outlet("L1"))])
      expect(stateOf(circuit({ ...setting, added: added === undefined ? [] : [added] }), R1).trips).toBe("yes");
});

test("F33: exchanged in the supply and again at B: A reads reversed, B correct", () => {
  const { reads, tester, residuals, outlet } = bench("F33");
  reads("R1", [119.8, 0.1, 119.9]);
  reads("R2", GOOD);
  expect([tester("R1"), tester("R2")]).toEqual(["hot-neutral-reversed", "correct"]);
  near(residuals([R1]), [0.04]);
  near(residuals([R1], leakAt(outlet("R2"))), [6.31]);
  near(residuals([R1], ownTestOf(outlet("R1").device)), [7.99]);
  near(residuals([R1], plugInTestAt(outlet("R2"))), [7.99]);
  near(residuals([R1], plugInTestAt(outlet("R1"))), [0.04]);
  for (const name of ["R1", "R2", "L1"]) reads(name, DEAD, { tripped: new Set([R1]) });
});

test("F34: an open ground hides that hot and neutral are exchanged", () => {
  const { reads, tester, residuals, outlet } = bench("F34");
  reads("R1", GOOD);
  reads("R2", [119.8, { about: 59 }, { about: 59 }]);
  expect([tester("R1"), tester("R2")]).toEqual(["correct", "open-ground"]);
  near(residuals([R1]), [0]);
  near(residuals([R1], leakAt(outlet("R2"))), [0]);
  near(residuals([R1], ownTestOf(outlet("R1").device)), [7.99]);
  near(residuals([R1], plugInTestAt(outlet("R2"))), [0]);
  for (const name of ["R1", "R2", "L1"]) reads(name, DEAD, { tripped: new Set([R1]) });
});

test("F35: an open neutral with the neutral joined to ground reads dead, and its metal stands at 120 V", () => {
  const { reads, tester, residuals, outlet, circuit } = bench("F35");
  reads("R2", DEAD);
  expect([tester("R1"), tester("R2")]).toEqual(["correct", "open-hot"]);
  const toEarth = (node: string, setting: Partial<OperatingSetting> = {}) =>
    readVolts(circuit(setting), at(R2, node), { kind: "earth" });
  for (const node of ["UN", "UG"]) {
    expect(toEarth(node)).toMatchObject({ floating: false });
    expect(Math.abs((toEarth(node)?.volts ?? 0) - 120)).toBeLessThan(0.2);
  }
  expect(toEarth("UG", { idle: OFF })).toMatchObject({ floating: true });
  expect(Math.abs((toEarth("UG", { idle: OFF })?.volts ?? 0) - 117)).toBeLessThan(0.7);
  near(residuals([R1]), [0]);
  near(residuals([R1], leakAt(outlet("R2"))), [6.32]);
  near(residuals([R1], ownTestOf(outlet("R1").device)), [8.0]);
  near(residuals([R1], plugInTestAt(outlet("R2"))), [0]);
  for (const name of ["R1", "R2", "L1"]) reads(name, DEAD, { tripped: new Set([R1]) });
});

test("an appliance's leak to ground is seen by the device before it: a freezer of 0.8 mA, typical of the catalogue", () => {
  const { project } = physicsCircuit().load("Freezer", "freezer-180", "R2");
  expect(Math.abs(stateOf(circuitOf(project), R1).residualMa - 0.8)).toBeLessThan(0.05);
});

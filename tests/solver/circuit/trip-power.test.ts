import { describe, expect, test } from "vitest";
import type { Reversal } from "../../../shared-model/model/device.ts";
import { leakAt } from "../../../shared-model/solver/circuit/test-currents.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { deviceId } from "../../builders/ids.ts";
import { physicsCircuit } from "../../builders/physics-circuit.ts";
import { outletAt, readOutlet, stateOf } from "./measure.ts";
import { circuitOf } from "./solve.ts";

const [Q1, R1, R2] = [deviceId("Q1"), deviceId("R1"), deviceId("R2")];
const IDLE = { idle: new Set([deviceId("L1")]) };

describe("a device needs power to trip", () => {
  const withLine = (ohm: number) =>
    stateOf(
      circuitOf(physicsCircuit().setEnd("PA.wh@A", "jointOhm", ohm).load("Heater", "heater-1200", "R2").project, {
        added: [leakAt(outletAt(physicsCircuit().project, "R2")) ?? []].flat(),
      }),
      R1,
    );
  test("70 V at its LINE will do, less will not", () => {
    // 12 ohm beside 240 behind a joint: 120 x 11.43 / (11.43 + ohm + 0.48).
    const [works, not] = [withLine(7.0), withLine(8.2)];
    expect(works.supplyV).toBeGreaterThan(70);
    expect(not.supplyV).toBeLessThan(69);
    expect(not.residualMa).toBeGreaterThan(6);
    expect([works.trips, not.trips]).toEqual(["yes", "no"]);
    expect(not.why).toMatch(/^It has no power: \d+\.\d V at its LINE/);
  });
});

describe("supply on LOAD, by when the device was made", () => {
  const reversed = (reversal: Reversal) => {
    const { project } = physicsCircuit("F26").set({ kind: "device", id: R1 }, "reversal", reversal);
    const run = runTrips(circuitOf(project));
    const [face, b] = ["R1", "R2"].map((name) => readOutlet(run.energised, outletAt(project, name)).hn.volts);
    return { run, device: run.devices[0], face, b };
  };

  test.each([
    ["deny", "no", 0],
    ["deny-first", "no", 0],
    ["trips", "yes", 0],
    ["legacy", "no", 119.8],
  ] as const)("%s", (reversal, trips, volts) => {
    const { device, face, b } = reversed(reversal);
    expect(device).toMatchObject({ reversed: true, trips, open: reversal !== "legacy" });
    expect(Math.abs((face ?? Number.NaN) - volts)).toBeLessThan(0.2);
    expect(Math.abs((b ?? Number.NaN) - volts)).toBeLessThan(0.2);
  });

  test("each says what it does, and no two the same", () => {
    const whys = (["deny", "deny-first", "trips", "legacy"] as const).map((one) => reversed(one).device?.why ?? "");
    expect(new Set(whys).size).toBe(4);
    for (const why of whys) expect(why).toMatch(/^It is fed on LOAD\b.*\.$/);
  });

  test("a device behind one that is fed rightly, itself fed on LOAD, is found in its turn", () => {
    const { project } = physicsCircuit("F29")
      .land("AB.bk@B", "R2.LOAD_H")
      .land("AB.wh@B", "R2.LOAD_N")
      .land("BL.bk@B", "R2.LINE_H")
      .land("BL.wh@B", "R2.LINE_N");
    const { devices } = runTrips(circuitOf(project));
    expect(devices.map(({ device, reversed: on, open }) => [device, on, open])).toEqual([
      [R1, false, false],
      [R2, true, true],
    ]);
  });

  test("no supply at all, a lost neutral, a way around: not taken for a supply on LOAD", () => {
    for (const fault of ["F05", "F06", "F09", "F11", "F12"] as const)
      for (const setting of [{}, IDLE])
        expect(runTrips(circuitOf(physicsCircuit(fault).project, setting)).devices[0]?.reversed).toBe(false);
    // The hot alone on LOAD: with the lamp off, only capacitance makes volts to the neutral there.
    const { project } = physicsCircuit().land("PA.bk@A", "R1.LOAD_H#2");
    expect(runTrips(circuitOf(project, IDLE)).devices[0]?.reversed).toBe(false);
    const off = runTrips(circuitOf(physicsCircuit("F26").project, { off: new Set([Q1]) }));
    expect(off.devices[0]).toMatchObject({ reversed: false, open: false });
  });
});

import { describe, expect, test } from "vitest";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import type { Circuit } from "../../../shared-model/solver/circuit/circuit.ts";
import { liveAfter } from "../../../shared-model/solver/circuit/live-after.ts";
import { loopsAround } from "../../../shared-model/solver/circuit/sensor-loops.ts";
import { tripStates } from "../../../shared-model/solver/circuit/trip-states.ts";
import { runTrips } from "../../../shared-model/solver/circuit/trips.ts";
import { wrongCircuits } from "./wrong-circuits.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const WRONG = LONG ? 1000 : 60;

/** Ohms around one conductor of a sensor, in the circuit with its contacts really opened. */
function loopByOpening(circuit: Circuit, index: number, branch: number): number {
  const sensor = circuit.sensors[index];
  const g = circuit.network.g.slice();
  for (const { branch: open } of sensor?.summed ?? []) g[open] = 0;
  const { a, b } = circuit.network;
  const z = circuit.factor.refactor({ ...circuit.network, g }).impedance(a[branch] as number, b[branch] as number);
  return z === undefined ? Infinity : Math.hypot(z.re, z.im);
}

describe(`${WRONG} drawings with mistakes`, () => {
  test("every run ends where nothing more opens, after at most as many rounds as devices, with numbers throughout", () => {
    let opened = 0;
    for (const { circuit, installation } of wrongCircuits(WRONG)) {
      const run = runTrips(circuit);
      const count = new Set([...circuit.sensors, ...circuit.overcurrent].map(({ device }) => device)).size;
      expect(run.outcomes.length).toBeGreaterThan(0);
      for (const { opened: rounds, circuit: after } of run.outcomes) {
        opened += rounds.length;
        expect(rounds.length).toBeLessThanOrEqual(count);
        expect(new Set(rounds.flat()).size).toBe(rounds.flat().length);
        const { devices, breakers } = tripStates(after);
        expect([...devices, ...breakers].filter(({ trips }) => trips === "yes")).toEqual([]);
      }
      for (const { residualMa, supplyV, why } of run.devices) {
        expect(Number.isFinite(residualMa) && Number.isFinite(supplyV)).toBe(true);
        expect(why).not.toMatch(/NaN|undefined|Infinity/);
      }
      for (const { amps, why } of run.breakers) {
        expect(Number.isFinite(amps)).toBe(true);
        expect(why).not.toMatch(/NaN|undefined|Infinity/);
      }
      const outlets = Object.values(installation.enclosures).flatMap(({ devices }) =>
        Object.values(devices).flatMap(outletsOf),
      );
      for (const { volts } of liveAfter(run, outlets)) expect(volts).toBeGreaterThanOrEqual(50);
    }
    expect(opened).toBeGreaterThan(0);
  });

  test("ways around sensors are those of the circuit with their contacts opened", () => {
    let found = 0;
    for (const { circuit } of wrongCircuits(WRONG)) {
      for (const [index, sensor] of circuit.sensors.entries()) {
        if (sensor.contacts.some((branch) => circuit.network.g[branch] === 0)) continue;
        const { neutral = Infinity, hot = Infinity } = loopsAround(circuit, sensor);
        const ohms = sensor.summed
          .map(({ branch }) => loopByOpening(circuit, index, branch))
          .map((ohm) => (ohm > 1e4 ? Infinity : ohm));
        const last = ohms.at(-1) ?? Infinity;
        const first = Math.min(...ohms.slice(0, -1));
        for (const [read, solved] of [
          [neutral, last],
          [hot, first],
        ] as const) {
          if (solved === Infinity) expect(read).toBe(Infinity);
          else {
            found++;
            expect(Math.abs(read - solved)).toBeLessThan(1e-3 * solved + 1e-6);
          }
        }
      }
    }
    expect(found).toBeGreaterThan(0);
  });
});

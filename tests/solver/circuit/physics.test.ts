import { describe, expect, test } from "vitest";
import { deviceId } from "../../builders/ids.ts";
import { FACE_A, FACE_B, LAMP, type PhysicsFault, physicsCircuit } from "../../builders/physics-circuit.ts";
import { circuitOf, residualMa, triple, voltsBetween } from "./solve.ts";

/*
 * Volts hot-neutral / hot-ground / neutral-ground at A, at B and at the lamp, and the residual in mA. The figures were
 * computed apart from this program, by nodal analysis of the same circuit in Python, with 2.53 ohm in 1000 ft of 14 AWG;
 * here it is 2.525, from the wire formula. Readings that float depend on the meter and are not in this table.
 */
const ON: readonly (readonly [PhysicsFault, readonly number[], readonly number[], readonly number[], number])[] = [
  ["F01", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F02", [120, 120, 0], [0, 0, 0], [0, 0, 0], 0],
  ["F03", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F04", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 498.8],
  ["F05", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 498.8],
  ["F06", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.9, 0.1], 249.4],
  ["F07", [119.8, 0.1, 119.9], [119.8, 0.1, 119.9], [119.7, 0.1, 119.8], 0],
  ["F08", [119.8, 119.9, 0.1], [119.8, 0.1, 119.9], [119.7, 0.1, 119.8], 0],
  ["F09", [0, 0, 0], [0, 0, 0], [0, 0, 0], 0],
  ["F10", [120, 120, 0], [0, 0, 0], [0, 0, 0], 0],
  ["F11", [0, 120, 120], [0, 120, 120], [0, 120, 120], 0.1],
  ["F12", [120, 120, 0], [0, 120, 120], [0, 120, 120], 0.1],
  ["F16", [120, 120, 0], [0, 120, 120], [0, 120, 120], 0],
  ["F17", [119.9, 119.8, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 498.8],
  ["F18", [119.8, 119.9, 0.1], [119.8, 119.8, 0], [119.7, 119.7, 0], 0],
  ["F19", [119.8, 119.9, 0.1], [119.8, 119.8, 0], [119.7, 119.7, 0], 0],
  ["F20", [119.9, 119.9, 0], [119.8, 119.8, 0], [119.8, 119.8, 0], 250.4],
  ["F21", [69.4, 31.6, 37.8], [53.7, 0.2, 53.5], [53.7, 0.2, 53.5], 248_000],
  ["F22", [43.6, 76.3, 32.7], [16.5, 62.8, 46.3], [0.2, 54.6, 54.4], 0],
  ["F23", [119.9, 119.9, 0], [119.9, 119.9, 0], [119.8, 119.8, 0], 498.9],
  ["F24", [116.9, 118.2, 1.3], [98.6, 100.4, 1.9], [98.5, 100.4, 1.9], 0],
  ["F25", [99.7, 118.2, 18.6], [98.6, 117.7, 19.1], [98.5, 117.7, 19.1], 0],
  ["F27", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F29", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F30", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F32", [119.8, 119.9, 0.1], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F33", [119.8, 0.1, 119.9], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1], 0],
  ["F35", [120, 120, 0], [0, 0, 0], [0, 0, 0], 0],
];

/** The same with the device tripped, without those that float. */
const TRIPPED: readonly (readonly [PhysicsFault, readonly number[], readonly number[], readonly number[]])[] = [
  ["F01", [0, 0, 0], [0, 0, 0], [0, 0, 0]],
  ["F03", [0, 0, 0], [119.8, 119.9, 0.1], [119.7, 119.8, 0.1]],
  ["F06", [0, 120, 120], [0, 120, 120], [0, 120, 120]],
  ["F20", [0, 0, 0], [0, 0, 0], [0, 0, 0]],
  ["F26", [0, 0, 0], [0, 0, 0], [0, 0, 0]],
  ["F27", [120, 120, 0], [0, 0, 0], [0, 0, 0]],
];

const near = (read: readonly number[], expected: readonly number[]): void => {
  expect(read.map((volts, index) => Math.abs(volts - (expected[index] as number)) <= 0.2)).toEqual([true, true, true]);
};

describe("the circuit of the table of faults", () => {
  test.each(ON)("%s, lamp on", (fault, a, b, lamp, ma) => {
    const circuit = circuitOf(physicsCircuit(fault).project);
    near(triple(circuit, FACE_A), a);
    near(triple(circuit, FACE_B), b);
    near(triple(circuit, LAMP), lamp);
    const read = residualMa(circuit, deviceId("R1"));
    expect(Math.abs(read - ma)).toBeLessThan(ma > 1 ? ma * 0.002 : 0.1);
  });

  test.each(TRIPPED)("%s, tripped", (fault, a, b, lamp) => {
    const circuit = circuitOf(physicsCircuit(fault).project, { tripped: new Set([deviceId("R1")]) });
    near(triple(circuit, FACE_A), a);
    near(triple(circuit, FACE_B), b);
    near(triple(circuit, LAMP), lamp);
  });

  test("F01, lamp off: 120 V everywhere and no drop", () => {
    const circuit = circuitOf(physicsCircuit().project, { idle: new Set([deviceId("L1")]) });
    for (const place of [FACE_A, FACE_B, LAMP]) near(triple(circuit, place), [120, 120, 0]);
  });

  test.each<readonly [PhysicsFault, boolean, typeof FACE_A | typeof FACE_B, readonly number[]]>([
    ["F11", false, FACE_A, [2.7, 120, 119.6]],
    ["F12", false, FACE_B, [83, 120, 33]],
    ["F13", true, FACE_A, [60, 60]],
    ["F14", true, FACE_B, [59, 59]],
    ["F15", true, FACE_B, [59, 59]],
    ["F34", true, FACE_B, [59, 59]],
  ])(
    "%s: what floats, read by a meter of 10 megohms across each pair (printed in whole volts)",
    (fault, lamp, face, volts) => {
      const { project } = physicsCircuit(fault);
      const at = (node: "hot" | "neutral" | "ground") =>
        ({ kind: "device", device: face.device, node: face[node] }) as const;
      const pairs = [
        [at("hot"), at("neutral")],
        [at("hot"), at("ground")],
        [at("neutral"), at("ground")],
      ] as const;
      const read = pairs.map(([from, to]) => {
        const idle = new Set(lamp ? [] : [deviceId("L1")]);
        return voltsBetween(circuitOf(project, { idle, added: [{ from, to, ohm: 10_000_000 }] }), from, to);
      });
      const expected = volts.length === 3 ? volts : [119.8, ...volts];
      for (const [index, one] of read.entries()) expect(Math.abs(one - (expected[index] as number))).toBeLessThan(0.6);
    },
  );

  test("an appliance's leak to ground is seen by the device before it: a freezer of 0.8 mA, typical of the catalogue", () => {
    const { project } = physicsCircuit().load("Freezer", "freezer-180", "R2");
    expect(Math.abs(residualMa(circuitOf(project), deviceId("R1")) - 0.8)).toBeLessThan(0.05);
  });

  test("F28: an open shared neutral puts 228.2 V on the lamp, 11.4 V on the heater and 108.4 V on the neutral", () => {
    const circuit = circuitOf(physicsCircuit("F28").project);
    const place = (device: string, node: string) => ({ kind: "device", device: deviceId(device), node }) as const;
    expect(voltsBetween(circuit, place("M1", "H"), place("M1", "N"))).toBeCloseTo(228.2, 0);
    expect(voltsBetween(circuit, place("M2", "H1"), place("M2", "N1"))).toBeCloseTo(11.4, 1);
    expect(voltsBetween(circuit, place("M2", "N1"), place("M2", "G"))).toBeCloseTo(108.4, 1);
  });

  test("F31: a person of 1500 ohm from hot to neutral takes 80 mA that the device does not see", () => {
    const project = physicsCircuit("F31").project;
    const at = (node: string) => ({ kind: "device", device: FACE_B.device, node }) as const;
    const idle = new Set([deviceId("L1")]);
    const across = circuitOf(project, { idle, added: [{ from: at("UH"), to: at("UN"), ohm: 1500 }] });
    expect(residualMa(across, deviceId("R1"))).toBeLessThan(0.1);
    const toEarth = circuitOf(project, { idle, added: [{ from: at("UH"), to: { kind: "earth" }, ohm: 1500 }] });
    expect(Math.abs(residualMa(toEarth, deviceId("R1")) - 80)).toBeLessThan(0.1);
  });

  test("F01: a leak of 19 kilohms to earth is 6.3 mA, from the hot slot of B", () => {
    const leak = {
      from: { kind: "device", device: FACE_B.device, node: "UH" },
      to: { kind: "earth" },
      ohm: 19_000,
    } as const;
    expect(residualMa(circuitOf(physicsCircuit().project, { added: [leak] }), deviceId("R1"))).toBeCloseTo(6.31, 1);
  });
});

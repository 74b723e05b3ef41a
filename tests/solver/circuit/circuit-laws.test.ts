import { describe, expect, test } from "vitest";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import { EVERYTHING_ON } from "../../../shared-model/solver/circuit/circuit.ts";
import { scopeOfSection } from "../../../shared-model/solver/circuit/circuit-scope.ts";
import { walkSection } from "../../../shared-model/solver/section-walk.ts";
import { boxId, laundryDrawing } from "../../builders/drawing.ts";
import { physicsCircuit, physicsFaults } from "../../builders/physics-circuit.ts";
import { circuitOf, outletVolts } from "./solve.ts";

test("superposition: each leg of a supply adds its own voltages", () => {
  const { project } = physicsCircuit("F28");
  const circuit = circuitOf(project);
  const whole = circuit.factor.operatingPoint();
  const parts = circuit.network.sources.map((_, alone) => {
    const sources = circuit.network.sources.map((source, index) =>
      index === alone ? source : { ...source, re: 0, im: 0 },
    );
    return circuit.factor.refactor({ ...circuit.network, sources }).operatingPoint();
  });
  expect(parts.length).toBe(2);
  for (const [node, re] of whole.re.entries())
    expect(parts.reduce((sum, part) => sum + (part.re[node] as number), 0)).toBeCloseTo(re, 9);
});

test("power balance: what the sources give is what the branches use", () => {
  for (const fault of physicsFaults) {
    const { network, factor } = circuitOf(physicsCircuit(fault).project);
    const { re, im } = factor.operatingPoint();
    const square = (from: number, to: number): number =>
      ((re[from] ?? 0) - (re[to] ?? 0)) ** 2 + ((im[from] ?? 0) - (im[to] ?? 0)) ** 2;
    let used = 0;
    for (const [branch, g] of network.g.entries())
      used += g * square(network.a[branch] as number, network.b[branch] as number);
    let given = 0;
    for (const source of network.sources) {
      const voltsRe = (re[source.plus] ?? 0) - (re[source.minus] ?? 0);
      const voltsIm = (im[source.plus] ?? 0) - (im[source.minus] ?? 0);
      given += source.g * ((source.re - voltsRe) * voltsRe + (source.im - voltsIm) * voltsIm);
    }
    expect(Math.abs(given - used)).toBeLessThan(1e-9 * Math.max(1, used));
  }
});

describe("what must change nothing", () => {
  const laundry = laundryDrawing().project;
  const plain = outletVolts(circuitOf(laundry), laundry.asFound);
  const expectSame = (other: ReadonlyMap<string, number>): void => {
    for (const [key, volts] of plain) expect(other.get(key)).toBeCloseTo(volts, 4);
  };

  test("other names, another order", () => {
    const { enclosures, cables } = laundry.asFound;
    const turned = <T extends object>(table: T): T => Object.fromEntries(Object.entries(table).reverse()) as T;
    const names = ["B6", "B5", "B4", "B3", "B2", "B1", "P", "B7"];
    const renamed = Object.values(enclosures).map((enclosure, index) => ({
      ...enclosure,
      name: names[index] ?? "X",
      devices: turned(enclosure.devices),
      places: turned(enclosure.places),
      splices: turned(enclosure.splices),
      jumpers: turned(enclosure.jumpers),
    }));
    const other = {
      ...laundry.asFound,
      enclosures: turned(Object.fromEntries(renamed.map((enclosure) => [enclosure.id, enclosure]))),
      cables: turned(cables),
    } as Installation;
    expectSame(outletVolts(buildCircuit(other, laundry.supply), other));
  });

  test("other ids, so that everything is numbered in another order", () => {
    const text = JSON.stringify(laundry.asFound).replaceAll(
      /"(box|cable|device|splice|jumper)-([A-Za-z0-9_]+)/g,
      (_, kind, name) => {
        const other = [...`${name}`].reverse().join("");
        return `"${kind}-${other}z`;
      },
    );
    const other: Installation = JSON.parse(text);
    const volts = outletVolts(buildCircuit(other, laundry.supply), other);
    expect([...volts.values()].map((one) => one.toFixed(4)).sort()).toEqual(
      [...plain.values()].map((one) => one.toFixed(4)).sort(),
    );
  });

  test("a dead cable more", () => {
    const more = laundryDrawing().cable("D", "B1", "B6", { ft: 20 }).project;
    expectSame(outletVolts(circuitOf(more), more.asFound));
  });

  test("a section by itself reads as it does in the whole house, where nothing else is on", () => {
    const { asFound, supply } = laundry;
    const section = walkSection(asFound, asFound.enclosures[boxId("B1")] as Enclosure);
    expectSame(outletVolts(buildCircuit(asFound, supply, EVERYTHING_ON, scopeOfSection(asFound, section)), asFound));
  });
});

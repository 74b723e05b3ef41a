import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import type { Added, Circuit, Probe } from "../../../shared-model/solver/circuit/circuit.ts";
import { readOhms, readVolts, signalsNoncontact } from "../../../shared-model/solver/circuit/instruments.ts";
import { readOutlets } from "../../../shared-model/solver/circuit/readings.ts";
import { deviceId } from "../../builders/ids.ts";
import { physicsCircuit } from "../../builders/physics-circuit.ts";
import { randomDrawing } from "../random-drawing.ts";
import { outletsIn } from "./measure.ts";
import { circuitOf, voltsBetween } from "./solve.ts";
import { wrongCircuits } from "./wrong-circuits.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const WRONG = LONG ? 1000 : 60;
const RUNS = LONG ? 1000 : 60;

const at = (device: string, node: string): Probe => ({ kind: "device", device: deviceId(device), node });
const OFF = { idle: new Set([deviceId("L1")]) };

/** The same circuit with resistances really put in. */
const withAdded = (circuit: Circuit, ...added: readonly Added[]): Circuit =>
  circuit.inSetting({ ...circuit.setting, added: [...circuit.setting.added, ...added] });

/** A share of the volts that are there, or 1 nV: what floats hangs on picosiemens. */
const expectSame = (read: number, solved: number): void => {
  expect(Number.isFinite(read)).toBe(true);
  expect(Math.abs(read - solved)).toBeLessThan(1e-6 * Math.max(solved, 1e-3));
};

describe("a meter reads what it would if it were wired in", () => {
  const compare = (circuit: Circuit, from: Probe, to: Probe): void => {
    const reading = readVolts(circuit, from, to);
    if (reading === undefined) throw new Error("Not in the circuit.");
    for (const [volts, ohm] of [
      [reading.volts, 10_000_000],
      [reading.lowVolts, 3000],
    ] as const)
      expectSame(volts, voltsBetween(withAdded(circuit, { from, to, ohm }), from, to));
    const turned = readVolts(circuit, to, from);
    expectSame(turned?.volts ?? Number.NaN, reading.volts);
    expect(turned?.floating).toBe(reading.floating);
    expect(readVolts(circuit, from, from)).toEqual({ volts: 0, lowVolts: 0, floating: false });
  };

  test(`${WRONG} drawings with mistakes, between any two places or a place and earth`, () => {
    for (const { circuit, pick } of wrongCircuits(WRONG)) {
      const places = circuit.placesAt.flat();
      for (let time = 0; time < 4; time++) {
        const from = pick.from(places, undefined);
        const to = pick.chance(0.2) ? ({ kind: "earth" } as const) : pick.from(places, undefined);
        if (from !== undefined && to !== undefined) compare(circuit, from, to);
      }
    }
  });

  test("drawings at random", () => {
    fc.assert(
      fc.property(randomDrawing, fc.nat(), fc.nat(), (drawing, one, other) => {
        const circuit = buildCircuit(drawing.installation(), { system: "120/240" });
        const places = circuit.placesAt.flat();
        compare(circuit, places[one % places.length] as Probe, places[other % places.length] as Probe);
      }),
      { numRuns: RUNS },
    );
  });
});

test(`the lamps of a tester, put in together, and all readings of ${WRONG} drawings with mistakes`, () => {
  for (const { circuit, installation, pick } of wrongCircuits(WRONG)) {
    const outlets = Object.values(installation.enclosures).flatMap(({ devices }) =>
      Object.values(devices).flatMap((device) => outletsOf(device)),
    );
    const readings = readOutlets(circuit, outlets);
    expect(readings.length).toBe(outlets.length);
    for (const { hn, hg, ng, tester } of readings)
      for (const volts of [hn, hg ?? hn, ng ?? hn]
        .flatMap((one) => [one.volts, one.lowVolts])
        .concat(tester?.volts ?? []))
        expect(Number.isFinite(volts)).toBe(true);
    const chosen = pick.from(
      readings.filter(({ tester }) => tester !== undefined),
      undefined,
    );
    if (chosen?.tester === undefined) continue;
    const { device, hot, neutral, ground } = chosen.outlet;
    const [h, n, g] = [hot, neutral, ground ?? ""].map(
      (node): Probe => ({ kind: "device", device: device.id, node }),
    ) as [Probe, Probe, Probe];
    const pairs = [
      [h, n],
      [h, g],
      [n, g],
    ] as const;
    const lit = withAdded(circuit, ...pairs.map(([from, to]) => ({ from, to, ohm: 100_000 })));
    const volts = lit.factor.operatingPoint();
    for (const [index, [from, to]] of pairs.entries()) {
      expectSame(chosen.tester.volts[index] as number, voltsBetween(lit, from, to, volts));
      const reading = readVolts(circuit, from, to);
      expectSame([chosen.hn, chosen.hg, chosen.ng][index]?.volts ?? Number.NaN, reading?.volts ?? Number.NaN);
    }
  }
});

describe("other instruments", () => {
  test("readings go by place: other names, other colours and exchanged roles change nothing", () => {
    const { project } = physicsCircuit("F08");
    const circuit = circuitOf(project);
    // The slot for the neutral is hot here.
    expect(readVolts(circuit, at("R2", "UN"), { kind: "earth" })?.volts).toBeCloseTo(119.9, 1);
    expect(readVolts(circuit, { kind: "end", end: "cable-AB.bk.b" as never }, at("R2", "UN"))?.volts).toBe(0);
  });

  test("a place that is not drawn reads nothing", () => {
    const circuit = circuitOf(physicsCircuit().project);
    expect(readVolts(circuit, at("R9", "UH"), at("R2", "UH"))).toBeUndefined();
    expect(readOhms(circuit, at("R2", "UH"), at("R2", "X"))).toBeUndefined();
    expect(signalsNoncontact(circuit, at("R9", "UH"))).toBeUndefined();
    const elsewhere = physicsCircuit().device("R9", "receptacle-15", "B").project;
    expect(readOutlets(circuit, outletsIn(elsewhere)).map(({ outlet }) => outlet.name)).toEqual(["R1", "R2", "L1"]);
  });

  test("a non-contact tester signals at a hot, at a floating wire, and not at a neutral or ground", () => {
    const circuit = circuitOf(physicsCircuit("F12").project, OFF);
    expect(["UH", "UN", "UG"].map((node) => signalsNoncontact(circuit, at("R2", node)))).toEqual([true, false, false]);
    const lampOn = circuitOf(physicsCircuit("F12").project);
    expect(["UH", "UN", "UG"].map((node) => signalsNoncontact(lampOn, at("R2", node)))).toEqual([true, true, false]);
    const ungrounded = circuitOf(physicsCircuit("F15").project);
    expect(["UH", "UN", "UG"].map((node) => signalsNoncontact(ungrounded, at("R2", node)))).toEqual([
      true,
      false,
      true,
    ]);
  });

  test("resistance with the power off: by hand, 25 ft of 14 AWG each way and the lamp of 240 ohm", () => {
    const circuit = circuitOf(physicsCircuit().project);
    const wire = 2.5254e-3;
    const along = readOhms(circuit, at("R1", "LOAD_H"), at("R2", "H1"));
    expect(along?.continuous).toBe(true);
    expect(along?.ohm).toBeCloseTo(25 * wire, 3);
    const lamp = readOhms(circuit, at("R2", "H1"), at("R2", "N1"));
    expect(lamp?.continuous).toBe(false);
    // The lamp behind 15 ft each way, beside the 30 kilohms of the electronics behind 25 ft.
    const [behind, electronics] = [240 + 30 * wire, 30_000 + 50 * wire];
    expect(lamp?.ohm).toBeCloseTo((behind * electronics) / (behind + electronics), 1);
    expect(readOhms(circuit, at("R2", "H1"), at("R2", "H1"))).toEqual({ ohm: 0, continuous: true });
    // Neutral and ground meet at the panel: 85 ft out and 85 ft back.
    expect(readOhms(circuit, at("R2", "N1"), at("R2", "G"))?.ohm).toBeCloseTo(170 * wire, 2);
  });

  test("resistance follows contacts and joints: a tripped device and an open wire are open, a bad joint shows", () => {
    const ohmOf = (circuit: Circuit) => readOhms(circuit, at("R1", "LINE_H"), at("R2", "H1"));
    expect(ohmOf(circuitOf(physicsCircuit().project))?.continuous).toBe(true);
    const tripped = circuitOf(physicsCircuit().project, { tripped: new Set([deviceId("R1")]) });
    expect(ohmOf(tripped)).toEqual({ continuous: false });
    // Around an open hot: back through the lamp, and through the electronics of R1.
    const around = ohmOf(circuitOf(physicsCircuit("F10").project));
    expect(around?.continuous).toBe(false);
    expect(Math.abs((around?.ohm ?? 0) - 30_240)).toBeLessThan(1);
    expect(ohmOf(circuitOf(physicsCircuit("F10").project, OFF))?.ohm).toBeUndefined();
    expect(ohmOf(circuitOf(physicsCircuit("F24").project))?.ohm).toBeCloseTo(2 + 25 * 2.5254e-3 + 0.001, 2);
  });

  test(`resistance between any two places of ${WRONG} drawings with mistakes is a number or open, either way round`, () => {
    for (const { circuit, pick } of wrongCircuits(WRONG)) {
      const places = circuit.placesAt.flat();
      const [from, to] = [pick.from(places, undefined), pick.from(places, undefined)];
      if (from === undefined || to === undefined) continue;
      const one = readOhms(circuit, from, to);
      const other = readOhms(circuit, to, from);
      expect(one?.continuous).toBe(other?.continuous);
      if (one?.ohm === undefined) expect(other?.ohm).toBeUndefined();
      else {
        expect(Number.isFinite(one.ohm)).toBe(true);
        expectSame(one.ohm, other?.ohm ?? Number.NaN);
      }
    }
  });

  test("a dead house reads 0 V everywhere", () => {
    const circuit = circuitOf(physicsCircuit().project, { off: new Set([deviceId("Q1")]) });
    for (const { hn, hg, ng } of readOutlets(circuit, outletsIn(physicsCircuit().project)))
      for (const reading of [hn, hg, ng]) {
        expect(reading?.volts).toBeLessThan(0.01);
        expect(reading?.floating).toBe(false);
      }
  });
});

import { describe, expect, test } from "vitest";
import samples from "../../../assets/samples/index.json" with { type: "json" };
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { emptyInstallation, type Installation, type Project } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import { type Circuit, EVERYTHING_ON, type Probe } from "../../../shared-model/solver/circuit/circuit.ts";
import { scopeOfSection } from "../../../shared-model/solver/circuit/circuit-scope.ts";
import { residualOf } from "../../../shared-model/solver/circuit/currents.ts";
import { walkSection } from "../../../shared-model/solver/section-walk.ts";
import { boxId, deviceId, drawing, laundryDrawing } from "../../builders/drawing.ts";
import { withMistakes } from "../../builders/mistakes.ts";
import { physicsCircuit, physicsFaults } from "../../builders/physics-circuit.ts";
import { Picker } from "../../builders/picker.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { circuitOf, outletVolts, residualMa, voltsBetween, worstLeftOver } from "./solve.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const WRONG_DRAWINGS = LONG ? 3_000 : 200;

const states = samples.flatMap(({ name }) => {
  const project = openSample(name);
  const proposed = project.proposed === undefined ? [] : [[`${name}, proposed`, project, project.proposed] as const];
  return [[`${name}, as found`, project, project.asFound] as const, ...proposed];
});

const place = (device: string, node: string): Probe => ({ kind: "device", device: deviceId(device), node });

function expectSolved(circuit: Circuit): void {
  const { re, im } = circuit.factor.operatingPoint();
  for (let node = 0; node < re.length; node++) {
    if (!Number.isFinite(re[node]) || !Number.isFinite(im[node])) throw new Error(`Node ${node} has no voltage.`);
  }
  // A current is the difference of two voltages of which each is rounded to some 1e-16.
  expect(worstLeftOver(circuit)).toBeLessThan(1e-12);
}

describe("Kirchhoff's current law holds at every node, and every node has a voltage", () => {
  test.each(states)("sample %s", (_, { supply }, installation) => {
    const circuit = buildCircuit(installation, supply);
    expectSolved(circuit);
    expectSolved(
      circuit.inSetting({ ...EVERYTHING_ON, off: new Set(circuit.overcurrent.map(({ device }) => device)) }),
    );
    expectSolved(
      circuit.inSetting({ ...EVERYTHING_ON, tripped: new Set(circuit.sensors.map(({ device }) => device)) }),
    );
    expectSolved(buildCircuit(installation, { system: "208Y/120" }));
  });

  test.each(physicsFaults.map((fault) => [fault]))("fault %s", (fault) => {
    expectSolved(circuitOf(physicsCircuit(fault).project));
  });

  test(`${WRONG_DRAWINGS} drawings with mistakes`, () => {
    const starts = samples.map(({ name }) => started(openSample(name)));
    for (let seed = 0; seed < WRONG_DRAWINGS; seed++) {
      const pick = new Picker(seed);
      const { project } = withMistakes(pick.from(starts, starts[0] as Project), pick, 6);
      expectSolved(buildCircuit(getInstallation(project, "proposed"), project.supply));
    }
  });
});

function started(project: Project): Project {
  if (project.proposed !== undefined) return project;
  const done = runCommand(project, { command: "start-proposed", args: {} });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
}

/** The first jumper of box B as many times over. */
function withJumpers(installation: Installation, count: number): Installation {
  const b = installation.enclosures[boxId("B")] as Enclosure;
  const [jumper] = Object.values(b.jumpers);
  const jumpers: Record<string, unknown> = {};
  const places: Record<string, unknown> = {};
  for (let index = 0; index < count; index++) {
    const id = `j${index}`;
    jumpers[id] = { ...jumper, id };
    for (const side of ["a", "b"]) places[`${id}.${side}`] = b.places[`${jumper?.id}.${side}` as keyof typeof b.places];
  }
  return { ...installation, enclosures: { [b.id]: { ...b, jumpers, places } as unknown as Enclosure } };
}

describe("what a drawing does not say", () => {
  test("nothing drawn, or no panel: everything is dead, and it is said", () => {
    const empty = buildCircuit(emptyInstallation, { system: "120/240" });
    expect([empty.network.nodeCount, ...empty.factor.operatingPoint().re]).toEqual([0]);
    const box = drawing().box("B").device("R", "receptacle-15", "B").outside("C", "B").land("C.bk@B", "R.H1").project;
    const circuit = circuitOf(box);
    expect([...outletVolts(circuit, box.asFound).values()]).toEqual([0]);
    expect(circuit.assumptions).toContain("Nothing drawn here is joined to a service panel: everything is dead.");
    expect(circuit.assumptions).toContain("No length of C is known: 30 ft assumed.");
  });

  test("devices of an unknown type conduct nothing", () => {
    const { asFound, supply } = physicsCircuit().project;
    const b = asFound.enclosures[boxId("B")] as Enclosure;
    const r2 = { ...b.devices[deviceId("R2")], type: "from-the-future" } as Enclosure["devices"][never];
    const unknown = { ...asFound, enclosures: { ...asFound.enclosures, [b.id]: { ...b, devices: { [r2.id]: r2 } } } };
    const circuit = buildCircuit(unknown as Installation, supply);
    expectSolved(circuit);
    expect(circuit.assumptions).toContain("What R2 is inside is not known: nothing in it conducts.");
    expect(voltsBetween(circuit, place("L1", "H"), place("L1", "N"))).toBeLessThan(0.001);
  });

  test("a source short-circuited by a cable of no length, and a splice of a thousand: finite answers", () => {
    const shorted = physicsCircuit().set({ kind: "cable", id: "cable-PA" as never }, "lengthFt", 0);
    shorted.land("PA.wh@P", "Q1.OUT").land("PA.bk@P", "P neutral.BAR");
    const project = physicsCircuit("F21").set({ kind: "cable", id: "cable-PA" as never }, "lengthFt", 0).project;
    expectSolved(circuitOf(shorted.project));
    expectSolved(circuitOf(project));
    const two = drawing().box("B").jumper("i", "B", "loose", "loose").jumper("j", "B", "loose", "loose");
    const { asFound, supply } = two.splice("S", "B", "none", "i.a", "j.a").project;
    expectSolved(buildCircuit(withJumpers(asFound, 1000), supply));
  });

  test("a neutral that goes round in a loop", () => {
    const loop = physicsCircuit().cable("X", "P", "B", { item: "nm-14-2-g", ft: 40 });
    loop.land("X.wh@P", "P neutral.BAR").land("X.wh@B", "R2.N2");
    expectSolved(circuitOf(loop.project));
  });

  test("where the main bond is not drawn, and a leg that the supply does not have", () => {
    const house = physicsCircuit().set({ kind: "enclosure", id: boxId("P") }, "mainBond", "unknown");
    house.set({ kind: "device", id: deviceId("Q1") }, "legs", ["C"]);
    const circuit = circuitOf(house.project);
    expect(circuit.assumptions).toContain("Where the main bond is, is not known: taken to be in P.");
    expect(circuit.assumptions).toContain(
      "Q1 stands on leg C, which a 120/240 V supply does not have: that leg is dead.",
    );
    expect(voltsBetween(circuit, place("R2", "UH"), place("R2", "UN"))).toBeLessThan(0.001);
    const wye = buildCircuit(house.project.asFound, { system: "208Y/120" });
    expect(voltsBetween(wye, place("R2", "UH"), place("R2", "UN"))).toBeCloseTo(119.8, 1);
  });
});

describe("supplies", () => {
  const twoLegs = (): Project =>
    drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q", "P", { type: "breaker-2" })
      .box("B")
      .device("W", "appliance-240", "B")
      .cable("C", "P", "B", { item: "nm-10-2-g", ft: 50 })
      .land("C.bk@P", "Q.OUT1")
      .land("C.wh@P", "Q.OUT2")
      .land("C.cu@P", "P ground.BAR")
      .land("C.bk@B", "W.L1")
      .land("C.wh@B", "W.L2")
      .land("C.cu@B", "W.G").project;
  const idle = new Set([deviceId("W")]);

  test.each([
    ["120/240", 240],
    ["208Y/120", 120 * Math.sqrt(3)],
  ] as const)("%s: between two legs %d V, each 120 V to ground", (system, volts) => {
    const circuit = buildCircuit(twoLegs().asFound, { system }, { ...EVERYTHING_ON, idle });
    expect(voltsBetween(circuit, place("W", "L1"), place("W", "L2"))).toBeCloseTo(volts, 2);
    expect(voltsBetween(circuit, place("W", "L1"), place("W", "G"))).toBeCloseTo(120, 2);
    expect(voltsBetween(circuit, place("W", "L2"), place("W", "G"))).toBeCloseTo(120, 2);
  });

  test("208Y/120: every two of three legs have 208 V", () => {
    const { asFound } = physicsCircuit().project;
    const circuit = buildCircuit(
      asFound,
      { system: "208Y/120" },
      { ...EVERYTHING_ON, idle: new Set([deviceId("L1")]) },
    );
    const bus = (leg: string): Probe => ({ kind: "panel", panel: boxId("P"), node: `@bus${leg}` });
    for (const [one, other] of ["AB", "BC", "CA"])
      expect(voltsBetween(circuit, bus(one as string), bus(other as string))).toBeCloseTo(120 * Math.sqrt(3), 1);
  });

  test("a nominal voltage of the drawing's own scales everything", () => {
    const circuit = buildCircuit(twoLegs().asFound, { system: "120/240", nominalV: 126 }, { ...EVERYTHING_ON, idle });
    expect(voltsBetween(circuit, place("W", "L1"), place("W", "L2"))).toBeCloseTo(252, 2);
  });

  test("240 V watts: a 3600 W appliance is 16 ohm", () => {
    const circuit = circuitOf(twoLegs());
    const load = circuit.parts.findIndex(({ kind }) => kind === "load");
    expect(1 / (circuit.network.g[load] as number)).toBeCloseTo(240 ** 2 / 3600, 6);
  });

  test("a feeder panel is fed by its feeder, and its bars stay apart", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("QF", "P", { type: "breaker-2", ratingA: 60 })
      .panel("F", "panel-16", { set: { supply: "feeder", mainBond: "elsewhere" } })
      .device("lugs", "main-lugs", "F")
      .breaker("Q1", "F", { ratingA: 15 })
      .box("B")
      .device("R", "receptacle-15", "B")
      .cable("FD", "P", "F", { item: "nm-10-3-g", ft: 40 })
      .land("FD.bk@P", "QF.OUT1")
      .land("FD.rd@P", "QF.OUT2")
      .land("FD.wh@P", "P neutral.BAR")
      .land("FD.cu@P", "P ground.BAR")
      .land("FD.bk@F", "lugs.L1")
      .land("FD.rd@F", "lugs.L2")
      .land("FD.wh@F", "lugs.N")
      .land("FD.cu@F", "F ground.BAR")
      .cable("C", "F", "B", { item: "nm-14-2-g", ft: 30 })
      .land("C.bk@F", "Q1.OUT")
      .land("C.wh@F", "F neutral.BAR")
      .land("C.cu@F", "F ground.BAR")
      .land("C.bk@B", "R.H1")
      .land("C.wh@B", "R.N1")
      .land("C.cu@B", "R.G")
      .load("Heater", "heater-1200", "R");
    const { asFound, supply } = house.project;
    const part = buildCircuit(
      asFound,
      supply,
      EVERYTHING_ON,
      scopeOfSection(asFound, walkSection(asFound, asFound.enclosures[boxId("B")] as Enclosure)),
    );
    for (const circuit of [circuitOf(house.project), part]) {
      // By hand: 10 A through 40 ft of 10 AWG (0.9988 ohm in 1000 ft) and 30 ft of 14 AWG (2.5254), there and back.
      const loop = 0.05 + 2 * (0.04 * 0.9988 + 0.03 * 2.5254) + 2 * 0.001;
      expect(voltsBetween(circuit, place("R", "UH"), place("R", "UN"))).toBeCloseTo((120 * 12) / (12 + loop), 2);
      expect(voltsBetween(circuit, place("R", "UN"), place("R", "UG"))).toBeCloseTo(
        (120 / (12 + loop)) * (0.04 * 0.9988 + 0.03 * 2.5254),
        2,
      );
    }
  });
});

describe("settings", () => {
  test("breakers, handles, trips and use open what they should, and nothing is kept of a setting before", () => {
    const project = laundryDrawing().project;
    const circuit = circuitOf(project);
    const at = (one: Circuit, device: string, hot: string, neutral: string) =>
      voltsBetween(one, place(device, hot), place(device, neutral));
    const off = circuit.inSetting({ ...EVERYTHING_ON, off: new Set([deviceId("Q14")]) });
    expect(at(off, "R1", "UH", "UN")).toBeLessThan(0.001);
    const dark = off.inSetting({ ...EVERYTHING_ON, positions: new Map([[deviceId("S1"), 1]]) });
    expect(at(dark, "L1", "H", "N")).toBeLessThan(1);
    expect(at(dark, "R1", "UH", "UN")).toBeGreaterThan(117);
    const again = dark.inSetting(EVERYTHING_ON);
    expect(at(again, "L1", "H", "N")).toBe(at(circuit, "L1", "H", "N"));
    const idle = new Set(Object.values(project.asFound.loads).map(({ id }) => id));
    expect(at(circuit.inSetting({ ...EVERYTHING_ON, idle }), "R4", "UH", "UN")).toBeGreaterThan(
      at(circuit, "R4", "UH", "UN"),
    );
  });

  test("a breaker that has tripped is open, as one that is off", () => {
    const tripped = circuitOf(physicsCircuit().project, { tripped: new Set([deviceId("Q1")]) });
    expect(voltsBetween(tripped, place("R1", "LINE_H"), { kind: "earth" })).toBeLessThan(0.01);
  });

  test("a sensor sums its poles, not the contacts of its face; the neutral of a breaker is summed and never opened", () => {
    const house = physicsCircuit("F30").set({ kind: "device", id: deviceId("R1") }, "faceContact", "separate");
    const circuit = circuitOf(house.load("Heater", "heater-1200", "R1").project);
    const [q1, r1] = circuit.sensors;
    expect([q1?.device, q1?.summed.length, q1?.contacts.length]).toEqual([deviceId("Q1"), 2, 1]);
    expect([r1?.device, r1?.summed.length, r1?.contacts.length]).toEqual([deviceId("R1"), 2, 4]);
    for (const device of ["Q1", "R1"]) expect(residualMa(circuit, deviceId(device))).toBeLessThan(0.2);
    const open = circuit.inSetting({ ...EVERYTHING_ON, tripped: new Set([deviceId("R1")]) });
    expect(voltsBetween(open, place("R1", "UH"), { kind: "earth" })).toBeLessThan(0.01);
  });

  test("what a sensor sums is counted toward the load", () => {
    const leak = { from: place("R2", "UH"), to: { kind: "earth" }, ohm: 19_000 } as const;
    const circuit = circuitOf(physicsCircuit().project, { added: [leak] });
    const [r1] = circuit.sensors;
    const at = circuit.factor.operatingPoint();
    expect(r1 && residualOf(circuit, r1, at).re).toBeCloseTo(120 / 19_000, 4);
  });

  test("the metal of a box is a place: on the ground of the circuit, not on its hot", () => {
    const circuit = circuitOf(laundryDrawing().project);
    const metal: Probe = { kind: "bond", enclosure: boxId("B1") };
    expect(voltsBetween(circuit, metal, place("R1", "G"))).toBeLessThan(0.001);
    expect(voltsBetween(circuit, metal, place("R1", "UN"))).toBeGreaterThan(0.05);
  });

  test("a breaker takes along the one that its handle is tied to; a disconnect is off by itself", () => {
    const house = physicsCircuit().breaker("Q2", "P");
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Q1"));
    house.device("D", "disconnect-fused", "B").land("BL.bk@B", "D.OUT").jumper("d", "B", "R2.H2", "D.IN");
    const circuit = circuitOf(house.project);
    const lampV = (...off: readonly string[]) =>
      voltsBetween(
        circuit.inSetting({ ...EVERYTHING_ON, off: new Set(off.map(deviceId)) }),
        place("L1", "H"),
        place("L1", "N"),
      );
    expect(lampV()).toBeGreaterThan(119);
    expect(lampV("Q2")).toBeLessThan(0.01);
    expect(lampV("D")).toBeLessThan(0.01);
  });

  test("a fan-light uses 75 W and 60 W of its 135 W", () => {
    const project = drawing().box("B").device("FL", "fan-light", "B").project;
    const { network, parts } = circuitOf(project);
    const ohms = parts.flatMap(({ kind }, branch) => (kind === "load" ? [1 / (network.g[branch] as number)] : []));
    expect(ohms.map((ohm) => Math.round(ohm * 10) / 10)).toEqual([192, 240]);
  });
});

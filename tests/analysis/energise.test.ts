/**
 * Energised drawings against the table of faults of `tests/reference/circuit-faults.json`, which was computed apart from
 * this program; its source and modelling values stand there.
 */
import { describe, expect, test } from "vitest";
import { energise } from "../../shared-model/analysis/energise.ts";
import type {
  Act,
  Condition,
  EnergiseAsk,
  Energised,
  LeadPlace,
  Operated,
} from "../../shared-model/answers/energised.ts";
import { cableEnd, type DeviceId, outletKey } from "../../shared-model/model/ids.ts";
import { drawing } from "../builders/drawing.ts";
import { boxId, cableId, deviceId, spliceId } from "../builders/ids.ts";
import { type PhysicsFault, physicsCircuit } from "../builders/physics-circuit.ts";

const ON: Operated = { off: [], positions: {}, tripped: [], idle: [] };
const [R1, R2, L1, Q1] = ["R1", "R2", "L1", "Q1"].map((name) => deviceId(name)) as [
  DeviceId,
  DeviceId,
  DeviceId,
  DeviceId,
];
const OFF: Partial<Operated> = { idle: [L1] };

function answer(fault: PhysicsFault, operated: Partial<Operated> = {}, ask: EnergiseAsk = {}): Energised {
  const { asFound, supply } = physicsCircuit(fault).project;
  return energise(asFound, supply, { ...ON, ...operated }, ask);
}

const at = (device: DeviceId, node: string): LeadPlace => ({ kind: "device", device, node });
const terminal = (said: Energised, box: string, device: DeviceId, node: string): Condition | undefined =>
  said.boxes[boxId(box)]?.devices[device]?.[node];
const end = (said: Energised, box: string, cable: string, conductor: string, side: "a" | "b"): Condition | undefined =>
  said.boxes[boxId(box)]?.ends[cableEnd(cableId(cable), conductor as never, side)];
const names = (list: readonly { readonly name: string }[]): readonly string[] => list.map(({ name }) => name).sort();

describe("conditions", () => {
  test("F01: hot on leg A, neutral, ground, all the way to the lamp", () => {
    const said = answer("F01");
    expect(end(said, "B", "AB", "bk", "b")).toMatchObject({ kind: "live", legs: ["A"] });
    expect(end(said, "B", "AB", "wh", "b")?.kind).toBe("neutral");
    expect(end(said, "B", "AB", "cu", "b")?.kind).toBe("ground");
    expect(said.boxes[boxId("A")]?.splices[spliceId("GA")]?.kind).toBe("ground");
    expect(terminal(said, "L", L1, "H")?.kind).toBe("live");
    expect(Object.values(said.cables[cableId("BL")] ?? {}).map(({ kind }) => kind)).toEqual([
      "live",
      "neutral",
      "ground",
    ]);
    expect(said.opened).toEqual([]);
  });

  test("a breaker that is off leaves its circuit dead and the other legs of its neutral as they are", () => {
    const said = answer("F01", { off: [Q1] });
    expect(end(said, "A", "PA", "bk", "b")).toEqual({ kind: "dead", volts: expect.closeTo(0, 3) });
    expect(end(said, "A", "PA", "wh", "b")?.kind).toBe("neutral");
    expect(said.powerOff).toBe(true);
    expect(answer("F01").powerOff).toBe(false);
  });

  test("F11, lamp on: the lost neutral is live through the lamp; lamp off: it floats", () => {
    expect(terminal(answer("F11"), "A", R1, "LINE_N")).toMatchObject({ kind: "through-load" });
    expect(terminal(answer("F11"), "A", R1, "LINE_N")?.volts).toBeCloseTo(120, 0);
    expect(terminal(answer("F11", OFF), "A", R1, "LINE_N")?.kind).toBe("floating");
  });

  test("F12, lamp off: the neutral at B floats at 33 V to ground", () => {
    const said = terminal(answer("F12", OFF), "B", R2, "UN");
    expect(said?.kind).toBe("floating");
    expect(Math.abs((said?.volts ?? 0) - 33)).toBeLessThan(1);
  });

  test("F13: a ground that does not reach the panel floats, it is not called ground", () => {
    const said = answer("F13");
    expect(terminal(said, "A", R1, "G")?.kind).toBe("floating");
    expect(end(said, "P", "PA", "cu", "a")?.kind).toBe("floating");
  });

  test("F17 and F16: what is exchanged shows as what it is", () => {
    expect(terminal(answer("F17", OFF), "B", R2, "UG")?.kind).toBe("neutral");
    expect(terminal(answer("F17", OFF), "B", R2, "UN")?.kind).toBe("ground");
    expect(terminal(answer("F16"), "B", R2, "UG")?.kind).toBe("live");
  });

  test("F18: where the neutral alone serves as ground, the contact is on the neutral", () => {
    expect(terminal(answer("F18"), "B", R2, "UG")?.kind).toBe("neutral");
  });

  test("F20 opens the device; with no device to open, neutral and ground are one", () => {
    expect(answer("F20").opened.map((one) => names(one))).toEqual([["R1"]]);
    const { asFound, supply } = drawing(2020, "neutral joined to ground")
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q1", "P", { ratingA: 15 })
      .box("B", "plastic-new-2")
      .device("R2", "receptacle-15", "B")
      .cable("PB", "P", "B", { item: "nm-14-2-g", ft: 60 })
      .land("PB.bk@P", "Q1.OUT")
      .land("PB.wh@P", "P neutral.BAR")
      .land("PB.cu@P", "P ground.BAR")
      .land("PB.bk@B", "R2.H1")
      .splice("X", "B", "twist-small", "PB.wh@B", "PB.cu@B").project;
    const said = energise(asFound, supply, ON, {});
    expect(said.boxes[boxId("B")]?.splices[spliceId("X")]?.kind).toBe("neutral-and-ground");
  });

  test("F25: a neutral that a bad joint lifts shows its volts; a sound one has none worth a word", () => {
    const lifted = terminal(answer("F25"), "B", R2, "UN");
    expect(lifted).toMatchObject({ kind: "neutral", shows: true });
    // 8.6 A through 2 ohms and 85 ft of 14 AWG, about 2.5 ohms in 1000 ft.
    expect(Math.abs((lifted?.volts ?? 0) - 8.6 * (2 + 0.085 * 2.5))).toBeLessThan(0.5);
    expect(terminal(answer("F01"), "B", R2, "UH")).toMatchObject({ kind: "live", shows: true });
    expect(terminal(answer("F01"), "B", R2, "UN")?.kind).toBe("neutral");
    expect(terminal(answer("F01"), "B", R2, "UN")?.shows).toBeUndefined();
  });

  test("grounds on the neutral bar of a service panel are grounds", () => {
    const said = energise(
      physicsCircuit().land("PA.cu@P", "P neutral.BAR").project.asFound,
      { system: "120/240" },
      ON,
      {},
    );
    expect(end(said, "A", "PA", "cu", "b")?.kind).toBe("ground");
    expect(end(said, "A", "PA", "wh", "b")?.kind).toBe("neutral");
  });

  test("a switch in the neutral: on, the lamp's shell is neutral; off, it is live through the lamp", () => {
    expect(terminal(answer("F32"), "L", L1, "N")?.kind).toBe("neutral");
    const handle = answer("F32").operables.find(({ kind }) => kind === "switch");
    if (handle?.kind !== "switch") throw new Error("No switch.");
    const off = answer("F32", { positions: { [handle.handle]: 1 } });
    expect(terminal(off, "L", L1, "N")?.kind).toBe("through-load");
    expect(terminal(off, "L", L1, "H")?.kind).toBe("live");
  });

  test("a switch in the hot: what is past it is switched, and dead when it is off", () => {
    const circuit = drawing(2020, "switched lamp")
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q1", "P", { ratingA: 15 })
      .box("B", "plastic-new-2")
      .box("L", "plastic-ceiling")
      .device("S1", "switch-single-pole", "B")
      .device("L1", "luminaire-60", "L")
      .cable("PB", "P", "B", { item: "nm-14-2-g", ft: 60 })
      .cable("BL", "B", "L", { item: "nm-14-2-g", ft: 10 })
      .land("PB.bk@P", "Q1.OUT")
      .land("PB.wh@P", "P neutral.BAR")
      .land("PB.bk@B", "S1.C")
      .land("BL.bk@B", "S1.L")
      .splice("N", "B", "twist-small", "PB.wh@B", "BL.wh@B")
      .land("BL.bk@L", "L1.H")
      .land("BL.wh@L", "L1.N");
    const { asFound, supply } = circuit.project;
    const on = energise(asFound, supply, ON, {});
    expect(end(on, "B", "PB", "bk", "b")?.kind).toBe("live");
    expect(end(on, "L", "BL", "bk", "b")).toMatchObject({ kind: "switched", legs: ["A"] });
    const handle = on.operables.find(({ kind }) => kind === "switch");
    if (handle?.kind !== "switch") throw new Error("No switch.");
    expect(handle.positions).toEqual(["on", "off"]);
    const off = energise(asFound, supply, { ...ON, positions: { [handle.handle]: 1 } }, {});
    expect(["dead", "floating"]).toContain(end(off, "L", "BL", "bk", "b")?.kind);
  });

  test("F28: each hot is on its own leg, the open neutral is live through both loads", () => {
    const said = answer("F28");
    expect(end(said, "J", "M", "bk", "b")?.legs).toEqual(["A"]);
    expect(end(said, "J", "M", "rd", "b")?.legs).toEqual(["B"]);
    const white = end(said, "J", "M", "wh", "b");
    expect(white?.kind).toBe("through-load");
    expect(Math.abs((white?.volts ?? 0) - 108.4)).toBeLessThan(0.2);
  });
});

describe("meter and plug-in tester", () => {
  test("F01, lamp on: 119.8 V from hot to neutral at B", () => {
    const { meter } = answer("F01", {}, { meter: { from: at(R2, "UH"), to: at(R2, "UN") } });
    if (meter?.kind !== "volts") throw new Error("No volts.");
    expect(Math.abs(meter.volts - 119.8)).toBeLessThan(0.2);
    expect(meter.floating).toBe(false);
  });

  test("F12, lamp off: about 83 V that float", () => {
    const { meter } = answer("F12", OFF, { meter: { from: at(R2, "UH"), to: at(R2, "UN") } });
    if (meter?.kind !== "volts") throw new Error("No volts.");
    expect(Math.abs(meter.volts - 83)).toBeLessThan(1);
    expect(meter.floating).toBe(true);
  });

  test("with the breaker off it measures resistance: 240 ohm of the lamp, and open beside it", () => {
    const lamp = answer("F01", { off: [Q1] }, { meter: { from: at(L1, "H"), to: at(L1, "N") } }).meter;
    if (lamp?.kind !== "ohms") throw new Error("No resistance.");
    expect(Math.abs((lamp.ohm ?? 0) - 240)).toBeLessThan(3);
    const idle = answer("F12", { off: [Q1], ...OFF }, { meter: { from: at(R2, "UN"), to: at(R2, "UG") } }).meter;
    expect(idle).toEqual({ kind: "ohms", continuous: false });
  });

  test("F01 and F03 read correct; F11 with the lamp on reads hot/ground reversed, and says what else that may be", () => {
    const tested = (fault: PhysicsFault) => answer(fault, {}, { outlet: outletKey(R2) }).outlet?.tester;
    expect(tested("F01")?.title).toBe("correct");
    expect(tested("F03")?.title).toBe("correct");
    expect(tested("F03")?.mayBe.join()).toMatch(/not behind a ground-fault device/);
    expect(tested("F11")?.title).toBe("hot/ground reversed");
    expect(tested("F11")?.mayBe.join()).toMatch(/open neutral/);
  });
});

describe("TEST, leak, button", () => {
  const act = (fault: PhysicsFault, wanted: Act, operated: Partial<Operated> = {}) =>
    answer(fault, operated, { act: wanted });
  const TEST: Act = { kind: "own-test", device: R1 };
  const leak = (mA: number): Act => ({ kind: "leak", outlet: outletKey(R2), contact: "hot", mA });
  const PLUG: Act = { kind: "plug-in-button", outlet: outletKey(R2) };

  test("F01: TEST opens R1 at 8 mA; everything behind goes dark", () => {
    const said = act("F01", TEST);
    expect(said.opened.map((one) => names(one))).toEqual([["R1"]]);
    expect(said.act?.devices.map(({ residualMa }) => residualMa.toFixed(1))).toEqual(["8.0"]);
    expect(names(said.act?.wentDark ?? [])).toEqual(["L1", "R1", "R2"]);
    expect(said.act?.stayedOn).toEqual([]);
    expect(said.liveAfter).toEqual([]);
    expect(end(said, "A", "PA", "bk", "b")?.kind).toBe("live");
    expect(end(said, "B", "AB", "bk", "b")?.kind).toBe("dead");
  });

  test("F03: TEST opens R1, and what is not behind stays on", () => {
    const said = act("F03", TEST);
    expect(names(said.act?.wentDark ?? [])).toEqual(["R1"]);
    expect(names(said.act?.stayedOn ?? [])).toEqual(["L1", "R2"]);
    expect(names(said.liveAfter)).toEqual(["L1", "R2"]);
  });

  test("F05, lamp off: TEST opens R1; B has no volts across and 120 V to ground", () => {
    const said = act("F05", TEST, OFF);
    expect(said.act?.offButLive.map(({ name, contact, volts }) => `${name} ${contact} ${Math.round(volts)}`)).toEqual(
      expect.arrayContaining(["R2 hot 120"]),
    );
    expect(names(said.act?.wentDark ?? [])).not.toContain("R2");
  });

  test("F05, lamp on: R1 opens by itself, and the neutral of its dead face is live through the lamp", () => {
    const said = answer("F05");
    expect(said.opened.map((one) => names(one))).toEqual([["R1"]]);
    expect(said.opened[0]?.[0]?.why).toMatch(/498\.\d mA/);
    expect(terminal(said, "A", R1, "UN")).toMatchObject({ kind: "through-load" });
    expect(said.liveAfter.some(({ name, contact }) => name === "R1" && contact === "neutral")).toBe(true);
  });

  test("F11: neither TEST nor a leak opens a device without power", () => {
    for (const wanted of [TEST, leak(6.3)]) {
      const said = act("F11", wanted, OFF);
      expect(said.opened).toEqual([]);
      expect(said.act?.devices.map(({ trips }) => trips)).toEqual(["no"]);
      expect(said.act?.devices[0]?.why).toMatch(/no power/);
    }
  });

  test("F01: 6.3 mA from B open R1, 5 mA may, 3 mA do not", () => {
    expect(act("F01", leak(6.3), OFF).opened.flat()).toHaveLength(1);
    expect(act("F01", leak(5), OFF).opened).toEqual([]);
    expect(names(act("F01", leak(5), OFF).mayOpen)).toEqual(["R1"]);
    expect(act("F01", leak(3), OFF).opened).toEqual([]);
    expect(act("F01", leak(3), OFF).mayOpen).toEqual([]);
    expect(act("F03", leak(6.3), OFF).opened).toEqual([]);
  });

  test("F13: the button of a plug-in tester does not open R1, and brings metal to volts", () => {
    const said = act("F13", PLUG, OFF);
    expect(said.opened).toEqual([]);
    expect(names(said.act?.raised ?? [])).toContain("R2");
    expect(act("F01", PLUG, OFF).act?.raised).toEqual([]);
    expect(act("F01", PLUG, OFF).opened.flat()).toHaveLength(1);
  });

  test("F29: TEST of the second opens it alone; a leak behind both may open either first", () => {
    expect(names(act("F29", { kind: "own-test", device: R2 }, OFF).opened.flat())).toEqual(["R2"]);
    const said = act("F29", leak(6.3), OFF);
    expect(said.otherwise.join()).toMatch(/Either may be first/);
  });

  test("what cannot be done says why", () => {
    expect(act("F01", { kind: "own-test", device: L1 }).act?.impossible).toBe("It has no TEST.");
    expect(act("F01", leak(0)).act?.impossible).toMatch(/more than 0/);
    expect(act("F01", leak(Number.NaN)).act?.impossible).toMatch(/more than 0/);
  });

  test("a device that was tripped stays so, and says that its contacts are open when TEST is pressed again", () => {
    const said = act("F01", TEST, { tripped: [R1] });
    expect(said.opened).toEqual([]);
    expect(said.act?.devices[0]?.why).toMatch(/contacts are open/);
    expect(said.operables.find(({ device }) => device === R1)).toMatchObject({ stands: "tripped" });
  });
});

describe("two circuits of a panel", () => {
  /** Circuit 1: ground-fault receptacle R1, then R2. Circuit 2: R3, with its neutral joined to ground where `joined`. */
  const two = (joined: boolean) => {
    const circuit = physicsCircuit()
      .breaker("Q2", "P", { ratingA: 15 })
      .box("D", "plastic-new-2")
      .device("R3", "receptacle-15", "D")
      .cable("PD", "P", "D", { item: "nm-14-2-g", ft: 20 })
      .land("PD.bk@P", "Q2.OUT")
      .land("PD.wh@P", "P neutral.BAR")
      .land("PD.cu@P", "P ground.BAR")
      .land("PD.bk@D", "R3.H1")
      .land("PD.wh@D", "R3.N1");
    if (joined) circuit.land("PD.cu@D", "R3.N2");
    else circuit.land("PD.cu@D", "R3.G");
    const { asFound, supply } = circuit.project;
    return (ask: EnergiseAsk) => energise(asFound, supply, ON, ask);
  };
  const R3 = deviceId("R3");

  test("a fault in one is not said of the other", () => {
    const said = two(true)({});
    expect(terminal(said, "D", R3, "N1")?.kind).toBe("neutral-and-ground");
    expect(terminal(said, "B", R2, "N1")?.kind).toBe("neutral");
    expect(terminal(said, "B", R2, "G")?.kind).toBe("ground");
  });

  test("what TEST leaves on is told of its own circuit alone", () => {
    const said = two(false)({ act: { kind: "own-test", device: R1 } });
    expect(names(said.act?.stayedOn ?? [])).toEqual([]);
    expect(names(said.act?.wentDark ?? [])).toEqual(["L1", "R1", "R2"]);
    expect(names(said.liveAfter)).toEqual([]);
    expect(terminal(said, "D", R3, "UH")?.kind).toBe("live");
  });
});

describe("what is operated", () => {
  test("F26: a device that is fed on LOAD cannot be reset; its LOAD is live", () => {
    const said = answer("F26");
    expect(said.operables.find(({ device }) => device === R1)).toMatchObject({ stands: "cannot-be-reset" });
    expect(said.liveTerminals.map(({ name, terminal: node }) => `${name} ${node}`)).toContain("R1 LOAD_H");
  });

  test("breakers, devices and loads with what they do", () => {
    const { operables } = answer("F24");
    expect(operables.map(({ kind, name }) => `${kind} ${name}`)).toEqual([
      "breaker Q1",
      "ground-fault R1",
      "load Heater",
      "load L1",
    ]);
    const breaker = operables[0];
    expect(breaker?.kind === "breaker" && Math.abs((breaker.amps ?? 0) - 8.6) < 0.1).toBe(true);
  });

  test("names that are not drawn are passed over", () => {
    const gone = "nothing" as DeviceId;
    const said = answer(
      "F01",
      { off: [gone], tripped: [gone], idle: [gone], positions: { nothing: 1 } },
      {
        meter: { from: at(gone, "H"), to: at(R2, "UN") },
        outlet: outletKey(gone),
      },
    );
    expect([said.meter, said.outlet]).toEqual([undefined, undefined]);
    expect(end(said, "B", "AB", "bk", "b")?.kind).toBe("live");
  });

  test("a drawing of nothing gives nothing, and says so", () => {
    const { asFound, supply } = drawing(2020, "nothing").project;
    const said = energise(asFound, supply, ON, {});
    expect([said.boxes, said.operables]).toEqual([{}, []]);
    expect(said.assumptions.join()).toMatch(/everything is dead/);
  });
});

describe("RESET", () => {
  const RESET: Act = { kind: "reset", device: R1 };
  const OPEN: Partial<Operated> = { tripped: [R1] };
  /** With R1 of a generation. Which of them resets without power is said in `solver/circuit/reset.ts`. */
  const of = (reversal: "deny" | "deny-first" | "trips" | "legacy", operated: Partial<Operated>) => {
    const { asFound, supply } = physicsCircuit().project;
    const enclosures = Object.fromEntries(
      Object.entries(asFound.enclosures).map(([id, one]) => {
        const device = one.devices[R1];
        return [id, device ? { ...one, devices: { ...one.devices, [R1]: { ...device, reversal } } } : one];
      }),
    );
    return energise({ ...asFound, enclosures }, supply, { ...ON, ...operated }, { act: RESET });
  };

  test("with power it closes, and what is behind comes on", () => {
    const said = answer("F01", OPEN, { act: RESET });
    expect(said.act).toMatchObject({ holds: true, wentDark: [] });
    expect(names(said.act?.cameOn ?? [])).toEqual(["L1", "R1", "R2"]);
    expect(said.tripped).toEqual([]);
    expect(end(said, "B", "AB", "bk", "b")?.kind).toBe("live");
  });

  test.each(["deny", "deny-first"] as const)("without power a device that is made to %s stays open", (reversal) => {
    const said = of(reversal, { ...OPEN, off: [Q1] });
    expect(said.act).toMatchObject({ holds: false, cameOn: [] });
    expect(said.act?.devices[0]?.why).toMatch(/no power: 0\.0 V at its LINE, and RESET needs 70 V/);
    expect(said.tripped).toEqual([R1]);
    expect(said.operables.find(({ device }) => device === R1)).toMatchObject({ stands: "tripped" });
  });

  test.each(["trips", "legacy"] as const)("one of before 2006, made to %s, is a latch: it closes", (reversal) => {
    const said = of(reversal, { ...OPEN, off: [Q1] });
    expect(said.act).toMatchObject({ holds: true });
    expect(said.act?.devices[0]?.why).toMatch(/closes without power, and protects nothing/);
    expect(said.tripped).toEqual([]);
  });

  test("F11: the neutral before it is open, so that it does not reset", () => {
    const said = answer("F11", OPEN, { act: RESET });
    expect(said.act?.holds).toBe(false);
    expect(said.operables.find(({ device }) => device === R1)).toMatchObject({
      noReset: expect.stringMatching(/no power/),
    });
  });

  test("F20: a neutral joined to ground behind it opens it again", () => {
    const said = answer("F20", { ...OPEN, ...OFF }, { act: RESET });
    expect(said.act?.holds).toBe(false);
    expect(said.act?.devices[0]?.why).toMatch(/^It closes and opens again\./);
    expect(said.tripped).toEqual([R1]);
  });

  test("F26: fed on LOAD it stays open, and says so in the words of the solver", () => {
    const said = answer("F26", {}, { act: RESET });
    expect(said.act).toMatchObject({ holds: false });
    expect(said.act?.devices[0]?.why).toMatch(/fed on LOAD/);
    expect(said.operables.find(({ device }) => device === R1)).toMatchObject({
      stands: "cannot-be-reset",
      noReset: expect.stringMatching(/fed on LOAD: it cannot be reset/),
    });
  });

  test("what is set is left as it is", () => {
    const said = answer("F01", {}, { act: RESET });
    expect(said.act?.devices[0]?.why).toMatch(/nothing to reset/);
    expect(said.tripped).toEqual([]);
  });
});

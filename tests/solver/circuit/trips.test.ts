import { describe, expect, test } from "vitest";
import type { Circuit, OperatingSetting } from "../../../shared-model/solver/circuit/circuit.ts";
import { liveAfter, liveLoadTerminals } from "../../../shared-model/solver/circuit/live-after.ts";
import { leakAt, ownTestOf } from "../../../shared-model/solver/circuit/test-currents.ts";
import { tripStates } from "../../../shared-model/solver/circuit/trip-states.ts";
import { runTrips, type TripRun } from "../../../shared-model/solver/circuit/trips.ts";
import { drawing } from "../../builders/drawing.ts";
import { deviceId } from "../../builders/ids.ts";
import { type PhysicsFault, physicsCircuit } from "../../builders/physics-circuit.ts";
import { outletAt, outletsIn, readOutlet, stateOf } from "./measure.ts";
import { circuitOf } from "./solve.ts";

const [Q1, R1, R2] = [deviceId("Q1"), deviceId("R1"), deviceId("R2")];
const IDLE = { idle: new Set([deviceId("L1")]) };

const openedBy = ({ outcomes }: TripRun) => outcomes.map(({ opened }) => opened);

/** Two legs over one white: Q, a two-pole breaker of some kind, 60 ft to a 240 ohm lamp and an outlet on the other leg. */
function multiwire(type: string, neutralOn: "Q1.LOAD_N" | "P neutral.BAR") {
  return drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P", { ratingA: 15, type })
    .box("J")
    .device("M1", "luminaire-60", "J", { set: { leakMa: 0 } })
    .device("M2", "receptacle-15", "J")
    .cable("M", "P", "J", { item: "nm-14-3-g", ft: 60 })
    .land("M.bk@P", "Q1.OUT1")
    .land("M.rd@P", "Q1.OUT2")
    .land("M.wh@P", neutralOn)
    .land("M.cu@P", "P ground.BAR")
    .land("M.bk@J", "M1.H")
    .land("M.rd@J", "M2.H1")
    .land("M.wh@J", "M2.N1")
    .jumper("n", "J", "M2.N2", "M1.N", { awg: "14", colour: "white" })
    .land("M.cu@J", "M2.G").project;
}

describe("breakers", () => {
  test("a two-pole ground-fault breaker sums both legs and the neutral", () => {
    const right = multiwire("breaker-gfci-2", "Q1.LOAD_N");
    expect(stateOf(circuitOf(right), Q1).residualMa).toBeLessThan(0.2);
    const leak = leakAt(outletAt(right, "M2"));
    if (leak === undefined) throw new Error("No leak.");
    const run = runTrips(circuitOf(right, { added: [leak] }));
    expect(Math.abs((run.devices[0]?.residualMa ?? 0) - 6.31)).toBeLessThan(0.2);
    expect(openedBy(run)).toEqual([[[Q1]]]);
    // Both poles open.
    expect(readOutlet(run.outcomes[0]?.circuit as Circuit, outletAt(right, "M1")).hn.volts).toBeLessThan(0.1);
  });

  test("with its neutral on the bar it sees the whole load", () => {
    const { residualMa, trips } = stateOf(circuitOf(multiwire("breaker-gfci-2", "P neutral.BAR")), Q1);
    expect(residualMa).toBeGreaterThan(490);
    expect(trips).toBe("yes");
  });

  test("an arc-fault breaker opens for no leak of a person, and may for a large one", () => {
    const { project } = physicsCircuit("F30").set({ kind: "device", id: Q1 }, "function", "afci");
    const leak = (ohm: number) => [leakAt(outletAt(project, "R1"), "hot", ohm) ?? []].flat();
    expect(stateOf(circuitOf(project, { added: leak(19_000) }), Q1).trips).toBe("no");
    expect(stateOf(circuitOf(project, { added: leak(2000) }), Q1).trips).toBe("may");
  });

  test("an overload opens in its time, after a ground-fault device that is faster", () => {
    const heaters = (fault: PhysicsFault) =>
      ["H1", "H2", "H3"].reduce((house, name) => house.load(name, "heater-1200", "R2"), physicsCircuit(fault)).project;
    const { devices, breakers, outcomes } = runTrips(circuitOf(heaters("F04")));
    expect([devices[0]?.trips, breakers[0]?.trips]).toEqual(["yes", "yes"]);
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[R1]]]);
    expect(breakers[0]?.orFirst).toEqual([]);
    const sound = runTrips(circuitOf(heaters("F01")));
    expect(openedBy(sound)).toEqual([[[Q1]]]);
    expect(sound.breakers[0]?.why).toMatch(
      /^It carries 2\d\.\d A of its 15 A: it opens after \d+ s to \d min, as is typical\.$/,
    );
    const less = runTrips(
      circuitOf(physicsCircuit().load("H1", "heater-1200", "R2").load("H2", "heater-1200", "R2").project),
    );
    expect(less.breakers[0]?.trips).toBe("may");
    expect(openedBy(less)).toEqual([[]]);
  });
});

describe("what follows", () => {
  test("own TEST of each device opens that device alone", () => {
    const { project } = physicsCircuit("F29");
    for (const name of ["R1", "R2"]) {
      const own = ownTestOf(outletAt(project, name).device);
      if (own === undefined) throw new Error("No TEST.");
      expect(openedBy(runTrips(circuitOf(project, { added: [own] })))).toEqual([[[deviceId(name)]]]);
    }
    expect(ownTestOf(outletAt(physicsCircuit().project, "R2").device)).toBeUndefined();
  });

  test("two faults, one at each of two devices apart: both open, whichever is first", () => {
    const house = physicsCircuit()
      .breaker("Q2", "P", { ratingA: 15 })
      .box("C", "plastic-new-1")
      .device("R3", "gfci-receptacle-15", "C")
      .cable("PC", "P", "C", { item: "nm-14-2-g", ft: 30 })
      .land("PC.bk@P", "Q2.OUT")
      .land("PC.wh@P", "P neutral.BAR")
      .land("PC.cu@P", "P ground.BAR")
      .land("PC.bk@C", "R3.LINE_H")
      .land("PC.wh@C", "R3.LINE_N")
      .land("PC.cu@C", "R3.G").project;
    const added = ["R2", "R3"].flatMap((name) => leakAt(outletAt(house, name)) ?? []);
    const run = runTrips(circuitOf(house, { added }));
    expect(run.devices.map(({ orFirst }) => orFirst)).toEqual([[], []]);
    expect(run.outcomes.map(({ opened }) => opened.flat().sort())).toEqual([[R1, deviceId("R3")]]);
  });

  test("two faults, each seen by two devices: every device is the first in some way, and no fault is left", () => {
    const names = ["RA", "RB", "RC", "RD"] as const;
    const house = drawing().panel("P", "panel-16", { set: { mainBond: "here" } });
    for (const [index, name] of names.entries()) {
      const before = index % 2 === 0 ? "P" : `B${names[index - 1]}`;
      house.box(`B${name}`).device(name, "gfci-receptacle-15", `B${name}`);
      house.cable(`C${name}`, before, `B${name}`, { item: "nm-14-2-g", ft: 30 });
      const from =
        index % 2 === 0
          ? [`Q${name}.OUT`, "P neutral.BAR"]
          : [`${names[index - 1]}.LOAD_H`, `${names[index - 1]}.LOAD_N`];
      if (index % 2 === 0) house.breaker(`Q${name}`, "P", { ratingA: 15 });
      house.land(`C${name}.bk@${before}`, from[0] as string).land(`C${name}.wh@${before}`, from[1] as string);
      house.land(`C${name}.bk@B${name}`, `${name}.LINE_H`).land(`C${name}.wh@B${name}`, `${name}.LINE_N`);
    }
    const { project } = house;
    const added = ["RB", "RD"].flatMap((name) => leakAt(outletAt(project, name)) ?? []);
    const run = runTrips(circuitOf(project, { added }));
    expect(run.devices.map(({ trips, orFirst }) => [trips, orFirst.length])).toEqual(names.map(() => ["yes", 1]));
    expect(new Set(openedBy(run).map(([first]) => first?.length))).toEqual(new Set([2]));
    expect(new Set(openedBy(run).flat(2))).toEqual(new Set(names.map(deviceId)));
    for (const { circuit } of run.outcomes)
      expect(tripStates(circuit).devices.map(({ trips }) => trips)).toEqual(names.map(() => "no"));
  });

  test("a fault that goes on after the first trip opens the next device", () => {
    // Hot joined to ground at B, around the contacts of R1 as well: R1 opens, the fault current stays, the breaker opens.
    const both = physicsCircuit("F06").jumper("hg", "B", "R2.H1", "splice GB", { awg: "14" }).project;
    const run = runTrips(circuitOf(both));
    const all = run.outcomes.map(({ opened }) => opened.flat());
    expect(all.every((opened) => opened.includes(Q1))).toBe(true);
    for (const { circuit } of run.outcomes)
      expect(readOutlet(circuit, outletAt(both, "R2")).hn.volts).toBeLessThan(0.1);
  });

  const names = (run: TripRun, project: Parameters<typeof outletsIn>[0]) =>
    [...liveAfter(run, outletsIn(project)), ...liveLoadTerminals(run)].map(
      ({ place }) => `${place.device.replace("device-", "")}.${place.node}`,
    );

  test("a breaker that shares a load with another path carries all of it after the first trip, and opens then", () => {
    const heaters = ["H1", "H2", "H3"];
    const two = heaters.reduce((house, name) => house.load(name, "heater-1200", "R2"), physicsCircuit());
    two.breaker("Q2", "P", { ratingA: 15 }).set({ kind: "device", id: deviceId("Q2") }, "legs", ["A"]);
    two.cable("X", "P", "B", { item: "nm-14-2-g", ft: 85 });
    two.land("X.bk@P", "Q2.OUT").land("X.wh@P", "P neutral.BAR").land("X.bk@B", "R2.H1").land("X.wh@B", "R2.N1");
    const { devices, breakers, outcomes } = runTrips(circuitOf(two.project));
    expect(devices[0]?.trips).toBe("yes");
    expect(outcomes.map(({ opened }) => opened)).toEqual([[[R1], [deviceId("Q2")]]]);
    const [q1, q2] = breakers;
    expect(q1?.trips).toBe("no");
    expect(q2).toMatchObject({
      trips: "yes",
      why: expect.stringMatching(/^After another has opened: It carries 2\d\.\d A/),
    });
  });

  test("what stays live: nothing in F01; B in F03; B and the neutral of A in F05 and F06", () => {
    const live = (fault: PhysicsFault, setting: Partial<OperatingSetting> = {}) => {
      const { project } = physicsCircuit(fault);
      const own = ownTestOf(outletAt(project, "R1").device);
      const run = runTrips(circuitOf(project, { ...setting, added: own === undefined ? [] : [own] }));
      expect(run.outcomes.map(({ opened }) => opened)).toEqual([[[R1]]]);
      return names(run, project);
    };
    expect(live("F01")).toEqual([]);
    expect(live("F03")).toEqual(["R2.UH", "L1.H"]);
    const through = ["R1.UN", "R2.UH", "R2.UN", "L1.H", "L1.N"];
    expect(live("F05")).toEqual([...through, "R1.LOAD_N"]);
    expect(live("F06")).toEqual(["R1.UH", ...through, "R1.LOAD_H", "R1.LOAD_N"]);
    // What merely floats is not live: the metal of F15 has some 60 V on a meter of high impedance.
    const ungrounded = physicsCircuit("F15").project;
    const grounds = names(runTrips(circuitOf(ungrounded)), ungrounded).filter((name) => /G$/.test(name));
    expect(grounds).toEqual([]);
    expect(live("F05", IDLE)).toEqual(["R2.UH", "L1.H"]);
    expect(live("F06", IDLE)).toEqual(["R1.UH", "R2.UH", "L1.H", "R1.LOAD_H"]);
  });

  test("what is live without a trip: LOAD of a device that denies; the metal in F35", () => {
    const { project } = physicsCircuit("F26");
    expect(names(runTrips(circuitOf(project)), project)).toEqual(["R1.LOAD_H"]);
    const bootleg = physicsCircuit("F35").project;
    const contacts = liveAfter(runTrips(circuitOf(bootleg)), outletsIn(bootleg));
    expect(contacts.find(({ place, contact }) => place.device === R2 && contact === "ground")?.volts).toBeGreaterThan(
      119,
    );
    expect(names(runTrips(circuitOf(bootleg)), bootleg).filter((name) => /G$/.test(name))).toEqual(["R2.UG", "L1.G"]);
    const tested = runTrips(circuitOf(bootleg, { tripped: new Set([R1]) }));
    expect(names(tested, bootleg)).toEqual([]);
  });
});

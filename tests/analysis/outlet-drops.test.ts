/** What the window is told of voltage drop: figures, words, and what keeps it from being known. */
import { describe, expect, test } from "vitest";
import { allDrops, deviceDrops } from "../../shared-model/analysis/outlet-drops.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { OutletDropAnswer } from "../../shared-model/answers/outlet-drop.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { circuitOfSection } from "../../shared-model/solver/circuit/section-circuit.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { drawing, laundryAsFound } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";
import { boxId, cableId, deviceId } from "../builders/ids.ts";
import { physicsCircuit } from "../builders/physics-circuit.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const at = ({ project }: Drawing, device: string): OutletDropAnswer => {
  const [only, ...others] = deviceDrops(project, "as-found", deviceId(device));
  if (only === undefined || others.length > 0) throw new Error(`${device} has not one outlet.`);
  return only;
};
type Known = Extract<OutletDropAnswer, { readonly known: true }>;
const known = (drop: OutletDropAnswer): Known => {
  if (!drop.known) throw new Error(`Not known: ${drop.why}`);
  return drop;
};

/** Ohms of so many feet of 14 AWG there and back (2.5254 in 1000 ft), and of three contacts of a milliohm. */
const loop = (ft: number, contacts = 3): number => (2 * ft * 2.5254) / 1000 + contacts / 1000;

describe("the circuit of the table of faults: 60 ft to R1, 25 more to R2, 15 more to the lamp", () => {
  test("a receptacle: 80 % of 15 A and nothing else on", () => {
    const drop = known(at(physicsCircuit().load("Heater", "heater-1200", "R1"), "R2"));
    expect(Math.abs(drop.dropV - 12 * loop(85))).toBeLessThan(0.01);
    expect(Math.abs(drop.percent - (12 * loop(85)) / 1.2)).toBeLessThan(0.01);
    expect(drop).toMatchObject({
      isPast: true,
      limit: 3,
      load: "12 A (80 % of the 15 A of Q1) and nothing else on",
      longest: { id: cableId("PA"), words: "PA, 60 ft of 14 AWG" },
    });
    expect(drop.fromPanel).toBeUndefined();
  });

  test("what is wired in: everything drawn behind the breaker on, by name", () => {
    const drop = known(at(physicsCircuit().load("Heater", "heater-1200", "R2"), "L1"));
    // 12 ohm at B and 240 ohm at the lamp, behind 0.05 ohm of source: what flows to B, and on to the lamp.
    const lamp = 240 + loop(15, 0);
    const both = (12 * lamp) / (12 + lamp);
    const volts = (120 * both) / (both + 0.05 + loop(85));
    const lost = (volts / both) * loop(85) + (volts / lamp) * loop(15, 0);
    expect(Math.abs(drop.dropV - lost)).toBeLessThan(0.01);
    expect(drop.load).toBe("everything drawn behind Q1 on: Heater 1200 W and L1 60 W");
  });

  test("stated by the drawing: share of the breaker and limit", () => {
    const own = physicsCircuit()
      .set({ kind: "project" }, "statedLoadPercent", 50)
      .set({ kind: "project" }, "branchDropPercent", 4);
    const drop = known(at(own, "R2"));
    expect(Math.abs(drop.dropV - 7.5 * loop(85))).toBeLessThan(0.01);
    expect(drop).toMatchObject({ isPast: false, limit: 4, load: "7.5 A (50 % of the 15 A of Q1) and nothing else on" });
  });

  test("a joint that a person entered is named", () => {
    expect(known(at(physicsCircuit().setEnd("AB.bk@A", "jointOhm", 2), "R2")).joint).toBe(
      "the joint of AB BK in A, 2 Ω",
    );
    expect(known(at(physicsCircuit().setEnd("AB.bk@A", "jointOhm", 0.05), "R2")).joint).toBeUndefined();
  });
});

describe("what keeps it from being known", () => {
  test("lengths on the way, and only those", () => {
    const sheet = physicsCircuit()
      .set({ kind: "cable", id: cableId("AB") }, "lengthFt", null)
      .set({ kind: "cable", id: cableId("BL") }, "lengthFt", null);
    expect(at(sheet, "R1").known).toBe(true);
    expect(at(sheet, "R2")).toMatchObject({
      known: false,
      why: "no-length",
      cables: [{ id: cableId("AB"), name: "AB" }],
    });
    const lamp = at(sheet, "L1");
    expect(lamp.known || lamp.why !== "no-length" ? [] : lamp.cables.map(({ name }) => name).sort()).toEqual([
      "AB",
      "BL",
    ]);
  });

  test("no supply, no neutral, no rating, no such device", () => {
    expect(at(physicsCircuit("F09"), "R2")).toMatchObject({ known: false, why: "not-fed" });
    expect(at(physicsCircuit("F12"), "R2")).toMatchObject({ known: false, why: "not-fed" });
    const { project } = physicsCircuit();
    expect(deviceDrops(project, "as-found", deviceId("none"))).toEqual([]);
    expect(deviceDrops(project, "as-found", deviceId("Q1"))).toEqual([]);
    expect(deviceDrops(project, "proposed", deviceId("R2"))).toEqual([]);
    const unrated = structuredClone(project) as Project;
    const breaker = unrated.asFound.enclosures[boxId("P")]?.devices[deviceId("Q1")];
    delete (breaker as { breakerRatingA?: number }).breakerRatingA;
    expect(deviceDrops(unrated, "as-found", deviceId("R2"))).toMatchObject([
      { known: false, why: "no-rating", breaker: "Q1" },
    ]);
  });
});

/** A lamp between two three-way switches; with the travellers crossed it is dark as the switches are drawn. */
const stairs = (isCrossed: boolean): Drawing =>
  drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q", "P", { ratingA: 15 })
    .box("A")
    .box("B")
    .device("S1", "switch-3way", "A")
    .device("S2", "switch-3way", "B")
    .device("L", "luminaire-60", "B")
    .cable("PA", "P", "A", { item: "nm-14-2-g", ft: 30 })
    .cable("AB", "A", "B", { item: "nm-14-3-g", ft: 20 })
    .land("PA.bk@P", "Q.OUT")
    .land("PA.wh@P", "P neutral.BAR")
    .land("PA.bk@A", "S1.C")
    .splice("N", "A", "twist-small", "PA.wh@A", "AB.wh@A")
    .land("AB.bk@A", "S1.T1")
    .land("AB.rd@A", "S1.T2")
    .land("AB.bk@B", isCrossed ? "S2.T2" : "S2.T1")
    .land("AB.rd@B", isCrossed ? "S2.T1" : "S2.T2")
    .land("AB.wh@B", "L.N")
    .jumper("s", "B", "S2.C", "L.H", { awg: "14" });

test("a lamp that is dark as its switches are drawn is told as when it is on", () => {
  const [straight, crossed] = [false, true].map((isCrossed) => known(at(stairs(isCrossed), "L")));
  // Half a volt of 0.5 A over 50 ft there and back and half a foot of jumper.
  expect(Math.abs((straight?.dropV ?? 0) - (120 / 240.26) * loop(50.25))).toBeLessThan(0.002);
  expect(crossed?.dropV).toBeCloseTo(straight?.dropV ?? 0, 6);
});

test("every sample: one answer an outlet, numbers only", () => {
  for (const name of ["laundry-proposed", "house-twelve-circuits", "wrong-on-purpose", "kitchen-multiwire"] as const) {
    const project = openSample(name);
    const drops = allDrops(project, project.asFound);
    expect(new Set(drops.map(({ outlet }) => outlet)).size).toBe(drops.length);
    for (const drop of drops)
      if (drop.known) expect([drop.name, drop.percent >= 0 && drop.percent < 100]).toEqual([drop.name, true]);
  }
});

test("what the window tells is what the advice says", () => {
  const project = openSample("house-twelve-circuits");
  const past = allDrops(project, project.asFound).flatMap((drop) => (drop.known && drop.isPast ? [drop] : []));
  const advice = openSession(project)
    .report()
    .findings.filter(({ rule }) => rule === "voltage-drop-advice");
  expect(advice.map(({ numbers }) => Number(numbers.outlets)).reduce((sum, one) => sum + one, 0)).toBe(past.length);
  for (const { subjects, numbers } of advice)
    expect(Math.round((past.find(({ outlet }) => outlet === subjects[0]?.id)?.dropV ?? 0) * 10) / 10).toBe(
      numbers.dropV,
    );
});

test("the circuit of a section is made once, and again when its wiring, a load or the supply is another", () => {
  const sheet = physicsCircuit();
  const circuit = ({ project: { asFound, supply } }: Drawing) => {
    const section = sectionOf(asFound, boxId("A"));
    if (section === undefined) throw new Error("No section.");
    return circuitOfSection(section, supply);
  };
  const first = circuit(sheet);
  expect(circuit(sheet)).toBe(first);
  const elsewhere = physicsCircuit().box("Z");
  expect(circuit(elsewhere)).toBe(circuit(elsewhere.box("Y")));
  const longer = sheet.set({ kind: "cable", id: cableId("AB") }, "lengthFt", 30);
  const second = circuit(longer);
  expect(second).not.toBe(first);
  const third = circuit(longer.load("Heater", "heater-1200", "R2"));
  expect(third).not.toBe(second);
  expect(circuit(longer.set({ kind: "project" }, "supplyNominalV", 118))).not.toBe(third);
});

test("the laundry: R3 by hand, 95 ft of 12 AWG at 16 A", () => {
  const [drop] = deviceDrops(laundryAsFound(), "as-found", deviceId("R3"));
  expect(Math.abs((drop?.known ? drop.dropV : 0) - 16 * (2 * 0.0955 * 1.588 + 0.001))).toBeLessThan(0.05);
});

/**
 * The work instructions against the field procedure of the laundry job, which was written down before the program: hold
 * points HP1 to HP6, grounds before neutrals before hots, one conductor end an instruction, dead tests before power.
 */
import { describe, expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { ScopeAnswer, WorkStep } from "../../shared-model/answers/scope.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId, cableId, deviceId, drawing } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";

function answerOf(project: Project): ScopeAnswer {
  const answer = scopeAnswer(openSession(project));
  if (answer === undefined) throw new Error("Nothing is proposed.");
  return answer;
}

const inBox = (steps: readonly WorkStep[], name: string): readonly WorkStep[] =>
  steps.filter(({ box, stage }) => box?.name === name && stage >= 2 && stage <= 12);

describe("the laundry job", () => {
  const { steps, signOffs, cautions, labels, materials, removed } = answerOf(openSample("laundry-proposed"));
  const holds = steps.flatMap(({ hold, box }) => (hold === undefined ? [] : [`${hold} ${box?.name ?? ""}`.trim()]));

  test("six hold points at B1; at B4 with its single cable there is no supply to find", () => {
    expect(holds).toEqual([
      "HP1 B1",
      "HP2 B1",
      "HP3 B1",
      "HP4 B1",
      "HP1 B4",
      "HP2 B4",
      "HP4 B4",
      "HP5 B1",
      "HP5 B4",
      "HP6",
    ]);
    // Each is signed for itself, and so is the hand-over.
    expect(signOffs).toHaveLength(holds.length + 1);
  });

  test("numbers count up and every id is there once", () => {
    expect(steps.map(({ number }) => number)).toEqual(steps.map((_, index) => index + 1));
    expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
  });

  test("stages never go back inside a box, and power comes after all boxes are closed", () => {
    for (const name of ["B1", "B4"]) {
      const stages = inBox(steps, name).map(({ stage }) => stage);
      expect(stages).toEqual([...stages].sort((a, b) => a - b));
    }
    const at = (id: string): number => steps.findIndex((step) => step.id === id);
    expect(at("HP6")).toBeGreaterThan(Math.max(...steps.map(({ stage, number }) => (stage <= 12 ? number : 0))) - 1);
    expect(at("energise:device-Q14")).toBe(at("HP6") + 1);
    expect(at("isolate:device-Q14")).toBeLessThan(at("HP1:box-B1:device-Q14"));
  });

  test("grounds, then neutrals, then hots, LOAD before LINE; each joint is closed with its size", () => {
    const joins = steps.flatMap(({ kind, text }) => (kind === "join" ? [text] : []));
    expect(joins).toEqual([
      "Close E1 (Z as found): 5 × 12 AWG, twist-on, large. Tug each.",
      "Close E2: 4 × 12 AWG, twist-on, large. Tug each.",
      "Close ND: 3 × 12 AWG, twist-on, medium. Tug each.",
      "Close NL (Y as found): 4 × 12 AWG, twist-on, large. Tug each.",
      "Close HD: 3 × 12 AWG, twist-on, medium. Tug each.",
      "Close HL (X as found): 4 × 12 AWG, twist-on, large. Tug each.",
    ]);
  });

  test("one instruction is one conductor end: as many as there are moves", () => {
    const of = (kind: WorkStep["kind"], box: string): number =>
      steps.filter((step) => step.kind === kind && step.box?.name === box).length;
    expect([of("detach", "B1"), of("attach", "B1")]).toEqual([10, 16]);
    expect([of("detach", "B4"), of("attach", "B4")]).toEqual([3, 3]);
    for (const { kind, items } of steps)
      if (kind === "detach" || kind === "attach") expect(items.map((item) => item.kind)).toEqual(["end"]);
  });

  test("actual colours, names and terminals stand in the text", () => {
    const texts = steps.map(({ text }) => text);
    for (const text of [
      "Take R1 duplex receptacle out of B1, conductors still on it.",
      "Take C2 BK out of X.",
      "Take q WH off R1 N.",
      "Put C5 bare into E2.",
      "Land c BK on R1b LOAD H, brass.",
      "Land C3 WH on R4b LINE N, silver.",
      "Tighten every terminal of R1b to the torque marked on the device.",
      "B1: entries of C1 to C5: internal clamp out, external connector in.",
    ])
      expect(texts).toContain(text);
  });

  test("the fill line is printed: 29.8125 of 30.3, 0.4875 left", () => {
    const fill = steps.find(({ id }) => id === "fill:box-B1")?.details.join(" ");
    expect(fill).toMatch(/^Fill 29\.8125 of 30\.3 in³: .*, 0\.4875 left\.$/);
  });

  test("HP1 names every pair of metal in the box: three joints make three pairs, and the face", () => {
    const pairs = steps.find(({ hold }) => hold === "HP1")?.readings.map(({ what }) => what);
    expect(pairs).toHaveLength(4);
    for (const [one, other] of [
      ["X", "Y"],
      ["X", "Z"],
      ["Y", "Z"],
    ] as const)
      expect(pairs?.some((what) => what.includes(one) && what.includes(other))).toBe(true);
  });

  test("HP2: the clamp goes on every white of the joint that is opened, cables and pigtail", () => {
    const clamped = steps.find(({ id }) => id === "HP2:box-B1")?.readings;
    expect(clamped?.map(({ what, expect: words }) => `${what} ${words}`)).toEqual([
      "C1 WH 0 A",
      "C2 WH 0 A",
      "C3 WH 0 A",
      "C4 WH 0 A",
      "C5 WH 0 A",
      "q WH 0 A",
    ]);
  });

  test("HP4: what is on each side of the device; an unused LOAD stays taped", () => {
    const [first, second] = steps.filter(({ hold }) => hold === "HP4");
    expect(first?.details).toEqual([
      "R1b LINE H: a BK.",
      "R1b LINE N: b WH.",
      "R1b LOAD H: c BK.",
      "R1b LOAD N: d WH.",
    ]);
    expect(second?.details.slice(2)).toEqual([
      "R4b LOAD H: nothing, taped as shipped.",
      "R4b LOAD N: nothing, taped as shipped.",
    ]);
  });

  test("HP5: with the device tripped LOAD is open to LINE and to ground, by the drawing", () => {
    const dead = steps.find(({ id }) => id === "HP5:box-B1")?.readings ?? [];
    const open = dead.filter(({ expect: words }) => words === "open").map(({ what }) => what);
    expect(open).toEqual(["R1b LOAD H to LINE H", "R1b LOAD N to LINE N", "R1b LOAD N to G"]);
    expect(dead.find(({ what }) => what === "R1b LINE H to LINE N")?.expect).toMatch(/kilohms through electronics/);
  });

  test("three reset slips from the proof, no required label: grounds are there", () => {
    expect(labels.map(({ kind, on }) => `${kind} ${on.name}`)).toEqual([
      "reset-slip R2",
      "reset-slip R3",
      "reset-slip R5",
    ]);
    expect(labels[0]?.because).toBe("R2 is protected by R1b in B1, laundry.");
  });

  test("material: two devices, connectors by size, three pieces of wire, five cable connectors, three slips", () => {
    const of = (group: string): readonly string[] =>
      materials.filter((one) => one.group === group).map(({ quantity, what }) => `${quantity} ${what}`);
    expect(of("device")).toEqual(["2 GFCI receptacle, 15 A face"]);
    expect(of("connector")).toEqual([
      "3 twist-on connector, large",
      "2 twist-on connector, medium",
      "1 twist-on connector, large",
    ]);
    expect(of("conductor").map((line) => line.replace(/^1 conductor, /, ""))).toEqual([
      "12 AWG copper, solid, black, 6 to 8 in.",
      "12 AWG copper, solid, white, 6 to 8 in.",
      "12 AWG copper, solid, bare, 6 to 8 in.",
    ]);
    expect(of("fitting")).toContain("5 cable connector for 12/2");
    expect(of("label")[0]).toMatch(/^3 slip/);
    expect(removed.map(({ quantity, what }) => `${quantity} ${what}`)).toEqual([
      "2 Grounding duplex, 15 A",
      "1 internal clamps",
    ]);
  });

  test("the cautions of the work stand beside it", () => {
    expect(cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["WRK1", "WRK2", "WRK3", "WRK4", "WRK5", "WRK6", "WRK7", "WRK8"]),
    );
  });
});

describe("other boxes", () => {
  /** Two circuits in one box; the work is on one of them. */
  const twoCircuits = (sharedNeutral: boolean): Project => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q1", "P")
      .breaker("Q2", "P")
      .box("B1")
      .box("B2")
      .device("R1", "receptacle-15", "B1")
      .device("R2", "receptacle-15", "B2");
    house
      .set({ kind: "device", id: deviceId("Q1") }, "legs", ["A"])
      .set({ kind: "device", id: deviceId("Q2") }, "legs", ["B"]);
    if (sharedNeutral) {
      house.cable("C1", "P", "B1", { item: "nm-12-3-g", ft: 20 }).cable("C3", "B1", "B2", { ft: 20 });
      house.land("C1.bk@P", "Q1.OUT").land("C1.rd@P", "Q2.OUT").land("C1.wh@P", "P neutral.BAR");
      house
        .splice("N", "B1", "twist-large", "C1.wh@B1", "C3.wh@B1")
        .jumper("n", "B1", "splice N", "R1.N1", { colour: "white" });
      house.land("C1.bk@B1", "R1.H1").splice("H", "B1", "twist-medium", "C1.rd@B1", "C3.bk@B1");
    } else {
      house.cable("C1", "P", "B1", { ft: 20 }).cable("C2", "P", "B1", { ft: 20 }).cable("C3", "B1", "B2", { ft: 20 });
      house
        .land("C1.bk@P", "Q1.OUT")
        .land("C1.wh@P", "P neutral.BAR")
        .land("C2.bk@P", "Q2.OUT")
        .land("C2.wh@P", "P neutral.BAR");
      house.land("C1.bk@B1", "R1.H1").land("C1.wh@B1", "R1.N1");
      house
        .splice("H", "B1", "twist-medium", "C2.bk@B1", "C3.bk@B1")
        .splice("N", "B1", "twist-medium", "C2.wh@B1", "C3.wh@B1");
    }
    house.land("C3.bk@B2", "R2.H1").land("C3.wh@B2", "R2.N1");
    const plan = house.propose();
    plan.run("replace-device", {
      device: deviceId("R1"),
      id: deviceId("R1b"),
      type: "gfci-receptacle-15",
      name: "R1b",
    });
    return plan.project;
  };

  test("two circuits in a box: the dead test is done for each of them", () => {
    const { steps, breakers } = answerOf(twoCircuits(false));
    expect(breakers.map(({ name }) => name)).toEqual(["Q1", "Q2"]);
    expect(steps.filter(({ hold }) => hold === "HP1").map(({ text }) => text)).toEqual([
      "B1: verify dead with Q1 open.",
      "B1: verify dead with Q2 open.",
    ]);
    expect(breakers.every(({ multiwire }) => !multiwire)).toBe(true);
  });

  test("a multiwire circuit: both poles are opened together, with the word about shared neutrals", () => {
    const { steps, breakers } = answerOf(twoCircuits(true));
    expect(breakers).toMatchObject([
      { name: "Q1", multiwire: true, withPoles: [{ name: "Q2" }] },
      { name: "Q2", multiwire: true, withPoles: [{ name: "Q1" }] },
    ]);
    const open = steps.find(({ id }) => id === "isolate:device-Q1");
    expect(open?.text).toMatch(/together with Q2; lock and tag\.$/);
    expect(open?.cautions).toContain("WRK4");
  });

  test("what only passes through a box is opened too: another circuit, and the feeder of another panel", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .panel("P2", "panel-16")
      .breaker("Q1", "P")
      .breaker("Q2", "P")
      .breaker("Q3", "P")
      .box("B1")
      .box("B2")
      .device("R1", "receptacle-15", "B1")
      .device("R2", "receptacle-15", "B2");
    house.cable("C1", "P", "B1", { ft: 20 }).cable("C2", "P", "B2", { ft: 20 }).cable("C3", "P", "P2", { ft: 20 });
    house
      .land("C1.bk@P", "Q1.OUT")
      .land("C1.wh@P", "P neutral.BAR")
      .land("C1.bk@B1", "R1.H1")
      .land("C1.wh@B1", "R1.N1");
    house
      .land("C2.bk@P", "Q2.OUT")
      .land("C2.wh@P", "P neutral.BAR")
      .land("C2.bk@B2", "R2.H1")
      .land("C2.wh@B2", "R2.N1");
    house.land("C3.bk@P", "Q3.OUT").land("C3.wh@P", "P neutral.BAR");
    const through = (cable: string) =>
      house.run("add-pass-through", {
        enclosure: boxId("B1"),
        id: `pass-${cable}` as never,
        cable: cableId(cable),
        conductors: ["bk", "wh"] as never,
        entryIn: { newEntry: `in-${cable}`, means: "external-connector" } as never,
        entryOut: { newEntry: `out-${cable}`, means: "external-connector" } as never,
      });
    through("C2");
    through("C3");
    const plan = house.propose();
    plan.run("replace-device", {
      device: deviceId("R1"),
      id: deviceId("R1b"),
      type: "gfci-receptacle-15",
      name: "R1b",
    });
    const { steps, breakers } = answerOf(plan.project);
    expect(breakers.map(({ name }) => name)).toEqual(["Q1", "Q2", "Q3"]);
    expect(steps.filter(({ hold }) => hold === "HP1").map(({ text }) => text)).toEqual([
      "B1: verify dead with Q1 open.",
      "B1: verify dead with Q2 open.",
      "B1: verify dead with Q3 open.",
    ]);
    // No metal of it can be reached there.
    expect(steps.find(({ hold }) => hold === "HP1")?.details).toEqual(
      expect.arrayContaining([
        "C2 passes through without an end, so its metal cannot be reached here: prove it dead in P and B2, and do not nick it.",
      ]),
    );
  });

  test("what only passes through a panel is opened too", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .panel("P2", "panel-16")
      .breaker("Q1", "P")
      .breaker("Q2", "P")
      .breaker("Q3", "P2")
      .breaker("Q4", "P2")
      .box("B1")
      .box("B2")
      .device("R1", "receptacle-15", "B1")
      .device("R2", "receptacle-15", "B2");
    house.cable("C1", "P", "P2", { ft: 20 }).cable("C2", "P", "B2", { ft: 20 }).cable("C3", "P2", "B1", { ft: 20 });
    house.land("C1.bk@P", "Q1.OUT").land("C1.wh@P", "P neutral.BAR");
    house
      .land("C2.bk@P", "Q2.OUT")
      .land("C2.wh@P", "P neutral.BAR")
      .land("C2.bk@B2", "R2.H1")
      .land("C2.wh@B2", "R2.N1");
    house
      .land("C3.bk@P2", "Q3.OUT")
      .land("C3.wh@P2", "P2 neutral.BAR")
      .land("C3.bk@B1", "R1.H1")
      .land("C3.wh@B1", "R1.N1");
    house.run("add-pass-through", {
      enclosure: boxId("P2"),
      id: "pass-C2" as never,
      cable: cableId("C2"),
      conductors: ["bk", "wh"] as never,
      entryIn: { newEntry: "in-C2", means: "external-connector" } as never,
      entryOut: { newEntry: "out-C2", means: "external-connector" } as never,
    });
    const plan = house.propose();
    plan.land("C3.bk@P2", "Q4.OUT");
    const { boxes } = answerOf(plan.project);
    const panel = boxes.find(({ name }) => name === "P2");
    expect(panel?.breakers.map(({ name, panel: home }) => `${name} in ${home.name}`)).toEqual([
      "Q2 in P",
      "Q3 in P2",
      "Q4 in P2",
    ]);
  });

  test("labels for no ground are asked where the proof brings protection and no ground is there", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q", "P", { ratingA: 15 })
      .box("B1")
      .box("B2")
      .device("R1", "receptacle-two-slot", "B1")
      .device("R2", "receptacle-15", "B2");
    house.cable("C1", "P", "B1", { item: "nm-14-2" }).cable("C2", "B1", "B2", { item: "nm-14-2" });
    house.land("C1.bk@P", "Q.OUT").land("C1.wh@P", "P neutral.BAR").land("C1.bk@B1", "R1.H1").land("C1.wh@B1", "R1.N1");
    house.land("C2.bk@B1", "R1.H2").land("C2.wh@B1", "R1.N2").land("C2.bk@B2", "R2.H1").land("C2.wh@B2", "R2.N1");
    const plan = house.propose();
    plan.run("replace-device", {
      device: deviceId("R1"),
      id: deviceId("R1b"),
      type: "gfci-receptacle-15",
      name: "R1b",
    });
    plan.land("C2.bk@B1", "R1b.LOAD_H").land("C2.wh@B1", "R1b.LOAD_N");
    const { labels } = answerOf(plan.project);
    expect(labels.map(({ kind, on, wording }) => `${kind} ${on.name} ${wording}`)).toEqual([
      "required R1b No Equipment Ground",
      "required R2 GFCI Protected",
      "required R2 No Equipment Ground",
      "reset-slip R2 If it is dead, press RESET on R1b in B1",
    ]);
  });

  test("a ground-fault breaker is set again by its handle: neither steps nor slips speak of a RESET on it", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q", "P", { ratingA: 15 })
      .box("B1")
      .device("R1", "receptacle-15", "B1");
    house.cable("C1", "P", "B1", { item: "nm-14-2-g" });
    house.land("C1.bk@P", "Q.OUT").land("C1.wh@P", "P neutral.BAR").land("C1.cu@P", "P ground.BAR");
    house.land("C1.bk@B1", "R1.H1").land("C1.wh@B1", "R1.N1").land("C1.cu@B1", "R1.G");
    const plan = house.propose();
    plan.run("replace-device", { device: deviceId("Q"), id: deviceId("Qb"), type: "breaker-gfci-1", name: "Qb" });
    plan.land("C1.wh@P", "Qb.LOAD_N");
    plan.run("replace-device", { device: deviceId("R1"), id: deviceId("R1b"), type: "receptacle-tr-15", name: "R1b" });
    const { labels, steps } = answerOf(plan.project);
    const said = (test: string) => steps.filter((step) => step.test === test).map(({ text }) => text);
    expect(labels.map(({ wording }) => wording)).toEqual(["If it is dead, switch Qb in P off, then on"]);
    expect(said("CM4")).toEqual(["Lamps on, nothing running at receptacles: measure each outlet."]);
    expect(said("CM8")).toEqual(["Qb off, then on; a heater of 12 ohms at R1b in turn, everything else running."]);
    expect(said("CM9")).toEqual(["Unplug everything behind Qb, let the rest run, switch it off, then on."]);
    expect(said("CM10")).toEqual([
      "Button of a plug-in tester at R1b; after each, RESET what tripped, a breaker by its handle: off, then on.",
    ]);
  });

  test("a drawing whose proposed is as found has no work", () => {
    const { boxes, elsewhere, steps, materials, labels } = answerOf(
      new Drawing(openSample("laundry-box"), "as-found").propose().project,
    );
    expect([boxes, elsewhere, steps, materials, labels]).toEqual([[], [], [], [], []]);
  });

  test("before anything is proposed there is no scope", () =>
    expect(scopeAnswer(openSession(openSample("laundry-box")))).toBeUndefined());

  test("a white that is marked as hot is marked in the work, and tape is on the list", () => {
    const plan = new Drawing(openSample("laundry-box"), "as-found").propose();
    plan.setEnd("C4.wh@B5", "markedAs", "black");
    const { steps, materials, boxes } = answerOf(plan.project);
    expect(boxes[0]?.changes.find(({ kind }) => kind === "relabelled")?.item.name).toBe("C4 WH as BK");
    expect(steps.find(({ kind }) => kind === "mark")?.text).toBe(
      "Mark C4 WH as BK black with tape or paint at this end.",
    );
    expect(materials.map(({ what }) => what)).toContain("marking tape, black");
    expect(boxes[0]?.counts).toMatchObject({ detach: 0, attach: 0 });
    expect(boxes[0]?.enclosure).toBe(boxId("B5"));
  });
});

/** Switch loops, travellers, multiwire, mixed and odd conductors: what the trade does with each, told by the walk of the circuit. */
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { isSerious } from "../../shared-model/model/severity.ts";
import { USUAL_STYLE } from "../../shared-model/planning/joint-group.ts";
import { type MakeUpProposal, makeUp } from "../../shared-model/planning/make-up.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { boxId, cableId, deviceId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";
import { down, intent, workedBox } from "./worked-boxes.ts";

function made(project: Project, box: string, asked: MakeUpIntent): MakeUpProposal {
  const done = makeUp(project, "as-found", boxId(box), asked);
  if (!done.ok) throw new Error(`${done.refusal.code}: ${done.refusal.message}`);
  expect(invariantProblems(done.value.project)).toEqual([]);
  return done.value;
}

function refusal(project: Project, asked: MakeUpIntent, box = "BX"): string {
  const done = makeUp(project, "as-found", boxId(box), asked);
  return done.ok ? "made" : `${done.refusal.code} ${done.refusal.path ?? ""}: ${done.refusal.message}`;
}

function fed(): Drawing {
  const house = drawing(2020).room("Hall", "hallway").panel("P").breaker("Q", "P", { ratingA: 15 });
  return house;
}

const home = (house: Drawing, cable = "C1"): Drawing =>
  house.land(`${cable}.bk@P`, "Q.OUT").land(`${cable}.wh@P`, "P neutral.BAR").land(`${cable}.cu@P`, "P ground.BAR");

const boxed = (house: Drawing, name: string): Drawing =>
  house.box(name, "square-4-2-1-8", { room: "Hall", set: { internalClamps: "none" } });

const serious = (project: Project): readonly string[] =>
  openSession(project)
    .report("as-found")
    .findings.filter(isSerious)
    .map(({ rule }) => rule);

const roleOfLight = (project: Project, box: string, light: string): string | undefined =>
  sectionOf(project.asFound, boxId(box))
    ?.outlets()
    .find(({ outlet }) => outlet.device.id === deviceId(light))?.hot;

const connectors = ({ plan }: MakeUpProposal): readonly string[] =>
  plan.splices.map(({ word, connector, count }) => `${word} ${count} ${connector}`);

describe("switch loop", () => {
  const drawn = (): Project => {
    const house = boxed(boxed(fed(), "B1"), "B2")
      .device("L1", "luminaire-60", "B1")
      .device("S1", "switch-single-pole", "B2");
    house.cable("C1", "P", "B1", { item: "nm-14-2-g", ft: 20, means: "external-connector" });
    house.cable("C2", "B1", "B2", { item: "nm-14-2-g", ft: 10, means: "external-connector" });
    return home(house).project;
  };
  const light = {
    ...intent("C1"),
    loops: [{ cable: cableId("C2"), protect: false, feedsDevices: [deviceId("L1")], feedsCables: [] }],
  };
  const wall: MakeUpIntent = {
    ...intent("C2"),
    supply: { cable: cableId("C2"), as: "switch-loop", switch: deviceId("S1") },
  };

  test("white brings the feed and is marked at both ends, black is the return, the light is switched by it", () => {
    const first = made(drawn(), "B1", light);
    const both = made(first.project, "B2", wall).project;
    expect(roleOfLight(both, "B1", "L1")).toBe("switched");
    const marks = ["B1", "B2"].map((box) =>
      Object.entries(both.asFound.enclosures[boxId(box)]?.places ?? {})
        .filter(([, { markedAs }]) => markedAs !== undefined)
        .map(([end]) => end),
    );
    expect(marks).toEqual([["cable-C2.wh.a"], ["cable-C2.wh.b"]]);
    expect(first.plan.landings.map(({ group, landing }) => `${group.name} ${landing.kind}`)).toEqual([
      "HL splice",
      "NL direct",
      "SW direct",
      "E splice",
    ]);
    expect(serious(both).filter((rule) => rule !== "no-neutral-at-switch")).toEqual([]);
  });

  test("a ground-fault device where a loop comes in is refused: no neutral comes there", () => {
    const project = drawing().project;
    expect(project.asFound.enclosures).toEqual({});
    const house = boxed(fed(), "B2").device("G1", "gfci-receptacle-15", "B2").device("S1", "switch-single-pole", "B2");
    house.outside("C2", "B2", { item: "nm-14-2-g" });
    expect(refusal(house.project, wall, "B2")).toMatch(
      /^gfci-not-fed \/supply: G1 needs an unswitched hot and a neutral/,
    );
  });
});

describe("3-way and 4-way switches", () => {
  const drawn = (): Project => {
    const house = boxed(boxed(boxed(boxed(fed(), "B1"), "B2"), "B3"), "B4");
    house
      .device("S1", "switch-3way", "B1")
      .device("S2", "switch-4way", "B2")
      .device("S3", "switch-3way", "B3")
      .device("L1", "luminaire-60", "B4");
    house.cable("C1", "P", "B1", { item: "nm-14-2-g", ft: 20, means: "external-connector" });
    house.cable("C2", "B1", "B2", { item: "nm-14-3-g", ft: 10, means: "external-connector" });
    house.cable("C3", "B2", "B3", { item: "nm-14-3-g", ft: 10, means: "external-connector" });
    house.cable("C4", "B3", "B4", { item: "nm-14-2-g", ft: 10, means: "external-connector" });
    return home(house).project;
  };
  const travellers = (cable: string, by: string) => [{ cable: cableId(cable), switch: deviceId(by), protect: false }];
  const byTravellers = (cable: string, by: string): MakeUpIntent["supply"] => ({
    cable: cableId(cable),
    as: "travellers",
    switch: deviceId(by),
  });

  test("travellers pair to pair, the neutral passes on, and the light is switched from all three", () => {
    const one = made(drawn(), "B1", { ...intent("C1"), travellers: travellers("C2", "S1") });
    expect(one.groups.map(({ name, ends, ports }) => `${name} ${ends.length} ${ports.length}`)).toEqual([
      "HL 1 1",
      "NL 2 0",
      "T1 1 1",
      "T2 1 1",
      "E 2 2",
    ]);
    const two = made(one.project, "B2", {
      ...intent("C2"),
      supply: byTravellers("C2", "S2"),
      travellers: travellers("C3", "S2"),
    });
    const three = made(two.project, "B3", {
      ...intent("C3"),
      supply: byTravellers("C3", "S3"),
      switched: travellers("C4", "S3"),
    });
    const asked = { ...intent("C4"), devices: [{ device: deviceId("L1"), protect: false }] };
    const all = made(three.project, "B4", asked).project;
    expect(roleOfLight(all, "B4", "L1")).toBe("switched");
    expect(serious(all)).toEqual([]);
  });

  test("a 3-way switch whose travellers nobody names is refused", () => {
    const house = boxed(fed(), "BX")
      .device("S1", "switch-3way", "BX")
      .outside("C1", "BX", { item: "nm-14-2-g" })
      .outside("C2", "BX", { item: "nm-14-2-g" });
    const asked = { ...intent("C1"), switched: travellers("C2", "S1") };
    expect(refusal(house.project, asked)).toMatch(
      /^travellers-missing \/switched\/0\/switch: S1 is one of several switches/,
    );
  });
});

describe("multiwire", () => {
  const drawn = (): Project =>
    workedBox({
      in3: 42,
      supply: "nm-12-3-g",
      legs: { V2: { item: "nm-12-3-g" }, V3: { item: "nm-12-2-g" } },
      devices: { R1: "receptacle-20" },
      twoHots: true,
    });

  test("both legs go on, the neutral is one joint with a pigtail: nothing runs through the device", () => {
    const done = made(
      drawn(),
      "BX",
      intent("V1", { leg: "bk", downstream: [down("V2", false), down("V3", false, "rd")] }),
    );
    expect(done.groups.map(({ name, ends }) => `${name} ${ends.length}`)).toEqual(["HL 2", "H_rd 3", "NL 3", "E 3"]);
    expect(connectors(done)).toContain("NL 4 twist-large");
  });

  test("two holes of a clamp plate never carry its neutral, and may carry a hot", () => {
    const style = { ...USUAL_STYLE, bothHoles: true };
    const legs = { V2: { item: "nm-12-2-g" } };
    const project = workedBox({
      in3: 42,
      supply: "nm-12-3-g",
      legs,
      devices: { GD: "gfci-receptacle-20" },
      twoHots: true,
    });
    const done = made(project, "BX", intent("V1", { leg: "bk", downstream: [down("V2", false)], style }));
    const kinds = Object.fromEntries(done.plan.landings.map(({ group, landing }) => [group.name, landing.kind]));
    expect(kinds).toMatchObject({ HL: "direct", NL: "splice" });
  });

  test("a run on the other leg than the device cannot be protected by it", () => {
    const project = workedBox({
      in3: 42,
      supply: "nm-12-3-g",
      legs: { V2: { item: "nm-12-2-g" } },
      devices: { GD: "gfci-receptacle-20" },
      twoHots: true,
    });
    expect(refusal(project, intent("V1", { leg: "bk", downstream: [down("V2", true, "rd")] }))).toMatch(
      /^other-leg .*two-pole ground-fault breaker/,
    );
  });
});

describe("conductors", () => {
  test("aluminium goes into listed connectors, one to each, with copper to the device", () => {
    const project = workedBox({
      in3: 42,
      supply: "al-12-2-g",
      legs: { V2: { item: "al-12-2-g" } },
      ratingA: 15,
      devices: { R1: "receptacle-15" },
    });
    const done = made(project, "BX", intent("V1", { downstream: [down("V2", false)] }));
    expect(new Set(done.plan.splices.map(({ connector }) => connector))).toEqual(new Set(["al-cu-listed"]));
    expect(done.plan.splices.every(({ ends, count }) => ends.length === 1 && count <= 3)).toBe(true);
  });

  test("connectors at hand that take no joint are refused, and one that would is named", () => {
    const project = workedBox({ in3: 42, supply: "nm-12-2-g", legs: { V2: {} }, devices: { R1: "receptacle-20" } });
    const style = { ...USUAL_STYLE, connectors: ["twist-small"] };
    expect(refusal(project, intent("V1", { downstream: [down("V2", false)], style }))).toMatch(
      /^no-connector : No connector at hand takes the joint HL of BX: 12 AWG copper.*add twist-medium/,
    );
  });

  test("a connector of more ports takes in one what twist-ons take in two; without push-ins it is not used", () => {
    const project = workedBox({
      in3: 60,
      supply: "nm-12-2-g",
      legs: { V2: {}, V3: {}, V4: {}, V5: {} },
      devices: { R1: "receptacle-20" },
    });
    const asked = (noPushIn: boolean) =>
      intent("V1", {
        downstream: ["V2", "V3", "V4", "V5"].map((cable) => down(cable, false)),
        style: { ...USUAL_STYLE, noPushIn, connectors: ["twist-large", "push-in-8"] },
      });
    expect(connectors(made(project, "BX", asked(false)))).toEqual([
      "HL 6 push-in-8",
      "NL 6 push-in-8",
      "E 7 push-in-8",
    ]);
    expect(connectors(made(project, "BX", asked(true))).filter((one) => one.startsWith("HL"))).toEqual([
      "HL1 5 twist-large",
      "HL2 3 twist-large",
    ]);
  });

  test("a ground that leads on where none arrives is capped", () => {
    const project = workedBox({
      in3: 42,
      supply: "nm-12-2",
      legs: { V2: { item: "nm-12-2-g" } },
      devices: { GD: "gfci-receptacle-20" },
    });
    const done = made(project, "BX", intent("V1", { downstream: [down("V2", true)] }));
    expect(done.groups.map(({ name }) => name)).not.toContain("E");
    expect(done.project.asFound.enclosures[boxId("BX")]?.places["cable-V2.cu.a" as never]).toMatchObject({
      at: { kind: "capped" },
    });
  });
});

describe("what cannot be", () => {
  const project = workedBox({ in3: 42, supply: "nm-12-2-g", legs: { V2: {} }, devices: { SW: "switch-single-pole" } });
  test.each([
    ["a cable without a use", intent("V1"), /^cable-without-use : V2 enters BX/],
    ["a device without a use", intent("V1", { downstream: [down("V2", false)] }), /^device-without-use : SW is in BX/],
    [
      "protection without a device",
      intent("V1", { downstream: [down("V2", true)] }),
      /^no-ground-fault-device \/downstream\/0\/protect: .*Name one under "replace"/,
    ],
    ["a cable that is elsewhere", intent("V9"), /^cable-not-here \/supply\/cable: /],
    [
      "a cable with two uses",
      intent("V1", { downstream: [down("V2", false), down("V2", false)] }),
      /^cable-used-twice \/downstream\/1\/cable: V2 has a use already/,
    ],
  ] as const)("%s", (_name, asked, message) => {
    expect(refusal(project, asked)).toMatch(message);
  });

  test("what leaves an outlet without protection that the code asks for is not offered", () => {
    const bath = drawing(2020).room("Bath", "bathroom").panel("P").breaker("Q", "P");
    bath
      .box("BX", "square-4-2-1-8", { room: "Bath", set: { internalClamps: "none" } })
      .device("R1", "receptacle-20", "BX");
    bath.cable("C1", "P", "BX", { ft: 20, means: "external-connector" });
    home(bath);
    expect(refusal(bath.project, intent("C1"))).toMatch(
      /^introduces : It would bring a violation: R1 in BX .* needs ground-fault protection/,
    );
  });
});

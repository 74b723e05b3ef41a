/**
 * What keeps the person who does the work away from live parts. What is expected was worked out from trade practice: NFPA 70E
 * 120.5 and OSHA 29 CFR 1910.333(b), from memory, and NFPA 70 406.4(D)(2) for places without a ground.
 */
import { describe, expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { ScopeAnswer, WorkStep } from "../../shared-model/answers/scope.ts";
import { HOLDS } from "../../shared-model/planning/survey/survey-words.ts";
import { deviceId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

function answerOf({ project }: Pick<Drawing, "project">): ScopeAnswer {
  const answer = scopeAnswer(openSession(project));
  if (answer === undefined) throw new Error("Nothing is proposed.");
  return answer;
}

const texts = (steps: readonly WorkStep[]): readonly string[] => steps.map(({ text }) => text);
const replaced = (plan: Drawing, device: string, id: string, type: string): Drawing =>
  plan.run("replace-device", { device: deviceId(device), id: deviceId(id), type, name: id });

/** Breaker Q1 of a service panel, 12/2 to one receptacle. */
const oneCircuit = (): Drawing =>
  drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P")
    .breaker("Q2", "P")
    .box("B1", "plastic-new-1")
    .device("R1", "receptacle-20", "B1")
    .cable("C1", "P", "B1", { ft: 20, means: "external-connector" })
    .land("C1.bk@P", "Q1.OUT")
    .land("C1.wh@P", "P neutral.BAR")
    .land("C1.cu@P", "P ground.BAR")
    .land("C1.bk@B1", "R1.H1")
    .land("C1.wh@B1", "R1.N1")
    .land("C1.cu@B1", "R1.G");

describe("in a panel", () => {
  const exchanged = answerOf(
    replaced(oneCircuit().propose(), "Q1", "Q1b", "breaker-gfci-1").land("C1.wh@P", "Q1b.LOAD_N"),
  );

  test("what is ahead of it is opened before it is proved dead, and closed after the covers are on", () => {
    const all = texts(exchanged.steps);
    const at = (text: string): number => all.findIndex((one) => one.startsWith(text));
    expect(at("Open the main of P")).toBeGreaterThan(at("Open breaker Q1"));
    expect(at("Open the main of P")).toBeLessThan(at("P: verify dead with its main"));
    expect(at("Take the lock off and close the main of P")).toBeGreaterThan(at("Covers on P"));
    const dead = exchanged.steps.find(({ hold }) => hold === "HP1");
    expect(dead?.details.join(" ")).toMatch(/buses of a panel are live.*lugs ahead of the main/);
    expect(exchanged.steps[0]?.details.join(" ")).toContain("everything behind P");
  });

  test("no breaker is closed to prove the panel dead", () => {
    for (const { hold, details } of exchanged.steps)
      if (hold === "HP1") expect(details.join(" ")).not.toContain("in the other position");
  });

  test("a breaker that is not there yet is not opened, one that was taken out is not closed", () => {
    expect(exchanged.breakers.map(({ name }) => name)).toEqual(["Q1"]);
    expect(texts(exchanged.steps).filter((text) => /^Open breaker|close breaker/.test(text))).toEqual([
      "Open breaker Q1, 20 A, in P; lock and tag.",
      "Take the lock off and close breaker Q1b, 20 A, in P.",
    ]);
    expect(texts(exchanged.steps)).toContain("Put Q1b into its space in P.");
  });

  test("a ground-fault breaker is tested at what it feeds", () => {
    expect(exchanged.steps.flatMap(({ test: name, readings }) => (name === "CM6" ? readings : []))).toMatchObject([
      { what: "TEST on Q1b", expect: "R1 goes dark" },
    ]);
    expect(exchanged.steps.some(({ text }) => text.startsWith("Before the work, measure R1"))).toBe(true);
  });

  test("with the main open a freezer on another circuit stops too, and is not forgotten", () => {
    const house = oneCircuit()
      .box("B2", "plastic-new-1")
      .device("R2", "receptacle-20", "B2")
      .cable("C2", "P", "B2", { ft: 20, means: "external-connector" })
      .land("C2.bk@P", "Q2.OUT")
      .land("C2.wh@P", "P neutral.BAR")
      .land("C2.bk@B2", "R2.H1")
      .land("C2.wh@B2", "R2.N1")
      .load("Freezer", "freezer-180", "R2");
    const { steps } = answerOf(replaced(house.propose(), "Q1", "Q1b", "breaker-gfci-1").land("C1.wh@P", "Q1b.LOAD_N"));
    expect(steps[0]?.details).toContain("Must not be forgotten: Freezer.");
    const box = answerOf(replaced(house.propose(), "R1", "G1", "gfci-receptacle-20")).steps[0];
    expect(box?.details.join(" ")).not.toContain("Freezer");
  });

  test("nothing is energised with the panel open to find out which cable is which", () => {
    const plan = oneCircuit().outside("C2", "P").propose().land("C1.bk@P", "Q2.OUT");
    expect(answerOf(plan).steps.filter(({ hold }) => hold === "HP3")).toEqual([]);
  });

  test("a white that moves in a second panel: its own breaker is opened, and the one that feeds the panel", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .panel("P2", "panel-16", { set: { supply: "feeder", mainBond: "elsewhere" } })
      .device("lugs", "main-lugs", "P2")
      .breaker("F", "P", { type: "breaker-2", ratingA: 30 })
      .breaker("Q1", "P2")
      .box("B1")
      .device("R1", "receptacle-20", "B1")
      .cable("C", "P", "P2", { item: "nm-10-3-g", ft: 20 })
      .cable("C1", "P2", "B1", { ft: 20 })
      .land("C.bk@P", "F.OUT1")
      .land("C.rd@P", "F.OUT2")
      .land("C.wh@P", "P neutral.BAR")
      .land("C.cu@P", "P ground.BAR")
      .land("C.bk@P2", "lugs.L1")
      .land("C.rd@P2", "lugs.L2")
      .land("C.wh@P2", "lugs.N")
      .land("C.cu@P2", "P2 ground.BAR")
      .land("C1.bk@P2", "Q1.OUT")
      .land("C1.wh@P2", "P2 ground.BAR")
      .land("C1.bk@B1", "R1.H1")
      .land("C1.wh@B1", "R1.N1");
    const { breakers, steps } = answerOf(house.propose().land("C1.wh@P2", "P2 neutral.BAR"));
    expect(breakers.map(({ name, panel }) => `${name} in ${panel.name}`)).toEqual(["F in P", "Q1 in P2"]);
    // It is drawn what is ahead of it: there is no other main to look for.
    expect(texts(steps).some((text) => text.includes("Open the main"))).toBe(false);
  });
});

describe("a box without a ground", () => {
  const twoWire = drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P", { ratingA: 15 })
    .box("B1", "plastic-old-1")
    .device("R1", "receptacle-two-slot", "B1")
    .cable("C1", "P", "B1", { item: "nm-14-2", ft: 20, means: "external-connector" })
    .land("C1.bk@P", "Q1.OUT")
    .land("C1.wh@P", "P neutral.BAR")
    .land("C1.bk@B1", "R1.H1")
    .land("C1.wh@B1", "R1.N1");
  const { steps, cautions } = answerOf(replaced(twoWire.propose(), "R1", "G1", "gfci-receptacle-15"));

  test("is proved dead against a ground that is brought there, since an open neutral reads as dead", () => {
    const dead = steps.find(({ hold }) => hold === "HP1");
    expect(dead?.details.join(" ")).toContain("a ground that is known to be good");
    expect(dead?.readings.map(({ what }) => what)).toEqual([
      "R1, both halves: each slot to each other",
      "R1 H to R1 N",
      "R1 H to the ground brought here",
      "R1 N to the ground brought here",
    ]);
  });

  test("the button of a plug-in tester is left alone there, and the cautions of such a place are printed", () => {
    expect(steps.find(({ test: name }) => name === "CM4")?.details.join(" ")).toMatch(
      /^No ground comes to G1:.*not to be pressed/,
    );
    expect(cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["LIM3", "LIM4"]));
  });
});

describe("a box with a ground", () => {
  const { steps } = answerOf(replaced(oneCircuit().propose(), "R1", "G1", "gfci-receptacle-20"));

  test("needs none from elsewhere; its face is measured first", () => {
    const what = steps.find(({ hold }) => hold === "HP1")?.readings.map((reading) => reading.what) ?? [];
    expect(what[0]).toBe("R1, both halves: each slot to each other");
    expect(what.filter((one) => one.includes("brought here"))).toEqual([]);
    expect(steps.find(({ test: name }) => name === "CM4")?.details).toEqual([]);
  });

  test("off the device come hot, neutral, and the ground last", () => {
    const house = drawing()
      .panel("P", "panel-16", { set: { mainBond: "here" } })
      .breaker("Q1", "P")
      .box("B1", "plastic-new-1")
      .device("R1", "receptacle-20", "B1")
      .cable("C1", "P", "B1", { ft: 20, means: "external-connector" })
      .outside("C2", "B1", { means: "external-connector" })
      .land("C1.bk@P", "Q1.OUT")
      .land("C1.wh@P", "P neutral.BAR")
      .land("C1.cu@P", "P ground.BAR")
      .splice("H", "B1", "twist-medium", "C1.bk@B1", "C2.bk@B1")
      .splice("E", "B1", "twist-medium", "C1.cu@B1", "C2.cu@B1")
      .land("C1.wh@B1", "R1.N1")
      .jumper("a", "B1", "splice E", "R1.G", { colour: "bare" })
      .jumper("p", "B1", "splice H", "R1.H1");
    const { steps: work } = answerOf(replaced(house.propose(), "R1", "G1", "gfci-receptacle-20"));
    expect(work.filter(({ kind }) => kind === "detach").map(({ text }) => text)).toEqual([
      "Take p BK off R1 H.",
      "Take C1 WH off R1 N.",
      "Take a bare off R1 G.",
    ]);
  });

  test("terminals that are reached with the power on only with the device out are told as such", () =>
    expect(steps.find(({ test: name }) => name === "CM3")?.details.join(" ")).toMatch(/for qualified people/));
});

test("a switch in a box is still tried both ways", () => {
  const house = oneCircuit().device("S1", "switch-single-pole", "B1");
  const { steps } = answerOf(replaced(house.propose(), "R1", "G1", "gfci-receptacle-20"));
  expect(steps.find(({ hold }) => hold === "HP1")?.details).toContain("Once more with S1 in the other position.");
});

test("a neutral that is not white gets the clamp meter too: open wiring on knobs has one colour for both", () => {
  const house = drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("Q1", "P", { ratingA: 15 })
    .box("B1", "device-3-2-2-3-4")
    .device("R1", "receptacle-two-slot", "B1")
    .cable("K1", "P", "B1", { item: "knob-tube-14", ft: 20 })
    .cable("K2", "P", "B1", { item: "knob-tube-14", ft: 20 })
    .land("K1.bk@P", "Q1.OUT")
    .land("K2.bk@P", "P neutral.BAR")
    .land("K1.bk@B1", "R1.H1")
    .land("K2.bk@B1", "R1.N1");
  const { steps } = answerOf(replaced(house.propose(), "R1", "G1", "gfci-receptacle-15"));
  const clamp = steps.find(({ hold }) => hold === "HP2");
  expect(clamp?.readings.map(({ what, expect: words }) => `${what} ${words}`)).toEqual(["K2 BK 0 A"]);
  expect(clamp?.details).toEqual(["Not white, and a neutral by the drawing: K2 BK."]);
});

test("a fuse is taken out and kept, and put back of the same rating: it has no handle to lock", () => {
  const house = drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .breaker("F1", "P", { type: "fuse-1", ratingA: 15 })
    .box("B1")
    .device("R1", "receptacle-15", "B1")
    .cable("C1", "P", "B1", { item: "nm-14-2-g", ft: 20 })
    .land("C1.bk@P", "F1.OUT")
    .land("C1.wh@P", "P neutral.BAR")
    .land("C1.bk@B1", "R1.H1")
    .land("C1.wh@B1", "R1.N1");
  const { steps } = answerOf(replaced(house.propose(), "R1", "T1", "receptacle-tr-15"));
  expect(texts(steps)).toContain("Take out fuse F1, 15 A, in P; keep it with you and tag its place.");
  expect(texts(steps)).toContain("Put back fuse F1, 15 A, in P, of the same rating and no larger.");
});

test("whoever surveys a box or works by its card is told what to measure against where no ground comes", () => {
  expect(HOLDS.dead.words).toContain("where no ground comes to a known earth");
});

test("dead tests name what is wired in: a meter reads through a lamp that nobody can unplug", () => {
  const house = oneCircuit()
    .box("B2")
    .device("L1", "luminaire-60", "B2")
    .cable("C2", "B1", "B2", { ft: 10 })
    .land("C2.bk@B1", "R1.H2")
    .land("C2.wh@B1", "R1.N2")
    .land("C2.bk@B2", "L1.H")
    .land("C2.wh@B2", "L1.N");
  const { steps } = answerOf(replaced(house.propose(), "R1", "T1", "receptacle-tr-20"));
  expect(steps.find(({ hold }) => hold === "HP5")?.details.join(" ")).toContain(
    "Wired in, and read through by the meter: L1.",
  );
});

test("two screws with one label are told apart, so that no pair is named twice", () => {
  const house = oneCircuit()
    .box("B2", "plastic-new-1")
    .cable("C2", "B1", "B2", { ft: 10, means: "external-connector" });
  house.land("C2.bk@B1", "R1.H2").land("C2.wh@B1", "R1.N2");
  const { steps } = answerOf(replaced(house.propose(), "R1", "T1", "receptacle-tr-20"));
  const readings = steps.find(({ hold }) => hold === "HP1")?.readings ?? [];
  const whats = readings.map(({ what }) => what);
  expect(whats.filter((what) => /^C2 BK at R1 H to /.test(what))).not.toHaveLength(0);
  expect(new Set(whats).size).toBe(whats.length);
  expect(new Set(readings.map(({ id }) => id)).size).toBe(readings.length);
});

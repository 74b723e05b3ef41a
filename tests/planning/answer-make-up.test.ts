/** What is asked and told before a make-up is run: nothing is asked that the drawing knows, and what is told is what comes. */
import { describe, expect, test } from "vitest";
import type { FitAnswer, FitAsk, MadeUp, MakeUpAsk } from "../../shared-model/answers/make-up.ts";
import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { answerFit, answerMakeUp } from "../../shared-model/planning/answer-make-up.ts";
import { beyondCable } from "../../shared-model/planning/beyond-cable.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";
import { boxId, cableId, deviceId, drawing, outlet } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { workedBox } from "./worked-boxes.ts";

const made = ({ result }: Pick<FitAnswer, "result">): MadeUp => {
  if ("refused" in result) throw new Error(result.refused.message);
  return result.made;
};

const fitting = (project: Project, ask: FitAsk): FitAnswer => {
  const answer = answerFit(project, ask);
  if (answer === undefined) throw new Error("No such outlet.");
  return answer;
};

const makeUpOf = (project: Project, box: string, state: "as-found" | "proposed" = "as-found") => {
  const answer = answerMakeUp(project, { state, box: boxId(box) });
  if (answer === undefined) throw new Error("No such box.");
  return answer;
};

describe("the supply of a box", () => {
  test("is said to be a guess where nothing drawn or said tells it, and only there", () => {
    const seen = () => drawing(2020).box("B1").device("R1", "receptacle-15", "B1");
    const unknown = makeUpOf(seen().outside("C1", "B1").outside("C2", "B1").project, "B1");
    expect(unknown.supplyGuess).toBe(cableId("C1"));
    expect(unknown.intent.supply.cable).toBe(cableId("C1"));
    // One cable alone can only be the supply; a panel at the other end tells; so does what is live.
    expect(makeUpOf(seen().outside("C1", "B1").project, "B1").supplyGuess).toBeUndefined();
    const byPanel = makeUpOf(seen().panel("P").outside("C1", "B1").cable("C2", "P", "B1").project, "B1");
    expect(byPanel.supplyGuess).toBeUndefined();
    expect(byPanel.intent.supply.cable).toBe(cableId("C2"));
    expect(makeUpOf(openSample("laundry-box"), "B1").supplyGuess).toBeUndefined();
  });
});

test("a box that no cable enters has nothing to make up, and that is said", () => {
  const { result } = makeUpOf(drawing(2020).box("B1").device("R1", "receptacle-15", "B1").project, "B1");
  expect(result).toMatchObject({
    refused: { code: "cable-not-here", message: expect.stringMatching(/^No cable enters B1: there is nothing/) },
  });
});

describe("fitting at the laundry", () => {
  const sample = openSample("laundry-box");

  test("it asks cable by cable and not for the supply; each question says what the cable feeds and why it is so", () => {
    const { questions, types, result } = fitting(sample, { outlet: outlet("R1") });
    const said = questions.map(({ cables, feeds, side }) => [cables.map(({ name }) => name), feeds, side]);
    expect(said).toEqual([
      [["C2"], ["R2", "R3"], "LOAD"],
      [["C3"], ["R4"], "LINE"],
      [["C4"], ["L1"], "LINE"],
      [["C5"], ["R5"], "LOAD"],
    ]);
    expect(questions[1]?.why).toMatch(/the freezer at R4 would go off with the rest/);
    expect(questions[1]?.wanting).toEqual(["R4 (210.8(A))"]);
    expect(types.map(({ id }) => id)).toEqual(["gfci-receptacle-15", "dual-function-receptacle-15", "gfci-blank"]);
    expect("made" in result).toBe(true);
  });

  test("what is told is what comes: joints, moves, fill, protection", () => {
    const answered = [
      ["C2", true],
      ["C3", false],
      ["C4", false],
      ["C5", true],
    ] as const;
    const answer = fitting(sample, {
      outlet: outlet("R1"),
      decided: answered.map(([name, protect]) => [cableId(name), protect] as const),
    });
    const { groups, moves, fill, protection, replaced, call, jumpers } = made(answer);
    const sizes = groups.flatMap(({ splices }) => splices.map(({ word, count }) => [word, count]));
    expect(Object.fromEntries(sizes)).toEqual({ HL: 4, NL: 4, HD: 3, ND: 3, E1: 5, E2: 4 });
    expect(moves).toMatchObject({ detach: 10, attach: 16, newSplices: 3 });
    expect([fill.before.total, fill.after.total]).toEqual([320_625, 298_125]);
    // Two cable ends and the pigtail of each colour, both ends of the ground pigtail and that of the box; no name counts.
    expect(moves.ends.map(({ name, from, to }) => `${name}: ${from}, ${to}`).sort()).toEqual(
      [
        "C2 BK: X, HD",
        "C2 WH: Y, ND",
        "C5 BK: X, HD",
        "C5 WH: Y, ND",
        "C5 bare: Z, E2",
        "p BK: R1 H, R1b LINE H",
        "q WH: R1 N, R1b LINE N",
        "r bare: R1 G, R1b G",
        "r bare: Z, E2",
        "t bare: Z, E2",
      ].sort(),
    );
    expect(replaced).toEqual([{ old: "R1", by: "R1b" }]);
    expect(Object.fromEntries(protection.after.map(({ name, by }) => [name, by.join()]))).toEqual({
      R1b: "R1b",
      R2: "R1b",
      R3: "R1b",
      R4: "",
      R5: "R1b",
      L1: "",
    });
    const ran = runCommand(sample, call);
    if (!ran.ok) throw new Error(ran.refusal.message);
    const box = ran.project.proposed?.enclosures[boxId("B1")];
    expect(groups.flatMap(({ splices }) => splices.map(({ name }) => name)).sort()).toEqual([
      "E1",
      "E2",
      "HD",
      "HL",
      "ND",
      "NL",
    ]);
    expect(
      Object.values(box?.splices ?? {})
        .map(({ name }) => name)
        .sort(),
    ).toEqual(groups.flatMap(({ splices }) => splices.map(({ name }) => name)).sort());
    expect(jumpers).toHaveLength(Object.keys(box?.jumpers ?? {}).length);
    expect(answer.rooms[0]?.title).toMatch(/clamps of B1/);
    expect(answer.notOffered[0]?.title).toMatch(/^GFCI receptacle/);
  });

  test("a cable left on LINE on purpose is kept with name and reason, at the outlets beyond it that ask for protection", () => {
    const left = [{ cable: cableId("C3"), by: "Owner", reason: "the freezer must not go off unnoticed" }];
    const answer = fitting(sample, { outlet: outlet("R1"), decided: [[cableId("C3"), false]], left });
    const ran = runCommand(sample, made(answer).call);
    if (!ran.ok) throw new Error(ran.refusal.message);
    expect(ran.project.proposed?.intent.outlets[outlet("R4")]).toEqual({
      wish: "decided-not",
      by: "Owner",
      reason: "the freezer must not go off unnoticed",
    });
  });

  test("another way to make room can be taken instead of the least work", () => {
    const { rooms } = fitting(sample, { outlet: outlet("R1") });
    expect(rooms.length).toBeGreaterThan(1);
    const other = rooms[1]?.title ?? "";
    const answer = fitting(sample, { outlet: outlet("R1"), room: other });
    expect(answer.room).toContain(other);
    expect(answer.rooms.map(({ taken }) => taken)).toEqual(rooms.map((_, index) => index === 1));
    expect(made(answer).fill.after.verdict).toBe("fits");
  });

  test("where the type asked for will not do, one that was tried and does is named", () => {
    const answer = fitting(sample, { outlet: outlet("R1"), type: "gfci-receptacle-15" });
    expect(answer.result).toMatchObject({ refused: { code: "introduces" } });
    expect(answer.alternatives[0]).toMatchObject({ kind: "type", type: "dual-function-receptacle-15" });
  });

  test("a light cannot be one: receptacles of the circuit that can are named, the first on the way first", () => {
    const answer = fitting(sample, { outlet: outlet("L1") });
    expect(answer.result).toMatchObject({ refused: { code: "not-a-receptacle" } });
    const places = answer.alternatives.filter(({ kind }) => kind === "place");
    expect(places[0]).toMatchObject({
      outlet: outlet("R1"),
      title: expect.stringMatching(/^R1 in B1, protecting R1b, R2/),
    });
  });
});

describe("making up the laundry", () => {
  const sample = openSample("laundry-box");
  const asking = (ask: Partial<MakeUpAsk> = {}) => {
    const answer = answerMakeUp(sample, { state: "proposed", box: boxId("B1"), ...ask });
    if (answer === undefined) throw new Error("No such box.");
    return answer;
  };
  const withType = (type: string): MakeUpIntent => ({
    ...asking().intent,
    replace: [{ device: deviceId("R1"), type }],
  });

  test("the overfull box gets room in the ways that fitting a device offers, the least work first, each with its fill", () => {
    const { rooms, room, result } = asking();
    expect(rooms.map(({ title }) => title)).toEqual(
      fitting(sample, { outlet: outlet("R1") }).rooms.map(({ title }) => title),
    );
    // Five cables of two and a ground, a yoke, clamps: 32.0625 of 30.3; by hand, 2.25 less without clamps, 21.0 more with
    // an extension of 1-1/2 in., 42.0 the larger box of the kind (NFPA 70 table 314.16(A)).
    expect(rooms.map(({ fill }) => [toDecimal(fill.total), fill.available && toDecimal(fill.available)])).toEqual([
      [29.8125, 30.3],
      [32.0625, 51.3],
      [32.0625, 42],
    ]);
    expect(rooms.map(({ taken }) => taken)).toEqual([true, false, false]);
    expect(room).toBe(rooms[0]?.title);
    expect(made({ result }).fill.after.verdict).toBe("fits");
  });

  test("another way can be taken, or the box left as it is; the ways stay to be chosen from", () => {
    const [, extension] = asking().rooms;
    const taken = asking({ room: extension?.title ?? "" });
    expect(taken.room).toBe(extension?.title);
    expect(made(taken).fill.after.available).toBe(extension?.fill.available);
    const left = asking({ room: false });
    expect(left.room).toBeUndefined();
    expect(left.rooms.map((one) => one.taken)).toEqual([false, false, false]);
    expect(made(left).fill.after.verdict).toBe("overfull");
  });

  test("as found is a record: nothing is done to its box", () =>
    expect(asking({ state: "as-found" })).toMatchObject({ rooms: [] }));

  test("a plain device that leaves the arc-fault need open is refused in words, and the one that does is offered", () => {
    const plain = asking({ intent: withType("gfci-receptacle-15") });
    if (!("refused" in plain.result)) throw new Error("It was made.");
    expect(plain.result.refused.message).toMatch(/arc-fault list.*Choose a dual-function receptacle/);
    expect(plain.result.refused.message).not.toMatch(/replace-needs-afci/);
    expect(plain.result.refused.findings).toMatchObject([{ severity: "violation" }]);
    expect(plain.alternatives).toMatchObject([
      { device: deviceId("R1"), name: "R1", type: "dual-function-receptacle-15" },
    ]);
    // What still can be chosen of the room is not lost by a refusal.
    expect(plain.rooms).toHaveLength(3);
    const [other] = plain.alternatives;
    const taken = asking({ intent: withType(other?.type ?? "") });
    expect(made(taken).replaced).toMatchObject([{ old: "R1" }]);
    expect(taken.alternatives).toEqual([]);
  });
});

describe("what the drawing knows of a box", () => {
  test("laundry: supply and cables, and the make-up that is there takes no move", () => {
    const { intent, cables, result } = makeUpOf(openSample("laundry-proposed"), "B1", "proposed");
    expect(intent.supply).toEqual({ cable: "cable-C1", as: "feed" });
    expect(intent.downstream).toEqual([
      { cable: "cable-C2", protect: true },
      { cable: "cable-C3", protect: false },
      { cable: "cable-C4", protect: false },
      { cable: "cable-C5", protect: true },
    ]);
    expect(cables.find(({ name }) => name === "C2")).toMatchObject({ leadsTo: "B2", feeds: ["R2", "R3"] });
    expect(made({ result }).moves).toMatchObject({ detach: 0, attach: 0, newSplices: 0 });
  });

  test("a box whose ends are all capped: supply by the way to the panel, a light behind its switch", () => {
    const project = workedBox({
      in3: 30.3,
      supply: "nm-14-2-g",
      legs: { V2: {}, V3: { to: "light" } },
      ratingA: 15,
      devices: { GD: "gfci-receptacle-15", SW: "switch-single-pole" },
    });
    const { intent, result } = makeUpOf(project, "BX");
    expect(intent.supply).toEqual({ cable: "cable-V1", as: "feed" });
    expect(intent.switched).toMatchObject([{ cable: "cable-V3", switch: "device-SW" }]);
    expect(intent.downstream).toMatchObject([{ cable: "cable-V2" }]);
    expect(made({ result }).groups.map(({ name }) => name)).toContain("SW_SW");
  });

  test("what a cable leads to is followed away from the box and not back through it, round a ring", () => {
    const house = drawing(2020).panel("P");
    for (const name of ["B1", "B2", "B3"]) house.box(name);
    house.cable("C1", "P", "B1").cable("C2", "B1", "B2").cable("C3", "B2", "B3").cable("C4", "B3", "B1");
    const { asFound } = house.project;
    const into = cablesInto(asFound.cables, boxId("B1"));
    const beyond = (name: string) => {
      const one = into.find(({ cable }) => cable.name === name);
      if (one === undefined) throw new Error("No such cable.");
      const { boxes, panel } = beyondCable(asFound, one);
      return [boxes.map((box) => box.name), panel];
    };
    expect(beyond("C2")).toEqual([["B2", "B3"], undefined]);
    expect(beyond("C4")).toEqual([["B3", "B2"], undefined]);
    expect(beyond("C1")).toEqual([[], "P"]);
  });

  test("a switch loop is known by its lone switch, and in the box of the switch too", () => {
    const house = drawing(2020).room("Hall", "hallway").panel("P").breaker("Q", "P", { ratingA: 15 });
    for (const name of ["B1", "B2"])
      house.box(name, "square-4-2-1-8", { room: "Hall", set: { internalClamps: "none" } });
    house.device("L1", "luminaire-60", "B1").device("S1", "switch-single-pole", "B2");
    house.cable("C1", "P", "B1", { item: "nm-14-2-g", ft: 20, means: "external-connector" });
    house.cable("C2", "B1", "B2", { item: "nm-14-2-g", ft: 10, means: "external-connector" });
    house.land("C1.bk@P", "Q.OUT").land("C1.wh@P", "P neutral.BAR").land("C1.cu@P", "P ground.BAR");
    const light = makeUpOf(house.project, "B1");
    expect(light.intent.loops).toMatchObject([{ cable: "cable-C2", feedsDevices: ["device-L1"] }]);
    expect("made" in light.result).toBe(true);
    const behind = makeUpOf(house.project, "B2");
    expect(behind.intent.supply).toMatchObject({ cable: "cable-C2", as: "switch-loop", switch: "device-S1" });
  });
});

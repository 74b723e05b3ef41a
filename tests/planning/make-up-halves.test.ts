/** Split receptacles, fan-lights and double-pole switches: half by half and pole by pole, told by the walk of the circuit. */
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { DeviceUse, MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import type { Half } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { isSerious } from "../../shared-model/model/severity.ts";
import { answerMakeUp } from "../../shared-model/planning/answer-make-up.ts";
import { makeUp } from "../../shared-model/planning/make-up.ts";
import { readIntent } from "../../shared-model/planning/read-intent.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { boxId, cableId, deviceId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { intent, workedBox } from "./worked-boxes.ts";

const SPLIT = { kind: "device", id: deviceId("R") } as const;

function made(project: Project, asked: MakeUpIntent) {
  const done = makeUp(project, "as-found", boxId("BX"), asked);
  if (!done.ok) throw new Error(`${done.refusal.code}: ${done.refusal.message}`);
  expect(invariantProblems(done.value.project)).toEqual([]);
  const tried = openSession(project).tryCall("as-found", done.value.call);
  if (!tried.done) throw new Error(tried.refused);
  expect(tried.brings.introduces.filter(isSerious)).toEqual([]);
  return done.value;
}

const refusal = (project: Project, asked: MakeUpIntent): string => {
  const done = makeUp(project, "as-found", boxId("BX"), asked);
  return done.ok ? "made" : `${done.refusal.code}: ${done.refusal.message}`;
};

/** Role of the hot of every outlet of the box. */
const hots = (project: Project): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (sectionOf(project.asFound, boxId("BX"))?.outlets() ?? [])
      .filter(({ enclosure }) => enclosure.id === boxId("BX"))
      .map(({ outlet, hot, neutral }) => [outlet.name, `${hot}, ${neutral}`]),
  );

const half = (name: string, which: Half, more: Partial<DeviceUse> = {}): DeviceUse => ({
  device: deviceId(name),
  half: which,
  protect: false,
  ...more,
});

/** A box with a duplex whose hot tab is off, and what else is named. */
const splitBox = (more: Partial<Parameters<typeof workedBox>[0]> = {}, tabs = ["hotTab"]): Project => {
  const drawn = workedBox({
    in3: 42,
    supply: "nm-12-2-g",
    legs: {},
    ...more,
    devices: { R: "receptacle-tr-20", ...more.devices },
  });
  const house = new Drawing(drawn, "as-found");
  for (const tab of tabs) house.set(SPLIT, tab, "removed");
  return house.project;
};

describe("a split receptacle", () => {
  const switchedBox = () => splitBox({ devices: { SW: "switch-single-pole" } });

  test("one half always on, the other switched, on one neutral", () => {
    const asked = intent("V1", { devices: [half("R", "upper"), half("R", "lower", { switch: deviceId("SW") })] });
    const { project, groups } = made(switchedBox(), asked);
    expect(hots(project)).toEqual({ "R/upper": "ungrounded, grounded", "R/lower": "switched, grounded" });
    expect(groups.filter(({ role }) => role === "neutral").map(({ ports }) => ports.length)).toEqual([1]);
  });

  test("a half on each leg of a multiwire circuit, its neutral in a joint and not through the device", () => {
    const legs = intent("V1", { leg: "bk", devices: [half("R", "upper"), half("R", "lower", { leg: "rd" as never })] });
    const { project, groups } = made(splitBox({ supply: "nm-12-3-g", twoHots: true }), legs);
    expect(hots(project)).toEqual({ "R/upper": "ungrounded, grounded", "R/lower": "ungrounded, grounded" });
    expect(groups.map(({ name }) => name)).toEqual(expect.arrayContaining(["HL", "H_rd", "NL"]));
  });

  test("what it is on now is what it is meant to do: the half that is switched stays switched", () => {
    const asked = intent("V1", { devices: [half("R", "upper"), half("R", "lower", { switch: deviceId("SW") })] });
    const { project } = made(switchedBox(), asked);
    const again = answerMakeUp(project, { state: "as-found", box: boxId("BX") });
    expect(again?.intent.devices).toMatchObject([
      { device: "device-R", half: "upper" },
      { device: "device-R", half: "lower", switch: "device-SW" },
    ]);
    expect(again?.devices.find(({ name }) => name === "R")?.halves?.map(({ name }) => name)).toEqual([
      "R/upper",
      "R/lower",
    ]);
    expect(again?.result).toMatchObject({ made: { moves: { detach: 0, attach: 0, newSplices: 0 } } });
  });

  test("a half that nobody names is always on, as the other one of a whole is", () => {
    const asked = intent("V1", { devices: [half("R", "lower", { switch: deviceId("SW") })] });
    expect(hots(made(switchedBox(), asked).project)["R/upper"]).toBe("ungrounded, grounded");
  });

  test("halves go by their names in a file", () => {
    const project = switchedBox();
    const box = project.asFound.enclosures[boxId("BX")];
    if (box?.kind !== "box") throw new Error("No box.");
    const read = readIntent(
      { supply: "V1", devices: [{ device: "R/upper" }, { device: "R/lower", switch: "SW" }] },
      project.asFound,
      box,
    );
    expect(read).toMatchObject({
      ok: true,
      value: { devices: [{ half: "upper" }, { half: "lower", switch: "device-SW" }] },
    });
  });

  test("what the halves share must be the same for both, and a whole has none", () => {
    const guarded = splitBox({ devices: { GD: "gfci-receptacle-20" } });
    expect(
      refusal(guarded, intent("V1", { devices: [half("R", "upper", { protect: true }), half("R", "lower")] })),
    ).toMatch(/^halves-share: The halves of R share their neutral.*same side/);
    const cold = splitBox({ devices: { SW: "switch-single-pole" } }, ["neutralTab"]);
    expect(
      refusal(cold, intent("V1", { devices: [half("R", "upper"), half("R", "lower", { switch: deviceId("SW") })] })),
    ).toMatch(/^halves-share: The halves of R share their hot/);
    expect(refusal(splitBox({}, []), intent("V1", { devices: [half("R", "upper")] }))).toMatch(
      /^no-such-half: R is a whole/,
    );
    expect(refusal(splitBox(), intent("V1", { devices: [half("R", "upper"), half("R", "upper")] }))).toMatch(
      /^device-used-twice: R\/upper/,
    );
  });
});

describe("a fan-light", () => {
  const drawn = () =>
    workedBox({
      in3: 60,
      supply: "nm-14-2-g",
      ratingA: 15,
      legs: {},
      devices: { FL: "fan-light", S1: "switch-single-pole", S2: "switch-single-pole" },
    });

  test("fan and light by a switch each", () => {
    const asked = intent("V1", {
      devices: [half("FL", "upper", { switch: deviceId("S1") }), half("FL", "lower", { switch: deviceId("S2") })],
    });
    const { project, groups } = made(drawn(), asked);
    expect(hots(project)).toEqual({ "FL/upper": "switched, grounded", "FL/lower": "switched, grounded" });
    expect(groups.filter(({ name }) => name.startsWith("SW_"))).toHaveLength(2);
  });

  test("both by one switch, where no half is named", () => {
    const one = workedBox({
      in3: 60,
      supply: "nm-14-2-g",
      ratingA: 15,
      legs: {},
      devices: { FL: "fan-light", S1: "switch-single-pole" },
    });
    const asked = intent("V1", { devices: [{ device: deviceId("FL"), protect: false, switch: deviceId("S1") }] });
    expect(hots(made(one, asked).project)).toEqual({
      "FL/upper": "switched, grounded",
      "FL/lower": "switched, grounded",
    });
  });

  test("a half that is left out is asked for", () => {
    const asked = intent("V1", {
      devices: [half("FL", "upper", { switch: deviceId("S1") })],
    });
    expect(refusal(drawn(), asked)).toMatch(/^device-without-use: The intent does not say what feeds FL\/lower/);
  });
});

describe("a double-pole switch", () => {
  /** 240 V by two wires: the white is the second hot. */
  const drawn = (): Project => {
    const project = workedBox({
      in3: 42,
      supply: "nm-12-2-g",
      legs: { V2: { to: "nothing" } },
      devices: { DP: "switch-double-pole" },
      twoHots: false,
    });
    const house = new Drawing(project, "as-found");
    house.breaker("Q2", "P", { ratingA: 20 }).set({ kind: "device", id: deviceId("Q2") }, "legs", ["B"]);
    house.set({ kind: "device", id: deviceId("Q") }, "legs", ["A"]);
    house.set({ kind: "device", id: deviceId("Q2") }, "tiedTo", deviceId("Q"));
    house.land("V1.wh@P", "Q2.OUT").device("W", "appliance-240", "ZV2");
    house.land("V2.bk@ZV2", "W.L1").land("V2.wh@ZV2", "W.L2");
    house.jumper("gw", "ZV2", "capped", "W.G", { colour: "bare", awg: "12" });
    house.splice("EW", "ZV2", "twist-medium", "V2.cu@ZV2", "gw.a");
    house.jumper("bw", "ZV2", "splice EW", "bond", { colour: "bare", awg: "12" });
    return house.project;
  };
  const dp = [{ cable: cableId("V2"), switch: deviceId("DP"), protect: false }];
  const asked: MakeUpIntent = {
    ...intent("V1", { switched: dp }),
    supply: { cable: cableId("V1"), as: "two-hots" },
  };

  test("each hot over a pole of its own, whites marked as hots at both ends", () => {
    const { project, groups } = made(drawn(), asked);
    expect(groups.map(({ name }) => name)).toEqual(["HL", "H_wh", "SW_DP_1", "SW_DP_2", "E"]);
    const marks = Object.values(project.asFound.enclosures)
      .flatMap(({ places }) => Object.entries(places))
      .flatMap(([end, { markedAs }]) => (markedAs === undefined ? [] : `${end} ${markedAs}`));
    expect(marks.sort()).toEqual(["V1.wh.a", "V1.wh.b", "V2.wh.a", "V2.wh.b"].map((end) => `cable-${end} black`));
    const far = sectionOf(project.asFound, boxId("BX"))
      ?.outlets()
      .find(({ outlet }) => outlet.name === "W");
    expect([far?.hot, far?.neutral]).toEqual(["switched", "switched"]);
  });

  test("the drawing knows it: a double-pole switch on two wires, with one cable beyond", () => {
    const answer = answerMakeUp(drawn(), { state: "as-found", box: boxId("BX") });
    expect(answer?.intent).toMatchObject({ supply: { as: "two-hots" }, switched: dp });
    expect(answer?.result).toHaveProperty("made");
  });

  test("one hot is not enough, one-pole protection neither, each with what would do", () => {
    expect(refusal(drawn(), intent("V1", { switched: dp }))).toMatch(
      /^one-hot: DP opens two hots, and V1 has one.*single-pole/,
    );
    const guarded: MakeUpIntent = { ...asked, switched: dp.map((one) => ({ ...one, protect: true })) };
    expect(refusal(drawn(), guarded)).toMatch(/^no-ground-fault-device/);
  });
});

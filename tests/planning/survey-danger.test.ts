/**
 * What a survey must never do or take for granted: a join across a contact that may be closed, a test without its hold
 * points, a reading that cannot tell, a drawing taken for a reading. Resistances and voltages by hand.
 */
import { describe, expect, test } from "vitest";
import type { SurveyAnswer } from "../../shared-model/answers/survey.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { SurveyFacts } from "../../shared-model/model/survey.ts";
import { boxAtHand } from "../../shared-model/planning/survey/box-at-hand.ts";
import type { GivenReading } from "../../shared-model/planning/survey/survey-box.ts";
import { boxId, cableId, drawing } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { lightItem, ohms, outletItem, PLAIN_PRIORS, survey, triple, unknownBox, volts } from "./survey-bench.ts";

const offered = ({ next, others }: SurveyAnswer) => (next === undefined ? [] : [next, ...others]);
const joins = (answer: SurveyAnswer) => offered(answer).filter(({ key }) => key.startsWith("join "));
const dead = (...names: readonly string[]) => names.flatMap((name) => triple(name, [0, 0, 0]));
const LIVE = triple("C1", [120, 120, 0]);

describe("a cable that may be the loop of a switch is not joined before its wires were found apart", () => {
  const THREE = unknownBox(3);
  const groups = [[outletItem("R1")], [outletItem("R2")]];
  const answer = (...more: readonly GivenReading[]) =>
    survey(THREE, { groups }, [...LIVE, ...dead("C2", "C3"), ...more]);

  test("nobody measured: a switch elsewhere that is on would close a short", () => {
    const unread = answer();
    expect(joins(unread)).toEqual([]);
    const refusal = unread.refused.find(({ key }) => key === "join cable-C2");
    expect(refusal).toMatchObject({ because: "short", reason: expect.stringContaining("loop to a switch elsewhere") });
    expect(refusal?.reason).toContain("First measure ohms from hot to white of C2, dead");
    // 120 V over the ohms of both cables there and back and of the source: a few tenths.
    expect(Number(/some (\d+) A/.exec(refusal?.reason ?? "")?.[1])).toBeGreaterThan(100);
    expect(unread.next?.key).toBe("ohms");
  });

  test("open, or through a load, it is joined; about 0 it is not, whatever was read before", () => {
    expect(joins(answer(ohms("C2", "open"))).map(({ key }) => key)).toEqual(["join cable-C2"]);
    expect(joins(answer(ohms("C2", 18))).map(({ key }) => key)).toEqual(["join cable-C2"]);
    expect(joins(answer(ohms("C2", 0.2), ohms("C3", "open"))).map(({ key }) => key)).toEqual(["join cable-C3"]);
    expect(joins(answer(ohms("C2", "open"), ohms("C2", 0.2)))).toEqual([]);
  });

  test("about 0 is read again with the switches turned over: 0, open, 0 is a loop, and 0 each time may be a short", () => {
    const read = (...values: readonly (number | "open")[]) =>
      answer(ohms("C3", "open"), ...values.map((value) => ohms("C2", value)));
    const first = offered(read(0.2)).find(({ key }) => key === "again cable-C2");
    expect(first).toMatchObject({ exposure: "dead", powerCycles: 0, wanted: { tests: [{ kind: "pair" }] } });
    expect(first?.steps.map(({ words }) => words).join(" ")).toContain("Turn every switch over");
    expect(read(0.2, "open").cables[1]?.role).toBeUndefined();
    const loop = read(0.2, "open", 0.2);
    expect(loop.cables[1]?.role?.key).toBe("loop");
    expect(loop.notProved.join(" ")).not.toContain("may be a short");
    expect(read(0.2, 0.2).notProved.join(" ")).toContain("C2: about 0 ohms from hot to white each time");
  });

  test("travellers close onto either of two wires: of three, both hots are measured to the white", () => {
    const three = unknownBox(2, "nm-14-3-g");
    // The red of the supply hangs on nothing: a meter of low impedance shows none.
    const read = [...LIVE, volts("C1", "r", "w", 0), volts("C1", "b", "r", 0), ...dead("C2")];
    const more = [volts("C2", "r", "w", 0), volts("C2", "b", "r", 0)];
    const at = (...ohm: readonly GivenReading[]) =>
      survey(three, { groups: [[outletItem("R1")]] }, [...read, ...more, ...ohm]);
    const red = ohms("C2", "open", [], ["r", "w"]);
    expect(at().next?.wanted.tests).toHaveLength(2);
    expect(joins(at(ohms("C2", "open")))).toEqual([]);
    expect(joins(at(ohms("C2", "open"), red))).toHaveLength(1);
  });

  test("a feed by travellers is hot on one wire or the other: turned over it is no contradiction, and nothing is joined to it", () => {
    const three = unknownBox(2, "nm-14-3-g");
    const one = [...LIVE, volts("C1", "r", "w", 0), volts("C1", "b", "r", 0)];
    const other = [...triple("C1", [0, 0, 0]), volts("C1", "r", "w", 120), volts("C1", "b", "r", 0)];
    const plainly = survey(three, { groups: [[lightItem("L1")]] }, one);
    expect(plainly.cables[0]?.role?.key).toBe("supply");
    expect(plainly.notProved.join(" ")).toContain("It may be a traveller");
    const turned = survey(three, { groups: [[lightItem("L1")]] }, [
      ...[...one, ...other, ...dead("C2"), volts("C2", "r", "w", 0), volts("C2", "b", "r", 0)],
      ...[ohms("C2", "open"), ohms("C2", "open", [], ["r", "w"])],
    ]);
    expect(turned.contradiction).toBeUndefined();
    expect(turned.cables[0]?.role).toMatchObject({ kind: "switched-supply", travels: true });
    expect(joins(turned)).toEqual([]);
    // Two hots at once on different legs are none.
    const both = [...LIVE, volts("C1", "r", "w", 120), volts("C1", "b", "r", 240)];
    expect(survey(three, {}, both).cables[0]?.role?.key).toBe("multiwire-supply");
  });

  test("what hangs on the red of a cable that feeds does not speak against it", () => {
    const three = unknownBox(3, "nm-14-3-g");
    const red = (name: string, value: number | "open") => ohms(name, value, [], ["r", "w"]);
    const told = survey(three, { groups }, [
      ...[...LIVE, ...dead("C2", "C3"), ohms("C2", "open"), red("C2", 40), ohms("C3", "open"), red("C3", "open")],
    ]);
    expect(told.cables[1]?.may.map(({ role }) => role.key)).toEqual(expect.arrayContaining(["feeds 0", "feeds 1"]));
  });
});

describe("hold points and steps", () => {
  const groups = [[lightItem("L1", { switches: ["S1"] })], [outletItem("R1")]];
  const open = ["C1", "C2", "C3"].map((name) => ohms(name, "open", ["S1"]));
  const holds = (answer: SurveyAnswer) =>
    Object.fromEntries(
      offered(answer).map(({ key, steps }) => [key, steps.flatMap(({ hold }) => hold ?? []).join(" ")]),
    );

  test("every test begins dead, nothing is energised before everyone is clear, and the power is off again after", () => {
    expect(holds(survey(unknownBox(3), { groups }, []))).toMatchObject({ ohms: "HP1 HP2", volts: "HP1 HP2 HP6 HP3" });
    expect(holds(survey(unknownBox(3), { groups }, [...LIVE, ...dead("C2", "C3"), ...open]))).toMatchObject({
      "join cable-C2": "HP1 HP2 HP5 HP6 HP3",
    });
    const two = survey(unknownBox(3), {}, [...LIVE, ...triple("C2", [120, 120, 0]), ...dead("C3")]);
    expect(holds(two).breaker).toBe("HP1 HP2 HP6 HP3");
    const trap = survey(unknownBox(2), { switchesHere: 1 }, [...triple("C1", [120, 0, 120]), ...dead("C2")]);
    expect(holds(trap)).toMatchObject({ "look cable-C1": "HP1", "ground cable-C1": "HP1 HP2" });
    expect(holds(trap)["test-lamp cable-C1"]).toBe("HP1 HP2 HP6 HP3");
  });

  test("no step energises anything unless the step before it is the one that everyone is clear", () => {
    const answers = [
      survey(unknownBox(3), { groups }, []),
      survey(unknownBox(3), { groups }, [...LIVE, ...dead("C2", "C3"), ...open]),
      survey(unknownBox(2), { switchesHere: 1 }, [...triple("C1", [120, 0, 120]), ...dead("C2")]),
    ];
    for (const { steps } of answers.flatMap(offered)) {
      const on = steps.findIndex(({ arrangement }) => arrangement !== "A1");
      if (on >= 0) expect([steps[on - 1]?.hold, steps.at(-1)?.hold]).toEqual(["HP6", "HP3"]);
    }
  });

  test("switches elsewhere are on while volts are read: a feed through one that is off reads dead", () => {
    const { steps } = offered(survey(unknownBox(2), {}, [])).find(({ key }) => key === "volts") ?? { steps: [] };
    expect(steps.map(({ words }) => words).join(" ")).toContain("switches away from the box to on");
  });

  test("a supply with its hot on white is joined by what is hot, not by colour", () => {
    const reversed = [...triple("C1", [120, 0, 120]), ...dead("C2", "C3"), ...open];
    const look: GivenReading = {
      instrument: "by-eye",
      value: "no",
      survey: { arrangement: "A1", test: { kind: "look", cable: cableId("C1"), feedThere: false } },
    };
    const answer = survey(unknownBox(3), { groups }, [...reversed, look, look]);
    expect(answer.cables[0]?.role?.key).toBe("supply reversed");
    const words = joins(answer)[0]
      ?.steps.map((step) => step.words)
      .join(" ");
    expect(words).toContain("whose white is the hot: its white to their black, its black to their white");
  });

  test("the neutral of another circuit is warned of at every box, the weak meter where volts are read", () => {
    const ids = ({ cautions }: SurveyAnswer) => cautions.map(({ id }) => id);
    expect(ids(survey(unknownBox(2), {}, []))).toContain("WRK4");
    const live = survey(unknownBox(3), {}, open);
    expect(live.next?.key).toBe("volts");
    expect(ids(live)).toContain("WRK7");
  });
});

describe("readings that cannot tell are set aside", () => {
  const aside = (reading: GivenReading, project = unknownBox(2)) => survey(project, {}, [reading]).setAside[0]?.reason;

  test("volts between two wires by anything but a meter", () => {
    for (const instrument of ["plug-in-tester", "clamp-meter", "by-eye", "test-lamp"] as const)
      expect(aside(volts("C1", "b", "w", 0, instrument))).toContain("by a meter only");
    expect(aside(volts("C1", "b", "w", 0))).toBeUndefined();
  });

  test("nothing read with a breaker off; what is live all the same counts", () => {
    const off = (value: number): GivenReading => {
      const read = volts("C1", "b", "w", value);
      return { ...read, survey: { ...read.survey, off: ["device-Q1" as never] } };
    };
    expect(aside(off(0))).toContain("with a breaker off");
    expect(aside(off(120))).toBeUndefined();
  });

  test("a current in a white with the power on: every feed carries one", () => {
    const current = (arrangement: "A0" | "A1" | "A2"): GivenReading => ({
      instrument: "clamp-meter",
      value: "1.4",
      survey: { arrangement, test: { kind: "current", cable: cableId("C2"), conductor: "wh" as never } },
    });
    expect(aside(current("A0"))).toContain("With the power on");
    expect(aside(current("A2"))).toContain("With the power on");
    expect(aside(current("A1"))).toBeUndefined();
  });

  test("without a reference, a live cable that may be a loop says what would tell: prove one and read to ground", () => {
    const answer = survey(unknownBox(2, "nm-14-2"), {}, [volts("C1", "b", "w", 120), volts("C2", "b", "w", 0)]);
    expect(answer.refused.filter(({ because }) => because === "needs-reference")).toHaveLength(1);
  });

  test("to ground where one cable has none: the grounds of the others may hang on nothing", () => {
    const mixed = drawing().panel("P", "panel-16").box("B", "square-4-2-1-8");
    const { project } = mixed.outside("C1", "B", { item: "nm-14-2" }).outside("C2", "B", { item: "nm-12-2-g" });
    expect(aside(volts("C1", "b", "g", 0), project)).toContain("Not every cable here has a ground");
    const proved = survey(project, { referenceProved: "water pipe, 120 V to a known hot" }, [volts("C1", "b", "g", 0)]);
    expect(proved.setAside).toEqual([]);
  });
});

describe("what is drawn, and what a person knows", () => {
  const LAUNDRY = openSample("laundry-box");
  const B1 = boxId("B1");
  const plain = (facts: SurveyFacts, readings: readonly GivenReading[] = []) =>
    survey(LAUNDRY, facts, readings, PLAIN_PRIORS, "B1");
  const known = (leadsTo: "panel" | readonly string[], cable = "C1"): SurveyFacts => ({
    known: [{ cable: cableId(cable), leadsTo, how: "followed to it" }],
  });

  test("which cable is drawn where is no evidence: every cable is the supply with the same odds", () => {
    const answer = survey(LAUNDRY, {}, [], undefined, "B1");
    const odds = answer.cables.map(({ may }) => may.find(({ role }) => role.key === "supply")?.weight ?? 0);
    for (const one of odds) expect(one).toBeCloseTo(odds[0] ?? 0, 9);
  });

  test("that C1 comes from the panel leaves 4! of 5!, is named as told, and is read live all the same before a join", () => {
    const answer = plain(known("panel"));
    expect(answer).toMatchObject({ atStart: 120, left: 24 });
    expect(answer.known).toEqual([
      { cable: "cable-C1", words: "told, not measured: it comes from the panel (followed to it)" },
    ]);
    expect(answer.cables[0]).toMatchObject({ role: { key: "supply" }, isTold: true });
    expect(joins(answer)).toEqual([]);
    expect(offered(answer).some(({ key }) => key === "volts")).toBe(true);
    const read = plain(known("panel"), [...triple("C1", [122, 122, 0]), ...dead("C2", "C3", "C4", "C5")]);
    expect(read.cables[0]?.isTold).toBeUndefined();
    expect(joins(read).length).toBeGreaterThan(0);
  });

  test("that C3 leads to R4 leaves 4 × 3! = 24; a role that was only told is taken over as told", () => {
    const answer = plain(known(["device-R4"], "C3"));
    expect(answer.left).toBe(24);
    expect(answer.cables[2]?.role?.words).toBe("feeds R4");
    const calls = JSON.stringify(answer.takeOver?.call.args);
    expect(calls).toContain('"evidence":"told"');
    expect(calls).not.toContain('"evidence":"measured"');
    expect(answer.box.id).toBe(B1);
  });

  test("a reading against what was told is a contradiction, and what was told is among what to doubt", () => {
    const answer = plain(known("panel"), triple("C2", [122, 122, 0]));
    expect(answer.contradiction?.doubt.flat().join(" ")).toContain("told, not measured: it comes from the panel");
  });
});

describe("panels beyond", () => {
  const house = (supply: "service" | "feeder") => {
    const made = drawing()
      .panel("P", "panel-16")
      .panel("P2", "panel-16")
      .box("B", "square-4-2-1-8")
      .box("B2", "square-4-2-1-8");
    made.device("R1", "receptacle-15", "B2").cable("C1", "P", "B").cable("C2", "B", "P2").cable("C3", "P2", "B2");
    const { project } = made;
    const panel = project.asFound.enclosures[boxId("P2")];
    if (panel === undefined) throw new Error("There is no second panel.");
    const enclosures = { ...project.asFound.enclosures, [panel.id]: { ...panel, supply } };
    return { ...project, asFound: { ...project.asFound, enclosures } } as typeof project;
  };
  const drawnTo = (project: ReturnType<typeof house>) => {
    const box = project.asFound.enclosures[boxId("B")];
    return boxAtHand(project.asFound, box as Box, {}).cables.map((cable) => cable.drawnTo);
  };

  test("one with a feeder that is fed through the box is a load with what hangs on it", () => {
    expect(drawnTo(house("feeder"))).toEqual(["panel", 0]);
    expect(drawnTo(house("service"))).toEqual(["panel", "panel"]);
  });
});

describe("at most ten", () => {
  const refusal = (project: ReturnType<typeof unknownBox>, facts: SurveyFacts): string => {
    try {
      survey(project, facts, []);
      return "";
    } catch (error) {
      return error instanceof Error ? error.message : "";
    }
  };
  const many = (count: number) => Array.from({ length: count }, (_, index) => [outletItem(`R${index}`)]);

  test("cables and groups are taken apart, an eleventh is refused with what to do", () => {
    expect(refusal(unknownBox(10), { groups: many(10) })).toBe("");
    expect(refusal(unknownBox(11), {})).toMatch(/^11 cables enter B; at most 10 are taken apart\. /);
    expect(refusal(unknownBox(3), { groups: many(11) })).toMatch(
      /^11 outlets and lights .* at most 10 .*List as one group/,
    );
  });

  test("a hundred switches here cost no more than one a cable", () => {
    expect(survey(unknownBox(10), { switchesHere: 100, groups: many(2) }, []).left).toBeGreaterThan(0);
  });
});

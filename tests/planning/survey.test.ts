/**
 * The survey of cables against counts made by hand (entropies of k!, of which cable is which), the trade's table of what
 * readings mean, and the traps that shorts come from.
 */
import { describe, expect, test } from "vitest";
import type { SurveyAnswer } from "../../shared-model/answers/survey.ts";
import type { SurveyFacts } from "../../shared-model/model/survey.ts";
import type { GivenReading } from "../../shared-model/planning/survey/survey-box.ts";
import { cableId } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { lightItem, ohms, outletItem, PLAIN_PRIORS, survey, triple, unknownBox, volts, works } from "./survey-bench.ts";

const LAUNDRY = openSample("laundry-box");
const LIT: SurveyFacts = { lamps: [{ item: "device-L1", lamp: "filament" }] };
const SUPPLY = triple("C1", [122, 122, 0]);
const DEAD = ["C2", "C3", "C4", "C5"].flatMap((name) => triple(name, [0, 0, 0]));
const ON = ["device-S1"];
const items = (...names: readonly string[]) => names.map((name) => `device-${name}`);

const plain = (readings: readonly GivenReading[], facts = LIT) => survey(LAUNDRY, facts, readings, PLAIN_PRIORS, "B1");
const offered = ({ next, others }: SurveyAnswer) => (next === undefined ? [] : [next, ...others]);
const bitsOf = (answer: SurveyAnswer, words: RegExp) =>
  offered(answer).find((one) => words.test(one.words))?.bits ?? Number.NaN;
const roles = ({ cables }: SurveyAnswer) => cables.map(({ role }) => role?.words);
const may = ({ cables }: SurveyAnswer, at: number) => cables[at]?.may.map(({ role }) => role.key).sort();

describe("the five cables of the laundry box", () => {
  test("there are 5 × 4! = 120 arrangements; one energisation tells which of five, log2 5 bits", () => {
    const start = plain([]);
    expect(start).toMatchObject({ atStart: 120, left: 120, itemsFrom: "drawing", settled: false });
    expect(start.bits).toBeCloseTo(Math.log2(120), 4);
    expect(bitsOf(start, /^Energise once/)).toBeCloseTo(Math.log2(5), 4);
  });

  test("one cable read of five tells the entropy of 1 in 5, and that it is live leaves 4! = 24", () => {
    // H(1/5) = 0.722, of which only a reading of one cable is left to offer once the others were read.
    const four = ["C2", "C3", "C4"].flatMap((name) => triple(name, [0, 0, 0]));
    expect(bitsOf(plain(four), /^Energise once/)).toBeCloseTo(1, 4);
    const live = plain([...SUPPLY, ...DEAD]);
    expect(live).toMatchObject({ left: 24 });
    expect(live.bits).toBeCloseTo(Math.log2(24), 4);
    expect(live.rejected).toContainEqual(
      expect.objectContaining({
        cable: "cable-C3",
        reason: "C3 cannot be supply: 0 V black to white by low-impedance meter in A2.",
      }),
    );
  });

  test("the supply known, one cable joined tells 2 bits of four, two at once log2 6", () => {
    const answer = plain([...SUPPLY, ...DEAD]);
    expect(bitsOf(answer, /^Join C2 to/)).toBeCloseTo(2, 4);
    expect(bitsOf(answer, /^Join C2 and C3 to/)).toBeCloseTo(Math.log2(6), 4);
  });

  const FIRST = works(["C1", "C2", "C4"], items("R2", "R3", "L1"), ON);
  const SECOND = works(["C1", "C2", "C3"], items("R2", "R3", "R4"), ON);

  test("with both pairs known, one of each at once tells 2 bits and settles", () => {
    const pairs = plain([...SUPPLY, ...DEAD, FIRST]);
    expect(pairs).toMatchObject({ left: 4 });
    expect(bitsOf(pairs, /^Join C2 and C3 to/)).toBeCloseTo(2, 4);
    const done = plain([...SUPPLY, ...DEAD, FIRST, SECOND]);
    expect(roles(done)).toEqual(["supply", "feeds R2 and R3", "feeds R4", "feeds L1", "feeds R5"]);
    expect(done).toMatchObject({ left: 1, settled: true, mismatches: [] });
    expect(done.next).toBeUndefined();
  });

  test("the worked run with nothing taken for granted: a cold filament favours C4, the joins settle four, the last is tested too", () => {
    const real = (readings: readonly GivenReading[]) => survey(LAUNDRY, {}, readings, undefined, "B1");
    const cold = ["C2", "C3", "C5"].map((name) => ohms(name, "open", ON)).concat(ohms("C4", 18, ON));
    const lamp = real([...SUPPLY, ...DEAD, ...cold]);
    expect(lamp.left).toBe(24);
    const light = lamp.cables[3]?.may.find(({ role }) => role.words === "feeds L1")?.weight ?? 0;
    // A resistive load left plugged in could imitate it: 0.85 by hand.
    expect(Math.abs(light - 0.85)).toBeLessThan(0.02);
    expect(lamp.notProved.join(" ")).toContain("open reading proves nothing");
    const joined = real([...SUPPLY, ...DEAD, ...cold, FIRST, SECOND]);
    expect(roles(joined).slice(0, 4)).toEqual(["supply", "feeds R2 and R3", "feeds R4", "feeds L1"]);
    expect(joined.next?.words).toMatch(/^Join C5 to the supply C1/);
    const last = real([...SUPPLY, ...DEAD, ...cold, FIRST, SECOND, works(["C1", "C5"], items("R5"), ON)]);
    expect(last).toMatchObject({ settled: true, mismatches: [] });
    expect(last.notProved).toContain(
      "R2 and R3 hang on one cable; which of them comes first is proved only by opening a box between them.",
    );
  });

  test("both joins pass through dead and apart, and every step that must hold says so", () => {
    const { next } = plain([...SUPPLY, ...DEAD, ...DEAD.map(() => ohms("C2", "open", ON)).slice(0, 1)]);
    const join = offered(plain([...SUPPLY, ...DEAD])).find(({ words }) => words.startsWith("Join"));
    expect(next).toBeDefined();
    expect(join?.steps.map(({ arrangement, hold = false }) => `${arrangement}${hold ? "!" : ""}`)).toEqual([
      ...["A1!", "A1!", "A1", "A1", "A1", "A1!", "A1!", "A3", "A3", "A1!"],
    ]);
    expect(join?.steps.flatMap(({ hold }) => hold ?? [])).toEqual(["HP1", "HP2", "HP5", "HP6", "HP3"]);
    expect(join).toMatchObject({ exposure: "outlet", powerCycles: 1, wanted: { arrangement: "A3" } });
    // Minutes, 5 for the cycle, 20 for the exposure.
    for (const { cost, minutes, powerCycles, exposure } of offered(plain([])))
      expect(cost).toBe(minutes + 5 * powerCycles + 20 * ["dead", "outlet", "open-box-live"].indexOf(exposure));
  });

  test("what is measured otherwise than drawn is said, and its far end is not taken over", () => {
    const swapped = works(["C1", "C2"], items("R4"), ON);
    const answer = plain([...SUPPLY, ...DEAD, swapped]);
    expect(answer.mismatches).toEqual([
      { cable: "cable-C2", words: "C2 is drawn to R2 and R3; measured, it feeds R4." },
    ]);
    const marks = JSON.stringify(answer.takeOver?.call.args);
    expect(marks).toContain('"id":"cable-C1"');
    expect(marks).not.toContain('{"kind":"cable","id":"cable-C2"}');
  });
});

describe("three cables and a switch here", () => {
  const THREE = unknownBox(3);
  const facts = { switchesHere: 1 };

  test("which is the supply and which the leg: 6 arrangements; one cable 0.92 bits, all three 1.58", () => {
    const start = survey(THREE, facts, [], PLAIN_PRIORS);
    expect(start).toMatchObject({ atStart: 6, left: 6 });
    expect(start.bits).toBeCloseTo(Math.log2(6), 4);
    expect(bitsOf(start, /^Energise once/)).toBeCloseTo(Math.log2(3), 4);
  });

  test("two left: joining one tells the last bit", () => {
    const read = [...SUPPLY, ...triple("C2", [0, 0, 0]), ...triple("C3", [0, 0, 0])];
    const two = survey(THREE, facts, read, PLAIN_PRIORS);
    expect(two.left).toBe(2);
    expect(bitsOf(two, /^Join C2 to/)).toBeCloseTo(1, 4);
    const lit = survey(THREE, facts, [...read, works(["C1", "C3"], ["light"])], PLAIN_PRIORS);
    expect(lit.cables.map(({ role }) => role?.kind)).toEqual(["supply", "feeds", "leg"]);
  });
});

describe("what readings of a two-wire cable mean, all apart and energised", () => {
  const ONE = unknownBox(1);
  const facts = { switchesHere: 1 };
  const keys = (readings: readonly GivenReading[]) => may(survey(ONE, facts, readings), 0);

  test.each([
    ["120 / 120 / 0: a supply as it should be", [120, 120, 0], ["supply"]],
    ["120 / 0 / 120: reversed, or a loop through a filament lamp", [120, 0, 120], ["loop-fed", "supply reversed"]],
    ["111 / 0 / 120: a meter of 3 kilohms does not tell them apart", [111, 0, 120], ["loop-fed", "supply reversed"]],
    ["5 / 0 / 120: a loop through an LED lamp", [5, 0, 120], ["loop-fed"]],
    [
      "0 / 120 / 120: the neutral broken with a load on, or two hots of one leg",
      [0, 120, 120],
      ["multiwire-supply reversed", "supply open-neutral"],
    ],
    ["0 / 120 / 0: the neutral broken with nothing on", [0, 120, 0], ["supply open-neutral"]],
    ["240 / 120 / 120: two hots, white as the second", [240, 120, 120], ["multiwire-supply reversed"]],
  ] as const)("%s", (_, read, expected) => {
    expect(keys(triple("C1", read))).toEqual(expected);
  });

  test("0 / 0 / 0 is not a supply that is live, and nothing more", () => {
    const answer = survey(unknownBox(2), {}, [...triple("C1", [0, 0, 0]), ...triple("C2", [120, 120, 0])]);
    expect(may(answer, 0)).toEqual(["dead", "feeds", "loop"]);
    expect(answer.cables[1]?.role?.key).toBe("supply");
  });

  test("both capacitive voltages on a high-impedance meter settle nothing", () => {
    const high = triple("C1", [40, 70, 60], "meter");
    const answer = survey(unknownBox(2), {}, high);
    expect(may(answer, 0)).toContain("supply");
    expect(answer.rejected).toEqual([]);
    expect(answer.notProved.join(" ")).toContain("C1: read by a high-impedance meter only");
    expect(answer.cautions.map(({ id }) => id)).toContain("WRK7");
    const low = survey(unknownBox(2), {}, [...high, ...triple("C1", [0, 0, 0])]);
    expect(may(low, 0)).not.toContain("supply");
  });

  test("however often it is read, a high-impedance meter never rules anything out", () => {
    const often = Array.from({ length: 30 }, () => triple("C1", [120, 120, 0], "meter")).flat();
    const answer = survey(unknownBox(2), {}, often);
    expect(answer.rejected).toEqual([]);
    expect(answer.settled).toBe(false);
  });

  test("a noncontact indicator does not count", () => {
    const hint: GivenReading = { ...volts("C1", "b", "g", 120), instrument: "noncontact" };
    const answer = survey(unknownBox(2), {}, [hint]);
    expect(answer.setAside).toEqual([expect.objectContaining({ index: 0, reason: expect.stringContaining("hint") })]);
  });
});

describe("reversed supply or white-fed loop", () => {
  const TWO = unknownBox(2);
  const facts: SurveyFacts = { switchesHere: 1 };
  const trap = [...triple("C1", [120, 0, 120]), ...triple("C2", [0, 0, 0])];
  const keys = (more: readonly GivenReading[]) => may(survey(TWO, facts, [...trap, ...more]), 0);
  const testLamp = (value: number, lightGlows: boolean): GivenReading => ({
    instrument: "test-lamp",
    value: String(value),
    survey: { arrangement: "A2", test: { kind: "test-lamp", cable: cableId("C1"), lightGlows } },
  });
  const look = (feedThere: boolean): GivenReading => ({
    instrument: "by-eye",
    value: feedThere ? "yes" : "no",
    survey: { arrangement: "A1", test: { kind: "look", cable: cableId("C1"), feedThere } },
  });

  test("a switch across the pair is refused with the amperes of the short, and no test offered puts one there", () => {
    const answer = survey(TWO, facts, trap);
    const refusal = answer.refused.find(({ key }) => key === "switch cable-C1");
    expect(refusal).toMatchObject({ because: "short", reason: expect.stringMatching(/reversed|white/) });
    const amps = Number(/some (\d+) A/.exec(refusal?.reason ?? "")?.[1]);
    expect(amps).toBeGreaterThan(100);
    expect(offered(answer).every(({ wanted }) => wanted.arrangement !== "A4")).toBe(true);
    expect(offered(answer)[0]?.exposure).toBe("dead");
  });

  test("a dead look is preferred to a test lamp, and either tells a bit at most", () => {
    const keysInOrder = offered(survey(TWO, facts, trap)).map(({ key }) => key);
    expect(keysInOrder).toEqual(expect.arrayContaining(["look cable-C1", "test-lamp cable-C1", "ground cable-C1"]));
    expect(keysInOrder.indexOf("look cable-C1")).toBeLessThan(keysInOrder.indexOf("test-lamp cable-C1"));
  });

  test("two lamps in series share the voltage: 60 V and a glow is the loop, full brightness the supply", () => {
    expect(keys([testLamp(60, true)])).toEqual(["loop-fed"]);
    expect(keys([testLamp(45, true)])).toEqual(["loop-fed"]);
    expect(keys([testLamp(78, true)])).toEqual(["loop-fed"]);
    expect(keys([testLamp(119, false)])).toEqual(["supply reversed"]);
  });

  test("a look does what it says, a slip of the eye apart", () => {
    const weightOf = (feedThere: boolean, key: string) =>
      survey(TWO, facts, [...trap, look(feedThere)]).cables[0]?.may.find(({ role }) => role.key === key)?.weight ?? 0;
    expect(weightOf(true, "loop-fed")).toBeGreaterThan(0.99);
    expect(weightOf(false, "supply reversed")).toBeGreaterThan(0.7);
    expect(keys([look(true), look(true)])).toEqual(["loop-fed"]);
  });

  test("dead, the neutral of a reversed supply has no ohms to ground, the far side of a lamp has 16 to 20", () => {
    const grounds = (b: number | "open") => [ohms("C1", b, [], ["b", "g"]), ohms("C1", "open", [], ["w", "g"])];
    const best = (more: readonly GivenReading[]) => survey(TWO, facts, [...trap, ...more]).cables[0]?.may[0];
    expect(best(grounds(0.2))).toMatchObject({ role: { key: "supply reversed" } });
    expect(best(grounds(18))).toMatchObject({ role: { key: "loop-fed" } });
    // Neither explains an open wire after 120 V across the pair under load: something was changed in between.
    expect(survey(TWO, facts, [...trap, ...grounds("open")]).contradiction).toBeDefined();
  });

  test("where two hots come in two wires, a test lamp of 120 V is refused too", () => {
    // Black to white alone, 240 V: the white is the second hot, and a loop is not ruled out by it.
    const answer = survey(TWO, facts, triple("C1", [240, 120, 120]));
    expect(answer.refused.some(({ because }) => because === "short")).toBe(true);
    expect(offered(answer).some(({ key }) => key.startsWith("test-lamp"))).toBe(false);
  });
});

describe("traps", () => {
  test("two live cables are never joined to anything, and may be a loop", () => {
    const readings = [...triple("C1", [120, 120, 0]), ...triple("C2", [121, 121, 0]), ...triple("C3", [0, 0, 0])];
    const answer = survey(unknownBox(3), {}, readings);
    expect(answer.cables.slice(0, 2).map(({ role }) => role?.key)).toEqual(["supply", "supply"]);
    expect(answer.notProved.join(" ")).toContain("two circuits, a loop, or two branches");
    const joins = offered(answer).filter(({ key }) => key.startsWith("join"));
    expect(joins.every(({ wanted }) => wanted.joined?.length === 2)).toBe(true);
    expect(
      joins.every(({ wanted }) => !(wanted.joined?.includes(cableId("C1")) && wanted.joined.includes(cableId("C2")))),
    ).toBe(true);
    expect(offered(answer).some(({ key }) => key === "breaker")).toBe(true);
  });

  test("a cable not read yet is not joined: it may be a second feed, and the short is told", () => {
    const answer = survey(unknownBox(3), {}, [
      ...[...triple("C1", [120, 120, 0]), ...triple("C2", [0, 0, 0])],
      ...[ohms("C2", "open"), ohms("C3", "open")],
    ]);
    expect(answer.refused).toContainEqual(
      expect.objectContaining({
        key: "join cable-C3",
        because: "short",
        reason: expect.stringContaining("not ruled out"),
      }),
    );
    const joins = offered(answer).filter(({ key }) => key.startsWith("join"));
    expect(joins.map(({ wanted }) => wanted.joined)).toEqual([[cableId("C1"), cableId("C2")]]);
  });

  test("240 V between two cables are two sources on different legs", () => {
    const between: GivenReading = {
      instrument: "low-impedance-meter",
      value: "240",
      survey: {
        arrangement: "A2",
        test: {
          kind: "pair",
          from: { cable: cableId("C1"), conductor: "bk" as never },
          to: { cable: cableId("C2"), conductor: "bk" as never },
        },
      },
    };
    const answer = survey(unknownBox(3), {}, [between]);
    const live = answer.cables
      .slice(0, 2)
      .map(({ may: all }) =>
        all
          .filter(({ role }) => role.kind.includes("supply") || role.kind === "loop-fed")
          .reduce((sum, { weight }) => sum + weight, 0),
      );
    expect(Math.min(...live)).toBeGreaterThan(0.8);
  });

  test("without a ground in any cable, a reading to ground counts only with a proved reference", () => {
    const old = unknownBox(2, "nm-14-2");
    const answer = survey(old, {}, triple("C1", [120, 120, 0]));
    expect(answer.setAside.map(({ index }) => index)).toEqual([1, 2]);
    expect(answer.refused).toContainEqual(expect.objectContaining({ because: "needs-reference" }));
    expect(answer.next?.wanted.tests.every((one) => one.kind !== "pair" || one.to !== "ground")).toBe(true);
    const proved = survey(old, { referenceProved: "water pipe, 120 V to a known hot" }, triple("C1", [120, 120, 0]));
    expect(proved.setAside).toEqual([]);
    expect(may(proved, 0)).toEqual(["supply"]);
  });

  test("a load left plugged in may imitate a light unless somebody made sure", () => {
    const groups = [[lightItem("L1", { switches: ["S1"] })], [outletItem("R1")]];
    const read = [...triple("C1", [120, 120, 0]), ...triple("C2", [0, 0, 0]), ...triple("C3", [0, 0, 0])];
    const weight = (nothingPlugged: boolean) => {
      const lamp = ohms("C2", 18, ["S1"]);
      const answer = survey(unknownBox(3), { groups }, [
        ...read,
        { ...lamp, survey: { ...lamp.survey, nothingPlugged } },
      ]);
      return answer.cables[1]?.may.find(({ role }) => role.words === "feeds L1")?.weight ?? 0;
    };
    expect(weight(true)).toBeGreaterThan(0.9);
    expect(weight(false)).toBeLessThan(0.8);
  });

  test("a current in a white with the power off is another circuit's neutral", () => {
    const current: GivenReading = {
      instrument: "clamp-meter",
      value: "1.4",
      survey: { arrangement: "A1", test: { kind: "current", cable: cableId("C2"), conductor: "wh" as never } },
    };
    const read = [...triple("C1", [120, 120, 0]), ...triple("C2", [0, 0, 0])];
    const answer = survey(unknownBox(2), {}, [...read, current]);
    expect(answer.cables[1]?.may[0]?.role.key).toBe("other-neutral");
    expect(answer.cautions.map(({ id }) => id)).toContain("WRK4");
  });

  test("hold points come one by one, dead again only after power", () => {
    const answer = survey(unknownBox(3), { groups: [[lightItem("L1")]] }, []);
    expect(answer.holdPoints.map(({ id }) => id)).toEqual(["HP1", "HP2"]);
    expect(answer.next?.exposure).toBe("dead");
    const live = survey(
      unknownBox(3),
      {},
      ["C1", "C2", "C3"].map((name) => ohms(name, "open")),
    );
    expect(live.next?.exposure).toBe("open-box-live");
    expect(live.holdPoints.map(({ id }) => id)).toEqual(["HP1", "HP2", "HP6", "HP3"]);
  });

  test("no live cable is said, and the breaker named as a cause", () => {
    const none = ["C1", "C2"].flatMap((name) => triple(name, [0, 0, 0]));
    const answer = survey(unknownBox(2), {}, none);
    expect(answer.contradiction).toBeUndefined();
    expect(answer.notProved.join(" ")).toContain("No cable is live yet: the breaker may be off");
  });
});

describe("readings that contradict", () => {
  test("nothing is left, the two least bad are told with what speaks against them, and no test is offered", () => {
    const readings = [...SUPPLY, ...DEAD, works(["C1", "C2"], items("R2", "R3")), works(["C1", "C5"], items("R2"))];
    const { contradiction, next, left, surviving, settled } = plain(readings);
    expect(contradiction?.words).toBe("These readings fit no arrangement known to the tool.");
    expect(contradiction?.leastBad).toHaveLength(2);
    for (const { against } of contradiction?.leastBad ?? []) expect(against.length).toBeGreaterThan(0);
    expect(contradiction?.lookFor.join(" ")).toContain("second circuit");
    expect({ next, left, surviving, settled }).toEqual({ next: undefined, left: 0, surviving: [], settled: false });
  });

  test("three live cables fit nothing known", () => {
    const three = ["C1", "C2", "C3"].flatMap((name) => triple(name, [120, 120, 0]));
    expect(survey(unknownBox(3), {}, three).contradiction).toBeDefined();
  });
});

describe("what a person lists", () => {
  test("more things than cables: what works together with one cable alone hangs on it", () => {
    const groups = ["R1", "R2", "R3", "R4"].map((name) => [outletItem(name)]);
    const read = [...triple("C1", [120, 120, 0]), ...triple("C2", [0, 0, 0]), ...triple("C3", [0, 0, 0])];
    const joined = [works(["C1", "C2"], ["R1", "R3"]), works(["C1", "C3"], ["R2", "R4"])];
    const answer = survey(unknownBox(3), { groups }, [...read, ...joined]);
    expect(answer.contradiction).toBeUndefined();
    expect(answer.cables.slice(1).map(({ role }) => role?.words)).toEqual(["feeds R1 and R3", "feeds R2 and R4"]);
    // One at a time: two at once would not tell which hangs where.
    expect(
      offered(survey(unknownBox(3), { groups }, read)).every(({ wanted }) => (wanted.joined?.length ?? 0) <= 2),
    ).toBe(true);
  });
});

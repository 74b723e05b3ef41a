import { describe, expect, test } from "vitest";
import { standInProposed } from "../../shared-model/analysis/compare-states.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import type { Drawing } from "../rules/drawing.ts";
import { laundryAsFound } from "../rules/laundry.ts";
import { laundryBoth, statesOf } from "./laundry-states.ts";

const findings = (project: Project, state: StateName): readonly Finding[] =>
  openSession(project).report(state).findings;

/** "outlet-not-protected R2: inherited caution existing", of the rules named, sorted. */
function told(project: Project, state: StateName, ...ruleIds: readonly string[]): readonly string[] {
  return findings(project, state)
    .filter(({ rule }) => ruleIds.length === 0 || ruleIds.includes(rule))
    .map(
      ({ rule, subjects, standing, severity, existing }) =>
        `${rule} ${subjects[0]?.name}: ${standing} ${severity}${existing === true ? " existing" : ""}`,
    )
    .sort();
}

const about = (name: string, lines: readonly string[]) => lines.filter((line) => line.includes(` ${name}:`));

const NOT_PROTECTED = "outlet-not-protected";
const NO_GROUND = "device-egc-missing";
const NO_NEUTRAL = "open-neutral";

describe("the laundry box and its plan, against the table of the reference job", () => {
  /** The lists of the job, edition 2020: what the plan repairs, what stays of before, what it brings. */
  const REPAIRED = [
    "box-overfull B1",
    ...["X", "Y", "Z"].map((splice) => `splice-over-capacity ${splice}`),
    // R2, R3 and R4 lack it by the same cause and are folded.
    "outlet-not-protected R1",
  ];
  const STAYS = ["B2", "B5", "B6"].map((box) => `fill-nearly-full ${box}`);
  const INTRODUCED = ["fill-nearly-full B1"];
  const judged = new Set(rules.map(({ id }) => id));
  const IN_TABLE = new Set(["box-overfull", "splice-over-capacity", NOT_PROTECTED, "fill-nearly-full"]);

  const list = (state: StateName, ...standings: readonly string[]) =>
    findings(laundryBoth(), state)
      .filter(({ rule, standing = "" }) => IN_TABLE.has(rule) && standings.includes(standing))
      .map(({ rule, subjects }) => `${rule} ${subjects[0]?.name}`)
      .sort();
  const asFarAsRulesGo = (lines: readonly string[]) =>
    lines.filter((line) => judged.has(line.split(" ")[0] ?? "")).sort();

  test("repaired", () => expect(list("as-found", "repaired")).toEqual(asFarAsRulesGo(REPAIRED)));
  test("stays", () => expect(list("as-found", "stays")).toEqual(asFarAsRulesGo(STAYS)));
  test("inherited", () => expect(list("proposed", "inherited", "inherited-touched")).toEqual(asFarAsRulesGo(STAYS)));
  test("introduced", () => expect(list("proposed", "introduced")).toEqual(asFarAsRulesGo(INTRODUCED)));
});

describe("before anything is proposed", () => {
  test("no finding stands to anything", () => {
    for (const finding of findings(laundryAsFound().project(), "as-found")) {
      expect(finding.standing).toBeUndefined();
      expect(finding.existing).toBeUndefined();
    }
  });
});

describe("a plan that changes nothing", () => {
  const same = statesOf(laundryAsFound(), laundryAsFound());

  test("leaves every finding of as found as it is", () => {
    const before = findings(laundryAsFound().project(), "as-found");
    expect(before.length).toBeGreaterThan(5);
    expect(findings(same, "as-found")).toEqual(before.map((finding) => ({ ...finding, standing: "stays" })));
  });

  test("inherits them all, violations as cautions that are called existing, words and facts unchanged", () => {
    const planned = findings(same, "proposed");
    const before = findings(same, "as-found");
    expect(planned.map(({ key }) => key).sort()).toEqual(before.map(({ key }) => key).sort());
    for (const finding of planned) {
      const former = before.find(({ key }) => key === finding.key);
      expect(finding.standing).toBe("inherited");
      expect(finding.severity).toBe(former?.severity === "violation" ? "caution" : former?.severity);
      expect(finding.existing).toBe(former?.severity === "violation" ? true : undefined);
      expect([finding.message, finding.numbers]).toEqual([former?.message, former?.numbers]);
    }
  });

  test("puts the lowered ones among the cautions", () => {
    const ranks = findings(same, "proposed").map(({ severity }) =>
      ["danger", "violation", "caution", "advice"].indexOf(severity),
    );
    expect(ranks).toEqual([...ranks].sort());
  });
});

describe("a box that the work opens", () => {
  const opening = (open: (plan: Drawing) => void) => {
    const plan = laundryAsFound();
    open(plan);
    return told(statesOf(laundryAsFound(), plan), "proposed", "box-overfull", NOT_PROTECTED);
  };
  const B1_OPENED = "box-overfull B1: inherited-touched violation";
  const B1_LEFT = "box-overfull B1: inherited caution existing";

  test("keeps its violations as what they are, and the others are lowered", () => {
    const lines = opening((plan) =>
      plan.swap("C2.bk@B1", "C5.wh@B1").swap("C2.bk@B1", "C5.wh@B1").knownBy("C2.bk@B1", "seen"),
    );
    expect(lines).toContain(B1_LEFT);
    const opened = opening((plan) => plan.jumper("n", "B1", "Z", "bond", { colour: "bare" }));
    expect(opened).toContain(B1_OPENED);
    expect(opened).toContain(`${NOT_PROTECTED} R1: inherited-touched violation`);
  });

  test.each<readonly [string, (plan: Drawing) => void]>([
    ["name", (plan) => plan.setBox("B1", { name: "Box one" })],
    ["note", (plan) => plan.setBox("B1", { note: "by the door" })],
    ["place in order", (plan) => plan.setBox("B1", { order: 99 })],
    ["evidence", (plan) => plan.setBox("B1", { evidence: { volume: "measured" } })],
    ["room", (plan) => plan.setBox("B1", { roomId: "Basement" as never })],
    ["survey flag", (plan) => plan.setBox("B1", { beingSurveyed: true })],
    ["name and notes of a device", (plan) => plan.setDevice("R1", { name: "Washer", notes: "old" })],
    ["evidence of an end", (plan) => plan.knownBy("C2.bk@B1", "seen")],
  ])("is not one of which only the %s differs", (_, change) => {
    const lines = opening(change);
    expect(lines.filter((line) => line.startsWith("box-overfull"))).toMatchObject([
      expect.stringMatching(/inherited caution existing$/),
    ]);
  });

  test("nor one with another tag on an end", () => {
    const plan = laundryAsFound();
    const { places } = plan.at("B1");
    const end = Object.keys(places)[0] as keyof typeof places;
    places[end] = { ...(places[end] as (typeof places)[typeof end]), tag: "blue tape" };
    expect(told(statesOf(laundryAsFound(), plan), "proposed", "box-overfull")).toEqual([B1_LEFT]);
  });

  test.each<readonly [string, (plan: Drawing) => void]>([
    ["volume", (plan) => plan.setBox("B1", { volume: { kind: "marked", volumeIn3: 300_000 as never } })],
    ["place of an end", (plan) => plan.put({ "C2.cu@B1": "cap" })],
    ["splice", (plan) => plan.setSplice("Z", { connector: "twist-medium" })],
    ["jumper", (plan) => plan.removeJumper("t")],
    ["device", (plan) => plan.setDevice("R1", { type: "receptacle-tr-15" })],
    ["cable, by its size", (plan) => plan.setConductors("C5", { awg: "14" })],
  ])("is one with another %s", (_, change) => {
    const plan = laundryAsFound();
    change(plan);
    expect(about("R1", told(statesOf(laundryAsFound(), plan), "proposed", NOT_PROTECTED))).toEqual([
      `${NOT_PROTECTED} R1: inherited-touched violation`,
    ]);
  });

  test("is at both ends of a cable that differs, and nowhere else", () => {
    const change = (plan: Drawing) => plan.setConductors("C2", { colour: "blue" });
    expect(opening(change)).toContain(B1_OPENED);
    const plan = laundryAsFound();
    change(plan);
    expect(told(statesOf(laundryAsFound(), plan), "proposed", "fill-nearly-full")).toEqual([
      "fill-nearly-full B2: inherited-touched advice",
      "fill-nearly-full B5: inherited advice",
      "fill-nearly-full B6: inherited advice",
    ]);
  });
});

describe("a finding that stands for several things", () => {
  const withR4 = (type: string) => laundryAsFound().setDevice("R4", { type });
  const protectedR4 = () => withR4("gfci-receptacle-15").put({ "C3.bk@B4": "R4.LINE_H", "C3.wh@B4": "R4.LINE_N" });

  test("lies in the boxes of all of them: one that is opened keeps it what it is", () => {
    const plan = laundryAsFound().put({ "C6.cu@B3": "cap" });
    expect(told(statesOf(laundryAsFound(), plan), "proposed", NOT_PROTECTED)).toEqual([
      `${NOT_PROTECTED} R1: inherited-touched violation`,
    ]);
    const elsewhere = laundryAsFound().put({ "C7.cu@B7": "cap" });
    expect(told(statesOf(laundryAsFound(), elsewhere), "proposed", NOT_PROTECTED)).toEqual([
      `${NOT_PROTECTED} R1: inherited caution existing`,
    ]);
  });

  test("is introduced when one of them is", () => {
    expect(told(statesOf(protectedR4(), laundryAsFound()), "proposed", NOT_PROTECTED)).toEqual([
      `${NOT_PROTECTED} R1: introduced violation`,
    ]);
  });

  test("stays until the last of them is repaired", () => {
    const first = laundryAsFound()
      .setDevice("R1", { type: "gfci-receptacle-15" })
      .put({ "p.2": "R1.LINE_H", "q.2": "R1.LINE_N" });
    expect(told(statesOf(laundryAsFound(), first), "as-found", NOT_PROTECTED)).toEqual([
      `${NOT_PROTECTED} R1: stays violation`,
    ]);
    const others = laundryAsFound()
      .setDevice("Q14", { type: "breaker-gfci-1", function: "gfci" })
      .put({ "C1.wh@P": "Q14.LOAD_N" });
    expect(told(statesOf(laundryAsFound(), others), "as-found", NOT_PROTECTED)).toEqual([
      `${NOT_PROTECTED} R1: repaired violation`,
    ]);
  });
});

describe("what the plan brings and ends", () => {
  test("a danger that was there keeps its severity, opened or not", () => {
    const broken = () => laundryAsFound().put({ "C5.wh@B6": "cap" });
    const danger = "open-neutral";
    expect(told(statesOf(broken(), broken()), "proposed", danger)).toEqual(["open-neutral R5: inherited danger"]);
    const opened = broken().put({ "C5.cu@B6": "cap" });
    expect(told(statesOf(broken(), opened), "proposed", danger)).toEqual(["open-neutral R5: inherited-touched danger"]);
    expect(told(statesOf(laundryAsFound(), broken()), "proposed", danger)).toEqual([
      "open-neutral R5: introduced danger",
    ]);
    expect(told(statesOf(broken(), laundryAsFound()), "as-found", danger)).toEqual([
      "open-neutral R5: repaired danger",
    ]);
  });

  test("a box that is new brings what is wrong in it, one that is taken away ends it", () => {
    const small = () => laundryAsFound().box("B9", 1).cable("C9", "nm-12-2-g", "the street", "B9");
    expect(about("B9", told(statesOf(laundryAsFound(), small()), "proposed", "box-overfull"))).toEqual([
      "box-overfull B9: introduced violation",
    ]);
    expect(about("B9", told(statesOf(small(), laundryAsFound()), "as-found", "box-overfull"))).toEqual([
      "box-overfull B9: repaired violation",
    ]);
  });

  test("what shows only now because its cause is gone was there before", () => {
    const swapped = () =>
      laundryAsFound().setDevice("R1", { type: "gfci-receptacle-15" }).put({ "p.2": "R1.LOAD_H", "q.2": "R1.LOAD_N" });
    const found = findings(swapped().project(), "as-found");
    expect(found.filter(({ rule }) => rule === "line-load-swapped")).toMatchObject([
      { subjects: [{ name: "R1" }], foldedSubjects: expect.arrayContaining([expect.objectContaining({ name: "R1" })]) },
    ]);
    expect(found.filter(({ key }) => key === `${NOT_PROTECTED}|outlet:R1`)).toEqual([]);
    const planned = statesOf(swapped(), laundryAsFound());
    expect(about("R1", told(planned, "proposed", NOT_PROTECTED))).toEqual([
      `${NOT_PROTECTED} R1: inherited-touched violation`,
    ]);
  });
});

describe("a device in the place of another", () => {
  const replaced = (name: string, more: Partial<ReturnType<Drawing["deviceOf"]>> = {}) => {
    const plan = laundryAsFound();
    const before = plan.deviceOf("R1");
    const { devices, places } = plan.at("B1");
    delete devices[before.id];
    plan.device(name, "receptacle-15", "B1", more);
    for (const place of Object.values(places))
      if (place.at.kind === "terminal" && place.at.device === before.id)
        Object.assign(place, { at: { ...place.at, device: name } });
    return plan;
  };

  test("inherits its findings, and those of the other stay", () => {
    const bare = (drawing: Drawing) => drawing.removeJumper("r");
    const states = statesOf(bare(laundryAsFound()), bare(replaced("R1c", { replaces: "R1" as never })));
    expect(about("R1c", told(states, "proposed", NO_GROUND))).toEqual([
      `${NO_GROUND} R1c: inherited-touched violation`,
    ]);
    expect(about("R1", told(states, "as-found", NO_GROUND))).toEqual([`${NO_GROUND} R1: stays violation`]);
  });

  test("only where it says so", () => {
    const states = statesOf(laundryAsFound(), replaced("R1c"));
    expect(about("R1c", told(states, "proposed", NOT_PROTECTED))).toEqual([
      `${NOT_PROTECTED} R1c: introduced violation`,
    ]);
    // R2, R3 and R4 are told with it, and are as they were.
    expect(about("R1", told(states, "as-found", NOT_PROTECTED))).toEqual([`${NOT_PROTECTED} R1: stays violation`]);
  });

  test("not of a device that is still there", () => {
    const plan = laundryAsFound()
      .device("R8", "receptacle-15", "B4", { replaces: "R1" as never })
      .put({});
    const twin = plan.put({ "C3.bk@B4": "R8.H1", "C3.wh@B4": "R8.N1" });
    expect(about("R8", told(statesOf(laundryAsFound(), twin), "proposed", NOT_PROTECTED))).toEqual([
      `${NOT_PROTECTED} R8: introduced violation`,
    ]);
  });

  test("in its terminals", () => {
    const doubled = (plan: Drawing, device: string) => plan.jumper("extra", "B1", "X", `${device}.H1`);
    const states = statesOf(
      doubled(laundryAsFound(), "R1"),
      doubled(replaced("R1c", { replaces: "R1" as never }), "R1c"),
    );
    const [finding] = findings(states, "proposed").filter(({ rule }) => rule === "two-wires-one-screw");
    expect(finding?.subjects[0]?.id).toBe("R1c.H1");
    expect(finding?.standing).toBe("inherited-touched");
    expect(findings(states, "as-found").find(({ rule }) => rule === "two-wires-one-screw")?.standing).toBe("stays");
  });

  test("and in the halves of an outlet: a tab that is broken off mends nothing", () => {
    const split = { hotTab: "removed", neutralTab: "removed" } as const;
    const cut = (drawing: Drawing) => drawing.put({ "q.2": "cap" });
    const states = statesOf(
      cut(laundryAsFound()),
      cut(replaced("R1c", { replaces: "R1" as never, hotTab: "removed" })),
    );
    expect(told(states, "proposed", NO_NEUTRAL).filter((line) => line.includes("R1c"))).not.toEqual([]);
    for (const line of told(states, "proposed", NO_NEUTRAL).filter((one) => one.includes("R1c")))
      expect(line).toMatch(/R1c\/(upper|lower): inherited-touched danger$/);
    expect(about("R1", told(states, "as-found", NO_NEUTRAL))).toEqual([`${NO_NEUTRAL} R1: stays danger`]);
    const both = statesOf(cut(replaced("R1", split)), cut(replaced("R1c", { replaces: "R1" as never, ...split })));
    expect(told(both, "proposed", NO_NEUTRAL).filter((line) => line.includes("introduced"))).toEqual([]);
  });
});

describe("one finding", () => {
  const finding: Finding = {
    key: "r|project:project",
    rule: "r",
    severity: "violation",
    status: "stable",
    state: "proposed",
    subjects: [{ kind: "project", id: "project", name: "House" }],
    message: "The house.",
    numbers: {},
    folded: 0,
    foldedSubjects: [],
  };
  const nowhere = new Set<EnclosureId>();
  const B1 = new Set(["B1" as EnclosureId]);

  test("about the document as a whole is not lowered: no box of it could be left alone", () => {
    expect(standInProposed(finding, true, nowhere, () => false)).toEqual({ ...finding, standing: "inherited" });
  });

  test.each(["danger", "caution", "advice"] as const)("of severity %s stays so", (severity) => {
    const one = { ...finding, severity };
    expect(standInProposed(one, true, B1, () => false)).toEqual({ ...one, standing: "inherited" });
  });

  test("that lies in two boxes is touched when one of them is opened", () => {
    const two = new Set(["B1", "B2"] as EnclosureId[]);
    expect(standInProposed(finding, true, two, (id) => id === "B2")).toEqual({
      ...finding,
      standing: "inherited-touched",
    });
  });
});

import { afterEach, describe, expect, test, vi } from "vitest";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { Amendment, Edition, Project } from "../../shared-model/model/project.ts";
import { boxOverfull } from "../../shared-model/rules/checks/box-overfull.ts";
import { findingKey, fold } from "../../shared-model/rules/fold.ts";
import { boxRules, rules } from "../../shared-model/rules/registry.ts";
import { type BoxContext, defineRule } from "../../shared-model/rules/rule.ts";
import { checkBox, type RawAnswers } from "../../shared-model/rules/run-rules.ts";
import { checkDocument, inShort, rawAnswers } from "./check-drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";

const amendedBy = (project: Project, ...amendments: readonly Amendment[]): Project => ({ ...project, amendments });
const valueChange = (rule: string, name: string, value: number): Amendment => ({
  rule,
  change: { kind: "value", name, value },
  reason: "local practice",
});

describe("local amendments", () => {
  const found = (project: Project) => checkDocument(project).findings;

  test("a rule that is switched off finds nothing and is not counted as run", () => {
    const project = laundryAsFound().project();
    const off = amendedBy(project, {
      rule: "splice-over-capacity",
      change: { kind: "off" },
      reason: "package table at hand",
    });
    expect(inShort(found(off)).some((one) => one.startsWith("splice-over-capacity"))).toBe(false);
    // Eight enclosures, each checked once less.
    expect(checkDocument(project).checksRun - checkDocument(off).checksRun).toBe(8);
  });

  test("a value is replaced for its rule alone", () => {
    const project = amendedBy(laundryAsFound().project(), valueChange("box-overfull", "clampAllowances", 0));
    expect(found(project).some(({ rule }) => rule === "box-overfull")).toBe(false);
    const two = laundryProposed().put({ "C6.bk@B2": "R2.H1" }).project();
    const doubled = "two-wires-one-screw R2 H";
    const rest = inShort(found(two)).filter((one) => one !== doubled);
    expect(inShort(found(two))).toContain(doubled);
    expect(inShort(found(amendedBy(two, valueChange("two-wires-one-screw", "wiresPerScrew", 2))))).toEqual(rest);
  });

  test.each([
    [
      "a rule that does not exist",
      valueChange("box-over-full", "clampAllowances", 0),
      'There is no rule "box-over-full".',
    ],
    [
      "a value that the rule does not read",
      valueChange("box-overfull", "wiresPerScrew", 0),
      'reads no value "wiresPerScrew"',
    ],
    ["a table", valueChange("conductor-too-small", "smallConductorAmps", 25), "is a table"],
    ["a fraction of a count", valueChange("box-overfull", "clampAllowances", 0.5), "must be a whole number"],
    ["a negative number", valueChange("box-overfull", "clampAllowances", -1), "must be 0 or more"],
    ["an object of the language", valueChange("box-overfull", "constructor", 1), 'reads no value "constructor"'],
  ])("one that changes nothing is said to: %s", (_name, amendment, words) => {
    const before = found(laundryAsFound().project());
    const after = found(amendedBy(laundryAsFound().project(), amendment));
    expect(after.filter(({ rule }) => rule !== "amendment-ignored")).toEqual(before);
    const said = after.filter(({ rule }) => rule === "amendment-ignored");
    expect(said.map(({ severity }) => severity)).toEqual(["caution"]);
    expect(said[0]?.message).toContain(words);
  });
});

describe("editions", () => {
  test.each([2011, 2014] as const)("%i counts fill, and says that it cannot tell what must be protected", (edition) => {
    const { findings, couldNotTell } = checkDocument(laundryAsFound(edition).project());
    expect(findings.find(({ rule }) => rule === "box-overfull")?.numbers.neededIn3).toBe(31.5);
    expect(findings.some(({ rule }) => rule === "outlet-not-protected")).toBe(false);
    expect(inShort(couldNotTell)).toEqual(["outlet-not-protected Test drawing"]);
  });

  test("a finding of 2026 asserts no number of 2026", () => {
    const all = checkDocument(laundryAsFound(2026).project()).findings;
    const ofTheCode = all.filter(({ section }) => section?.confidence !== "own-rule");
    expect(ofTheCode.length).toBeGreaterThan(0);
    for (const { section } of ofTheCode) {
      expect(section?.section).toMatch(/\(2023\)$/);
      expect(section?.confidence).toBe("doubtful");
    }
  });

  test("a finding carries the section of the edition and how well it is backed", () => {
    const { findings } = checkDocument(laundryAsFound(2020).project());
    expect(findings.find(({ rule }) => rule === "box-overfull")?.section).toEqual({
      section: "314.16(B)",
      confidence: "sourced",
    });
    expect(findings.find(({ rule }) => rule === "splice-over-capacity")?.section?.confidence).toBe("from-memory");
  });
});

describe("a rule that throws", () => {
  afterEach(() => vi.restoreAllMocks());

  test("is shown where it failed, leaves nothing half said, and stops no other rule", () => {
    const project = laundryAsFound().project();
    const before = checkDocument(project);
    vi.spyOn(boxOverfull, "check").mockImplementation((context: BoxContext) => {
      if (context.enclosure.name !== "B1") return;
      context.report({ subjects: [{ kind: "enclosure", id: "B1", name: "B1" }], message: "half a thought" });
      throw new Error("No room for this.");
    });
    const after = checkDocument(project);
    expect(after.checksRun).toBe(before.checksRun);
    const [internal] = after.findings.filter(({ rule }) => rule === "internal-error");
    expect(internal).toMatchObject({ severity: "advice", numbers: { rule: "box-overfull" } });
    expect(internal?.subjects[0]?.name).toBe("B1");
    expect(internal?.message).toContain("No room for this.");
    const others = (findings: readonly Finding[]) =>
      findings.filter(({ rule }) => rule !== "internal-error" && rule !== "box-overfull");
    expect(others(after.findings)).toEqual(others(before.findings));
    expect(after.findings.some(({ message }) => message === "half a thought")).toBe(false);
  });
});

test("a host can leave rules out and learns which one begins", () => {
  const project = laundryAsFound().project();
  const [enclosure] = Object.values(project.asFound.enclosures).filter(({ name }) => name === "B1");
  if (enclosure === undefined) throw new Error("No B1.");
  const begun: string[] = [];
  const watch = { skips: (id: string) => id === "box-overfull", begins: (id: string) => void begun.push(id) };
  const answers = checkBox({ project, installation: project.asFound, state: "as-found", enclosure, watch });
  expect(begun).toEqual(boxRules.map(({ id }) => id).filter((id) => id !== "box-overfull"));
  expect(answers.checksRun).toBe(boxRules.length - 1);
  expect(answers.reports.map(({ rule }) => rule.id)).toEqual([
    "egc-edition-difference",
    ...Array(3).fill("splice-over-capacity"),
  ]);
});

describe("folding", () => {
  const quiet = defineRule({
    id: "quiet",
    status: "draft",
    scope: "project",
    severity: "caution",
    summary: "-",
    why: "-",
    messages: {},
    sections: {},
    check: () => undefined,
  });
  const loud = { ...quiet, id: "loud", severity: "danger" } as const;
  const on = (name: string) => [{ kind: "outlet", id: name, name }] as const;
  const part = (...reports: RawAnswers["reports"]): RawAnswers => ({
    reports,
    ownReports: [],
    couldNotTell: [],
    checksRun: 1,
  });
  const hiding = (name: string, rule: string, ...subjects: string[]) => ({
    subjects: on(name),
    message: "m",
    hides: [{ rule, subjects }],
  });
  const edition: Edition = 2020;

  test("a consequence in another part is folded under its cause", () => {
    const { findings } = fold("as-found", edition, [
      part(
        { rule: quiet, report: { subjects: on("R2"), message: "m" } },
        { rule: quiet, report: { subjects: on("R3"), message: "m" } },
      ),
      part({ rule: loud, report: hiding("G", "quiet", "R2") }),
    ]);
    expect(inShort(findings)).toEqual(["loud G", "quiet R3"]);
    expect(findings[0]).toMatchObject({ folded: 1, foldedSubjects: on("R2") });
  });

  test("a consequence of a consequence goes to the root", () => {
    const { findings } = fold("as-found", edition, [
      part(
        { rule: quiet, report: hiding("R2", "quiet", "R3") },
        { rule: quiet, report: { subjects: on("R3"), message: "m" } },
        { rule: loud, report: hiding("G", "quiet", "R2") },
      ),
    ]);
    expect(inShort(findings)).toEqual(["loud G"]);
    expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R2", "R3"]);
  });

  test("two that claim each other do not both vanish", () => {
    const { findings } = fold("as-found", edition, [
      part({ rule: quiet, report: hiding("A", "quiet", "B") }, { rule: quiet, report: hiding("B", "quiet", "A") }),
    ]);
    expect(findings.length).toBe(1);
    expect(findings[0]?.folded).toBe(1);
  });

  test("equal parts in another order give an equal answer", () => {
    for (const drawing of [laundryAsFound(), multiwire(), laundryProposed().jumper("y", "B1", "HL", "HD")]) {
      for (const parts of rawAnswers(drawing.project())) {
        const turned = parts.toReversed().map((one) => ({ ...one, reports: one.reports.toReversed() }));
        expect(fold("as-found", edition, turned)).toEqual(fold("as-found", edition, parts));
      }
    }
  });

  test("a key is the rule and its subjects, whatever the words and the state", () => {
    expect(findingKey("loud", [...on("R2"), { kind: "device", id: "G", name: "any" }])).toBe("loud|outlet:R2|device:G");
    const project = laundryAsFound().project();
    const keys = (state: "as-found" | "proposed"): readonly string[] =>
      checkDocument({ ...project, proposed: project.asFound }, state).findings.map(({ key }) => key);
    expect(keys("proposed")).toEqual(keys("as-found"));
    expect(new Set(keys("as-found")).size).toBe(keys("as-found").length);
  });

  test("the worst stands first", () => {
    const drawing = laundryAsFound().setSplice("X", { connector: "taped" });
    const severities = checkDocument(drawing.project()).findings.map(({ severity }) => severity);
    expect(severities[0]).toBe("danger");
    const ranked = ["danger", "violation", "caution", "advice"].flatMap((one) => severities.filter((it) => it === one));
    expect(severities).toEqual(ranked);
  });
});

test("every rule of the catalogue ran on the laundry circuit", () => {
  const begun = new Set<string>();
  const project = laundryAsFound().project();
  for (const parts of rawAnswers(project, "as-found", { skips: () => false, begins: (id) => void begun.add(id) }))
    expect(parts.length).toBeGreaterThan(0);
  expect([...begun].sort()).toEqual(rules.map(({ id }) => id).sort());
});

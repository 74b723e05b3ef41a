import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { answersAbout, answersBySubject } from "../../renderer/sheet/finding-marks.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import { withDifferences } from "../../shared-model/lib/differences.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { helpWords } from "../../shared-model/rules/help/words-of-rule.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import type { Drawn } from "../builders/rule-examples/example.ts";
import { ruleExamples } from "../builders/rule-examples/index.ts";
import { EXAMPLES_FILE, examplesText, packExamples, writeExamples } from "../builders/rule-examples/pack.ts";
import { checkDocument } from "./check-drawing.ts";

/** Rules without a drawing: their page has none. This list only shrinks. */
const WITHOUT: readonly string[] = [];

/** What a wrong drawing breaks besides, because the one thing follows from the other. */
const WRONG_TOO: Readonly<Record<string, readonly string[]>> = {
  "shared-neutral-upstream-gfci": ["mwbc-neutral-through-device"],
  "egc-missing": ["no-ground-label"],
};

const grave = ({ severity }: { readonly severity: string }) => severity === "danger" || severity === "violation";

function found(drawn: Drawn) {
  const project = drawn.project();
  expect(invariantProblems(project)).toEqual([]);
  return checkDocument(project, drawn.state).findings;
}

describe.each(Object.entries(ruleExamples))("%s", (rule, { wrong, right }) => {
  test("is found in the wrong drawing, and nothing grave that is not told", () => {
    const findings = found(wrong());
    expect(findings.map((finding) => finding.rule)).toContain(rule);
    const others = findings.filter((finding) => grave(finding) && finding.rule !== rule);
    expect([...new Set(others.map((finding) => finding.rule))]).toEqual(WRONG_TOO[rule] ?? []);
  });

  test("is kept in the right drawing, and no danger or violation is in it", () => {
    const findings = found(right());
    expect(findings.map((finding) => finding.rule)).not.toContain(rule);
    expect(findings.filter(grave).map(({ message }) => message)).toEqual([]);
  });
});

test("every rule has its drawings and the words beside them", () => {
  const ids = rules.map(({ id }) => id).sort();
  expect([...Object.keys(ruleExamples), ...WITHOUT].sort()).toEqual(ids);
  expect(Object.keys(helpWords).sort()).toEqual(ids.filter((id) => !WITHOUT.includes(id)));
});

test("the words are sentences, no verdict is among them, and no two pages say the same", () => {
  const all = Object.values(helpWords).flatMap(({ wrong, right, asked }) => [wrong, right, ...(asked ? [asked] : [])]);
  for (const words of all) {
    expect(words).toMatch(/^[“A-Z0-9].*[.”?]$/);
    expect(words).not.toMatch(/\b(safe|compliant)\b/i);
    expect(words.length).toBeLessThan(200);
  }
  expect(new Set(Object.values(helpWords).map(({ wrong }) => wrong)).size).toBe(Object.keys(helpWords).length);
});

const packed = packExamples(ruleExamples);
if (process.env.LOADSIDE_WRITE === "1") writeExamples(packed);

test("the file that ships is made of these drawings (LOADSIDE_WRITE=1 writes it)", () => {
  expect(readFileSync(EXAMPLES_FILE, "utf8")).toBe(examplesText(packed));
});

test("each wrong drawing comes out of the file as it was drawn, and the right ones stay as they are", () => {
  const before = structuredClone(packed.drawings);
  for (const [rule, { wrong }] of Object.entries(ruleExamples)) {
    const { drawing, changes } = packed.examples[rule] ?? { drawing: -1, changes: [] };
    const right = packed.drawings[drawing];
    if (right === undefined) throw new Error(`No drawing of ${rule}.`);
    const drawn = wrong();
    const project = drawn.project();
    const told = drawn.state === "proposed" ? project.proposed : project.asFound;
    expect(withDifferences(right, changes).asFound).toEqual(JSON.parse(JSON.stringify(told)));
  }
  expect(packed.drawings).toEqual(before);
});

test("every box that is told of is there to be shown, and a sign stands in a wrong one", () => {
  for (const [rule, { drawing, changes, wrong, right }] of Object.entries(packed.examples)) {
    const base = packed.drawings[drawing];
    if (base === undefined) throw new Error(`No drawing of ${rule}.`);
    for (const { id } of right.boxes) expect([rule, id in base.asFound.enclosures]).toEqual([rule, true]);
    const { enclosures } = withDifferences(base, changes).asFound;
    for (const { id } of wrong.boxes) expect([rule, id in enclosures]).toEqual([rule, true]);
    const index = answersBySubject(wrong.findings as readonly Finding[], []);
    const signs = wrong.boxes.flatMap(({ id }) => {
      const enclosure = enclosures[id];
      return enclosure === undefined ? [] : answersAbout(enclosure, index);
    });
    expect([rule, signs.length > 0, right.findings.length]).toEqual([rule, true, 0]);
  }
});

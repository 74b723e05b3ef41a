import { describe, expect, test } from "vitest";
import type { Severity } from "../../shared-model/answers/finding.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import type { CannotTellReport, Report, Rule } from "../../shared-model/rules/rule.ts";
import { rawAnswers } from "./check-drawing.ts";

/** A drawing, or two states of one of which `state` is looked at. */
export interface Drawn {
  project(): Project;
  readonly state?: StateName;
}

interface Passing {
  readonly name: string;
  readonly drawing: () => Drawn;
}

interface Expected {
  /** Names of the subjects, first to last. */
  readonly on: string;
  readonly severity?: Severity;
  readonly data?: Report["data"];
  readonly basis?: Report["basis"];
  /** Words that the message must hold. */
  readonly says?: readonly string[];
}

interface Cases {
  readonly passes: readonly Passing[];
  readonly finds: readonly (Passing & { readonly findings: readonly Expected[] })[];
  /** Drawings that lack a fact; or why no fact that the rule reads can be missing. */
  readonly cannotTell:
    | readonly (Passing & { readonly on: readonly string[]; readonly missing: string })[]
    | { readonly never: string };
}

/**
 * Runs one rule on whole drawings, unfolded. A drawing that passes has neither finding nor question; one that is found
 * wrong has exactly the findings named, no more. At the end every message of the rule must have been seen.
 */
export function ruleTester<M extends string>(rule: Rule<M>, cases: Cases): void {
  describe(rule.id, () => {
    const seen: string[] = [];
    const run = (drawing: Drawn) => {
      const answers = answersOf(rule, drawing);
      for (const { message } of [...answers.reports, ...answers.couldNotTell]) seen.push(message);
      return answers;
    };
    test.each(cases.passes)("passes: $name", ({ drawing }) => {
      const { reports, couldNotTell } = run(drawing());
      expect(reports).toEqual([]);
      expect(couldNotTell).toEqual([]);
    });
    test.each(cases.finds)("finds: $name", ({ drawing, findings }) => {
      const { reports } = run(drawing());
      expect(reports.map(namesOf).sort()).toEqual(findings.map(({ on }) => on).sort());
      for (const wanted of findings)
        compare(
          rule,
          reports.find((report) => namesOf(report) === wanted.on),
          wanted,
        );
    });
    if ("never" in cases.cannotTell) {
      const { never } = cases.cannotTell;
      test(`always tells: ${never}`, () => {
        expect(Object.values<string>(rule.messages).filter((text) => text.startsWith("Cannot tell"))).toEqual([]);
      });
    } else {
      test.each(cases.cannotTell)("cannot tell: $name", ({ drawing, on, missing }) => {
        const { couldNotTell } = run(drawing());
        expect(couldNotTell.map(namesOf).sort()).toEqual([...on].sort());
        for (const question of couldNotTell) expect(question.missing).toContain(missing);
      });
    }
    test("each of its messages is said by one of these drawings", () => {
      const unsaid = Object.entries<string>(rule.messages).filter(([, text]) => !seen.some((one) => isSaid(text, one)));
      expect(unsaid).toEqual([]);
    });
  });
}

function compare(rule: Rule, found: Report | undefined, wanted: Expected): void {
  expect(found?.severity ?? rule.severity).toBe(wanted.severity ?? rule.severity);
  if (wanted.data !== undefined) expect(found?.data).toEqual(wanted.data);
  if (wanted.basis !== undefined) expect(found?.basis).toBe(wanted.basis);
  for (const words of wanted.says ?? []) expect(found?.message).toContain(words);
}

const namesOf = ({ subjects }: Report | CannotTellReport): string => subjects.map(({ name }) => name).join(" ");

function answersOf(rule: Rule, drawing: Drawn) {
  const parts = rawAnswers(drawing.project(), drawing.state).flat();
  // That it is switched off is said beside the rules.
  const own = parts.flatMap(({ ownReports }) => ownReports);
  expect(own.filter(({ ruleId }) => ruleId !== "rule-switched-off")).toEqual([]);
  return {
    reports: parts.flatMap((part) => part.reports).flatMap((one) => (one.rule === rule ? one.report : [])),
    couldNotTell: parts.flatMap((part) => part.couldNotTell).flatMap((one) => (one.rule === rule ? one.report : [])),
  };
}

function isSaid(template: string, message: string): boolean {
  const parts = template.split(/\{\w+\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${parts.join(".*")}$`, "s").test(message);
}

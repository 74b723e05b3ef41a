import fc from "fast-check";
import { beforeEach, expect, test } from "vitest";
import {
  compareFindings,
  findingsStore,
  forgetAnswers,
  receiveAnswers,
  summaryOf,
} from "../../renderer/state/findings-store.ts";
import type { AnswersMessage } from "../../shared-model/analysis/protocol.ts";
import type { Finding, ScopeKey, Severity } from "../../shared-model/answers/finding.ts";

const finding = (rule: string, severity: Severity, name: string): Finding => ({
  key: `${rule} ${name}`,
  rule,
  severity,
  status: "stable",
  state: "as-found",
  subjects: [{ kind: "enclosure", id: name, name }],
  message: `${name}.`,
  numbers: {},
  folded: 0,
  foldedSubjects: [],
});

const scope = (key: string, ...findings: readonly Finding[]) => ({
  key: key as ScopeKey,
  answers: { findings, couldNotTell: [] },
});

const answers = (revision: number, part: Partial<AnswersMessage>): AnswersMessage => ({
  type: "answers",
  revision,
  state: "as-found",
  whole: false,
  scopes: [],
  removed: [],
  ledgers: {},
  roles: {},
  outlets: {},
  checksRun: 1,
  tookMs: 0,
  ...part,
});

const shown = () => findingsStore.get().findings.map(({ key }) => key);

beforeEach(() => {
  forgetAnswers();
});

test("findings of all parts stand together, worst first, names in the order people count", () => {
  receiveAnswers(
    answers(1, {
      whole: true,
      scopes: [
        scope("box B10", finding("b-rule", "caution", "B10"), finding("a-rule", "danger", "B10")),
        scope("box B2", finding("b-rule", "caution", "B2"), finding("c-rule", "violation", "B2")),
      ],
    }),
  );
  expect(shown()).toEqual(["a-rule B10", "c-rule B2", "b-rule B2", "b-rule B10"]);
});

test("a part that was checked again replaces its own findings, and one that is gone takes them along", () => {
  receiveAnswers(
    answers(1, { scopes: [scope("x", finding("r", "advice", "X")), scope("y", finding("r", "advice", "Y"))] }),
  );
  receiveAnswers(answers(2, { scopes: [scope("x", finding("s", "advice", "X"))] }));
  expect(shown()).toEqual(["r Y", "s X"]);
  receiveAnswers(answers(3, { removed: ["y" as ScopeKey] }));
  expect(shown()).toEqual(["s X"]);
});

test("an answer about the whole leaves nothing of before", () => {
  receiveAnswers(answers(1, { scopes: [scope("x", finding("r", "advice", "X"))] }));
  receiveAnswers(answers(2, { whole: true, scopes: [scope("z", finding("r", "advice", "Z"))] }));
  expect(shown()).toEqual(["r Z"]);
});

test("an answer older than the one shown is dropped", () => {
  receiveAnswers(answers(5, { scopes: [scope("x", finding("new", "advice", "X"))] }));
  receiveAnswers(answers(4, { scopes: [scope("x", finding("old", "advice", "X"))] }));
  expect(shown()).toEqual(["new X"]);
});

test("no findings is said with the number of checks, and never as a verdict", () => {
  receiveAnswers(answers(1, { checksRun: 7 }));
  expect(summaryOf(findingsStore.get())).toBe("No findings in 7 checks run, 0 could not be told.");
});

test("whatever is checked again in whatever order, the list is that of all answers together, sorted", () => {
  const severity = fc.constantFrom<Severity>("danger", "violation", "caution", "advice");
  const anyFinding = fc.record({ rule: fc.constantFrom("a", "b"), severity, name: fc.constantFrom("B1", "B2", "B10") });
  const step = fc.record({
    key: fc.constantFrom("x", "y", "z"),
    gone: fc.boolean(),
    found: fc.array(anyFinding, { maxLength: 4 }),
  });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      forgetAnswers();
      let serial = 0;
      steps.forEach(({ key, gone, found }, revision) => {
        // Keys are unique in a real answer: one rule says one thing about one subject.
        const findings = found.map(({ rule, severity: how, name }) => ({
          ...finding(rule, how, name),
          key: `${serial++}`,
        }));
        receiveAnswers(
          answers(revision, gone ? { removed: [key as ScopeKey] } : { scopes: [scope(key, ...findings)] }),
        );
      });
      const all = [...findingsStore.get().byScope.values()].flatMap((one) => one.findings);
      expect(findingsStore.get().findings).toEqual(all.sort(compareFindings));
    }),
  );
});

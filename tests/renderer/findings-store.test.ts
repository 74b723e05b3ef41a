import fc from "fast-check";
import { beforeEach, expect, test } from "vitest";
import {
  compareFindings,
  findingsOf,
  findingsStore,
  forgetAnswers,
  receiveAnswers,
  showFindingsOf,
  summaryOf,
} from "../../renderer/state/findings-store.ts";
import type { AnswersMessage, StateAnswers } from "../../shared-model/analysis/protocol.ts";
import type { Finding, ScopeKey, Severity } from "../../shared-model/answers/finding.ts";
import type { StateName } from "../../shared-model/model/project.ts";

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

const about = (state: StateName, part: Partial<StateAnswers>): StateAnswers => ({
  state,
  whole: false,
  scopes: [],
  removed: [],
  ledgers: {},
  roles: {},
  outlets: {},
  checksRun: 1,
  ...part,
});

const message = (
  revision: number,
  states: readonly StateName[],
  ...changed: readonly StateAnswers[]
): AnswersMessage => ({ type: "answers", revision, states, changed, tookMs: 0 });

const answers = (revision: number, part: Partial<StateAnswers>): AnswersMessage =>
  message(revision, ["as-found"], about("as-found", part));

const shown = () => findingsStore.get().findings.map(({ key }) => key);

beforeEach(() => {
  forgetAnswers();
  showFindingsOf("as-found");
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

const BOTH = ["as-found", "proposed"] as const;
const found = scope("x", finding("r", "violation", "X"));
const planned = scope("x", finding("r", "caution", "X"), finding("new", "advice", "Y"));
const keys = (state: StateName) => findingsOf(findingsStore.get(), state)?.findings.map(({ key }) => key);

test("both states are held, and the one that is shown is the one that was asked for", () => {
  receiveAnswers(
    message(3, BOTH, about("as-found", { scopes: [found] }), about("proposed", { scopes: [planned], checksRun: 9 })),
  );
  expect(shown()).toEqual(["r X"]);
  expect(keys("proposed")).toEqual(["r X", "new Y"]);
  showFindingsOf("proposed");
  expect(shown()).toEqual(["r X", "new Y"]);
  expect(findingsStore.get()).toMatchObject({ shown: "proposed", revision: 3, checksRun: 9 });
  expect(findingsStore.get().other?.findings.map(({ severity }) => severity)).toEqual(["violation"]);
  showFindingsOf("as-found");
  expect([shown(), keys("as-found"), keys("proposed")]).toEqual([["r X"], ["r X"], ["r X", "new Y"]]);
});

test("a state that an edit did not touch keeps its answers, and they hold for the new revision", () => {
  receiveAnswers(message(3, BOTH, about("as-found", { scopes: [found] }), about("proposed", { scopes: [planned] })));
  const before = findingsOf(findingsStore.get(), "as-found");
  receiveAnswers(message(4, BOTH, about("proposed", { removed: ["x" as ScopeKey] })));
  expect(findingsStore.get()).toMatchObject({ revision: 4, findings: before?.findings });
  expect(findingsStore.get().findings).toBe(before?.findings);
  expect(keys("proposed")).toEqual([]);
});

test("before its first answer a state that was just started has none, and one that was given up has none any more", () => {
  receiveAnswers(message(1, ["as-found"], about("as-found", { scopes: [found] })));
  expect(findingsStore.get().other).toBeUndefined();
  showFindingsOf("proposed");
  expect(findingsStore.get()).toMatchObject({ revision: -1, findings: [], checksRun: 0 });
  expect(summaryOf(findingsStore.get())).toBe("Nothing was checked yet.");
  expect(keys("as-found")).toEqual(["r X"]);
  receiveAnswers(message(2, BOTH, about("proposed", { whole: true, scopes: [planned] })));
  expect(shown()).toEqual(["r X", "new Y"]);
  showFindingsOf("as-found");
  receiveAnswers(message(3, ["as-found"]));
  expect([findingsStore.get().other, shown()]).toEqual([undefined, ["r X"]]);
});

test("an answer older than what is held of either state is dropped", () => {
  receiveAnswers(message(5, BOTH, about("as-found", { scopes: [found] }), about("proposed", { scopes: [planned] })));
  showFindingsOf("proposed");
  receiveAnswers(message(4, ["as-found"], about("as-found", { whole: true })));
  expect([shown(), keys("as-found")]).toEqual([["r X", "new Y"], ["r X"]]);
});

test("another document keeps nothing of either state", () => {
  receiveAnswers(message(5, BOTH, about("as-found", { scopes: [found] }), about("proposed", { scopes: [planned] })));
  showFindingsOf("proposed");
  forgetAnswers();
  expect(findingsStore.get()).toMatchObject({ shown: "proposed", revision: -1, findings: [] });
  expect(findingsStore.get().other).toBeUndefined();
});

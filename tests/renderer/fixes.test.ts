/** Fixes are tried before they are applied; what the checks say of the trial is put in by hand here. */
import { beforeEach, expect, test } from "vitest";
import {
  dispatch,
  documentStore,
  newDocument,
  nextUndo,
  openDocument,
  shownInstallation,
  undo,
} from "../../renderer/state/document-store.ts";
import { forgetAnswers, receiveAnswers, showFindingsOf } from "../../renderer/state/findings-store.ts";
import { applyFix, fixStore, type JudgeFixes, keyOfFix } from "../../renderer/state/fixes.ts";
import { placeEnclosure } from "../../renderer/state/placing.ts";
import { startProposed } from "../../renderer/state/shown-state.ts";
import type { AnswersMessage, PreviewResult } from "../../shared-model/analysis/protocol.ts";
import type { Finding, Fix, ScopeKey } from "../../shared-model/answers/finding.ts";
import { LONGEST_TITLE } from "../../shared-model/lib/shorten.ts";

const GOOD: PreviewResult = { introduces: [], repairs: 1, unprotects: [] };

beforeEach(() => {
  openDocument(newDocument());
  forgetAnswers();
  placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });
  startProposed();
});

const firstBox = () => {
  const [box] = Object.values(shownInstallation().enclosures);
  if (box === undefined) throw new Error("No box.");
  return box;
};

const rename = (name: string, title = "Call it by its right name"): Fix => ({
  title,
  call: {
    command: "rename-item",
    args: { state: "proposed", item: { kind: "enclosure", id: firstBox().id }, name },
  },
});

const finding = (fix: Fix, offers?: readonly Fix[]): Finding => ({
  key: "wrong-name B1",
  rule: "wrong-name",
  severity: "violation",
  status: "draft",
  state: "proposed",
  subjects: [],
  message: "B1 has the wrong name.",
  numbers: {},
  folded: 0,
  foldedSubjects: [],
  fix,
  ...(offers && { offers }),
});

const judge =
  (...results: readonly (PreviewResult | undefined)[]): JudgeFixes =>
  async () =>
    results;

const why = (about: Finding, fix: Fix) => fixStore.get().withdrawn.get(keyOfFix(about, fix));

test("a fix that nothing speaks against is applied as one step of its own name", async () => {
  const fix = rename("Attic");
  expect(await applyFix(finding(fix), fix, judge(GOOD))).toBe(true);
  expect(firstBox().name).toBe("Attic");
  expect(nextUndo(documentStore.get())).toBe(fix.title);
  expect(fixStore.get().done).toBe(fix.title);
  undo();
  expect(firstBox().name).toBe("B1");
  expect(fixStore.get().done).toBeUndefined();
});

test("a fix whose name is longer than a step may have is applied under as much of it as fits", async () => {
  const title = `${"Join H1 in connectors listed for aluminium with copper, ".repeat(4)}and look`;
  const fix = rename("Attic", title);
  expect(await applyFix(finding(fix), fix, judge(GOOD))).toBe(true);
  expect(firstBox().name).toBe("Attic");
  const named = nextUndo(documentStore.get()) ?? "";
  expect(named.length).toBeLessThanOrEqual(LONGEST_TITLE);
  expect(title.startsWith(named.slice(0, -1))).toBe(true);
  expect(named.endsWith("…")).toBe(true);
});

test("what was mended is kept with what it was about, until the next change", async () => {
  const fix = rename("Attic");
  const subjects = [{ kind: "enclosure", id: firstBox().id, name: "B1" }] as const;
  await applyFix({ ...finding(fix), subjects }, fix, judge(GOOD));
  expect(fixStore.get().doneAbout).toEqual(subjects);
  undo();
  expect(fixStore.get().doneAbout).toEqual([]);
});

test("an objection withdraws it with the reason, until the drawing changes", async () => {
  const fix = rename("Attic");
  const about = finding(fix);
  const objection = "It would leave R5 without ground-fault protection.";
  expect(await applyFix(about, fix, judge({ ...GOOD, objection }))).toBe(false);
  expect(firstBox().name).toBe("B1");
  expect(why(about, fix)).toBe(objection);
  dispatch({ command: "set-edition", args: { edition: 2017 } });
  expect(why(about, fix)).toBeUndefined();
});

test("a refusal by the trial, or by the command itself, withdraws it", async () => {
  const fix = rename("Attic");
  await applyFix(finding(fix), fix, judge({ refused: "There is no such box." }));
  expect(why(finding(fix), fix)).toBe("There is no such box.");
  const empty = rename("");
  expect(await applyFix(finding(empty), empty, judge(GOOD))).toBe(false);
  expect(why(finding(empty), empty)).toMatch(/name/);
});

test("without an answer of the checks nothing is applied", async () => {
  const fix = rename("Attic");
  expect(await applyFix(finding(fix), fix, judge(undefined))).toBe(false);
  expect(firstBox().name).toBe("B1");
  expect(why(finding(fix), fix)).toMatch(/did not answer/);
});

test("the offer that was pressed is judged by its own answer", async () => {
  const [fix, offer] = [rename("Attic"), rename("Cellar", "Call it Cellar")];
  const about = finding(fix, [offer]);
  expect(await applyFix(about, offer, judge({ ...GOOD, objection: "Not this one." }, GOOD))).toBe(true);
  expect(firstBox().name).toBe("Cellar");
});

test("when the drawing moved on during the trial, the fix is tried again on the drawing as it is then", async () => {
  const fix = rename("Attic");
  const about = finding(fix);
  let trials = 0;
  const moving: JudgeFixes = async () => {
    trials += 1;
    if (trials === 1) {
      dispatch({ command: "set-edition", args: { edition: 2017 } });
      receiveAnswers(answersWith(about));
      return [{ ...GOOD, objection: "Said about the drawing before." }];
    }
    return [GOOD];
  };
  showFindingsOf("proposed");
  expect(await applyFix(about, fix, moving)).toBe(true);
  expect(trials).toBe(2);
  expect(firstBox().name).toBe("Attic");
});

/** The checks say one thing about proposed, and nothing about as found. */
function answersWith(only: Finding): AnswersMessage {
  const none = { removed: [], ledgers: {}, roles: {}, outlets: {}, checksRun: 1, whole: true };
  return {
    type: "answers",
    revision: documentStore.get().revision,
    states: ["as-found", "proposed"],
    changed: [
      { ...none, state: "as-found", scopes: [] },
      {
        ...none,
        state: "proposed",
        scopes: [{ key: "section:1" as ScopeKey, answers: { findings: [only], couldNotTell: [] } }],
      },
    ],
    tookMs: 1,
  };
}

test("when the drawing moved on during the trial and the finding is gone, nothing is applied", async () => {
  const fix = rename("Attic");
  const moving: JudgeFixes = async () => {
    dispatch({ command: "set-edition", args: { edition: 2017 } });
    return [GOOD];
  };
  expect(await applyFix(finding(fix), fix, moving)).toBe(false);
  expect(firstBox().name).toBe("B1");
  expect(why(finding(fix), fix)).toMatch(/changed meanwhile/);
});

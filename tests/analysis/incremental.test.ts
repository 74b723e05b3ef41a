import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { type Answers, openSession, type Session } from "../../shared-model/analysis/session.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { drawing, laundryAsFound } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 600 : 60;
const STEPS = 40;

/** Everything that a window would hold after the messages so far, keyed so that two can be compared. */
class Kept {
  private readonly scopes = new Map<string, unknown>();
  private readonly tables = {
    ledgers: new Map<string, unknown>(),
    roles: new Map<string, unknown>(),
    outlets: new Map<string, unknown>(),
  };
  private checksRun = 0;

  receive(message: Answers): void {
    if (message.whole) for (const table of [this.scopes, ...Object.values(this.tables)]) table.clear();
    this.checksRun = message.checksRun;
    for (const key of message.removed) this.scopes.delete(key);
    for (const { key, answers } of message.scopes) this.scopes.set(key, answers);
    for (const name of ["ledgers", "roles", "outlets"] as const) {
      for (const [id, value] of Object.entries(message[name])) {
        if (value === null) this.tables[name].delete(id);
        else this.tables[name].set(id, value);
      }
    }
  }

  contents(): unknown {
    const { checksRun, scopes, tables } = this;
    return structuredClone({ checksRun, scopes, ...tables });
  }
}

const fromScratch = (project: Project): { kept: unknown; session: Session } => {
  // Solver and rules keep answers by identity: a copy shares none of them.
  const session = openSession(structuredClone(project), { state: "as-found" });
  const kept = new Kept();
  kept.receive(session.answers(0));
  return { kept: kept.contents(), session };
};

let edits = 0;
const ruleIds = new Set<string>();

function checkSequence(start: Project, steps: readonly RandomStep[]): void {
  let project = start;
  const session = openSession(structuredClone(start), { state: "as-found" });
  const kept = new Kept();
  kept.receive(session.answers(0));
  steps.forEach((step, index) => {
    const done = runCommand(project, callOf(project, step, index));
    if (!done.ok || done.patches.length === 0) return;
    project = done.project;
    kept.receive(structuredClone(session.applyPatches(structuredClone(done.patches), index)));
    edits++;
    const fresh = fromScratch(project);
    expect(kept.contents()).toEqual(fresh.kept);
    const report = session.report();
    expect(report).toEqual(fresh.session.report());
    for (const finding of report.findings) ruleIds.add(finding.rule);
  });
}

test("checking edit by edit gives the answers of checking the whole from scratch: an empty drawing", () => {
  fc.assert(
    fc.property(randomSteps(STEPS), (steps) => checkSequence(drawing().project, steps)),
    { numRuns: RUNS / 2 },
  );
}, 600_000);

test("checking edit by edit gives the answers of checking the whole from scratch: the laundry circuit", () => {
  fc.assert(
    fc.property(randomSteps(STEPS), (steps) => checkSequence(laundryAsFound(), steps)),
    { numRuns: RUNS },
  );
}, 600_000);

afterAll(() => {
  // The laws above say nothing unless the drawings were edited and were wrong in many ways.
  expect(edits).toBeGreaterThan(RUNS * 5);
  expect([...ruleIds].sort()).toEqual(
    expect.arrayContaining(["box-overfull", "outlet-not-protected", "splice-over-capacity", "open-neutral"]),
  );
  expect(ruleIds).not.toContain("internal-error");
});

import fc from "fast-check";
import type { Patch } from "immer";
import { afterAll, expect, test } from "vitest";
import type { StateAnswers } from "../../shared-model/analysis/protocol.ts";
import { type Answers, openSession, type Session } from "../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { applyPatches, type Edit, runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { boxId, deviceId, drawing, jumperId, laundryAsFound, laundryDrawing } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { withRoom } from "../same-seed.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 600 : 60;
/** Both states at once take twice as long. */
const RUNS_OF_BOTH = LONG ? 300 : 60;
const STEPS = 40;

/** Everything that a window would hold of one state after the messages so far. */
class KeptOfState {
  private readonly scopes = new Map<string, unknown>();
  private readonly tables = {
    ledgers: new Map<string, unknown>(),
    roles: new Map<string, unknown>(),
    outlets: new Map<string, unknown>(),
  };
  private checksRun = 0;

  receive(answers: StateAnswers): void {
    if (answers.whole) for (const table of [this.scopes, ...Object.values(this.tables)]) table.clear();
    this.checksRun = answers.checksRun;
    for (const key of answers.removed) this.scopes.delete(key);
    for (const scope of answers.scopes) this.scopes.set(scope.key, scope.answers);
    for (const name of ["ledgers", "roles", "outlets"] as const) {
      for (const [id, value] of Object.entries(answers[name])) {
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

/** The same of both states. */
class Kept {
  private readonly states = new Map<StateName, KeptOfState>();

  receive(message: Answers): void {
    for (const state of this.states.keys()) if (!message.states.includes(state)) this.states.delete(state);
    for (const state of message.states) if (!this.states.has(state)) this.states.set(state, new KeptOfState());
    for (const answers of message.changed) this.states.get(answers.state)?.receive(answers);
  }

  contents(): unknown {
    return new Map([...this.states].map(([state, kept]) => [state, kept.contents()]));
  }
}

const fromScratch = (project: Project): { kept: unknown; session: Session } => {
  // Solver and rules keep answers by identity: a copy shares none of them.
  const session = openSession(structuredClone(project));
  const kept = new Kept();
  kept.receive(session.answers(0));
  return { kept: kept.contents(), session };
};

let edits = 0;
/** Edits of a document that had proposed before and after, by the states that were told of. */
const edited = { "as-found": 0, proposed: 0, both: 0, neither: 0 };
const ruleIds = new Set<string>();
const standings = new Set<string>();

/** A document that a window edits and a session follows. */
class Followed {
  project: Project;
  private readonly session: Session;
  private readonly kept = new Kept();
  private revision = 0;

  constructor(start: Project) {
    this.project = start;
    this.session = openSession(structuredClone(start));
    this.kept.receive(this.session.answers(0));
  }

  run(call: CommandCall): Edit | undefined {
    const done = runCommand(this.project, call);
    if (!done.ok || done.patches.length === 0) return undefined;
    this.follow(done.project, done.patches);
    return done;
  }

  /** How a finding of proposed stands. */
  standingOf(key: string): string | undefined {
    return this.session.report("proposed").findings.find((finding) => finding.key === key)?.standing;
  }

  /** Runs a command on as found alone, as when an edit is held back. */
  runApart(call: CommandCall): void {
    const { proposed: _proposed, ...apart } = this.project;
    const done = runCommand(apart, call);
    if (done.ok && done.patches.length > 0) this.follow(applyPatches(this.project, done.patches), done.patches);
  }

  follow(project: Project, patches: Edit["patches"]): void {
    const wasProposed = this.project.proposed !== undefined;
    this.project = project;
    const message = structuredClone(this.session.applyPatches(structuredClone(patches), this.revision++));
    this.kept.receive(message);
    edits++;
    if (wasProposed && project.proposed !== undefined) {
      const [only, ...others] = message.changed;
      edited[others.length > 0 ? "both" : (only?.state ?? "neither")]++;
    }
    const fresh = fromScratch(project);
    expect(this.kept.contents()).toEqual(fresh.kept);
    for (const state of fresh.session.states) {
      const report = this.session.report(state);
      expect(report).toEqual(fresh.session.report(state));
      for (const { rule, standing } of report.findings) {
        ruleIds.add(rule);
        if (standing !== undefined) standings.add(standing);
      }
    }
  }
}

function checkSequence(start: Project, steps: readonly RandomStep[]): void {
  const document = new Followed(start);
  steps.forEach((step, index) => {
    document.run(callOf(document.project, step, index));
  });
}

test("checking edit by edit gives the answers of checking the whole from scratch: an empty drawing", {
  timeout: withRoom(600_000),
}, () => {
  fc.assert(
    fc.property(randomSteps(STEPS), (steps) => checkSequence(drawing().project, steps)),
    { numRuns: RUNS / 2 },
  );
});

test("checking edit by edit gives the answers of checking the whole from scratch: the laundry circuit", {
  timeout: withRoom(600_000),
}, () => {
  fc.assert(
    fc.property(randomSteps(STEPS), (steps) => checkSequence(laundryAsFound(), steps)),
    { numRuns: RUNS },
  );
});

const OF_BOTH: ReadonlySet<string> = new Set(["start-proposed", "reset-proposed", "discard-proposed"]);

/** What a person does to proposed as a whole, between edits of either state; the numbers pick whom. */
const ofProposed = fc.record({
  what: fc.constantFrom("start", "start", "reset", "reset box", "discard", "replace", "undo" as const),
  seed: fc.nat(),
});

function callOnProposed(project: Project, what: string, seed: number, index: number): CommandCall | undefined {
  const { proposed } = project;
  if (proposed === undefined) return { command: "start-proposed", args: {} };
  const boxes = Object.values(proposed.enclosures);
  const devices = boxes.flatMap((box) => (box.kind === "box" ? Object.values(box.devices) : []));
  const device = devices[seed % Math.max(1, devices.length)];
  if (what === "replace" && device !== undefined) {
    const type = ["gfci-receptacle-15", "receptacle-tr-15", device.type][seed % 3];
    const args = { state: "proposed", device: device.id, id: `new-${index}`, type, name: `New ${index}` };
    return { command: "replace-device", args };
  }
  if (what === "reset") return { command: "reset-proposed", args: {} };
  const enclosure = boxes[seed % Math.max(1, boxes.length)]?.id;
  if (what === "reset box" && enclosure !== undefined) return { command: "reset-proposed", args: { enclosure } };
  return what === "discard" ? { command: "discard-proposed", args: {} } : undefined;
}

test("and of both states as they stand to each other, through starting, resetting, replacing, discarding, undoing", {
  timeout: withRoom(600_000),
}, () => {
  fc.assert(
    fc.property(randomSteps(STEPS), fc.array(ofProposed, { minLength: 4, maxLength: 16 }), (steps, whole) => {
      const document = new Followed(laundryAsFound());
      document.run({ command: "start-proposed", args: {} });
      const done: Edit[] = [];
      const every = Math.ceil(steps.length / whole.length);
      steps.forEach((step, index) => {
        const call = callOf(document.project, step, index);
        if (step.seed % 4 === 0 && !OF_BOTH.has(step.command)) {
          document.runApart(call);
          // Steps of before may not be taken back any more.
          done.length = 0;
        } else {
          const edit = document.run(call);
          if (edit !== undefined) done.push(edit);
        }
        const chosen = index % every === 0 ? whole[index / every] : undefined;
        if (chosen === undefined) return;
        const last = done.at(-1);
        if (chosen.what === "undo" && last !== undefined) {
          done.pop();
          document.follow(applyPatches(document.project, last.inverse), last.inverse);
          return;
        }
        const onWhole = callOnProposed(document.project, chosen.what, chosen.seed, index);
        const whatDone = onWhole && document.run(onWhole);
        if (whatDone !== undefined) done.push(whatDone);
      });
    }),
    { numRuns: RUNS_OF_BOTH },
  );
});

test("a device that replaces another does so until the other comes back, wherever, or goes as found", () => {
  const withoutGround = laundryDrawing()
    .box("B8")
    .remove({ kind: "jumper", id: jumperId("r") });
  const document = new Followed(withoutGround.project);
  const [R1, R1c] = [deviceId("R1"), deviceId("R1c")];
  const inB8: Patch["path"] = ["proposed", "enclosures", boxId("B8"), "devices", R1];
  const put = (patch: Patch) => document.follow(applyPatches(document.project, [patch]), [patch]);
  const standing = () => document.standingOf(`device-egc-missing|device:${R1c}`);
  document.run({ command: "start-proposed", args: {} });
  const args = { state: "proposed", device: R1, id: R1c, type: "receptacle-tr-15", name: "R1c" };
  document.run({ command: "replace-device", args });
  expect(standing()).toBe("inherited-touched");
  const value = { id: R1, type: "receptacle-15", name: "R1", order: 0 };
  put({ op: "add", path: inB8, value });
  expect(standing()).toBe("introduced");
  put({ op: "remove", path: inB8 });
  expect(standing()).toBe("inherited-touched");
  const items = [{ kind: "device", id: R1 }];
  document.runApart({ command: "remove-items", args: { state: "as-found", items } });
  expect(standing()).toBe("introduced");
});

afterAll(() => {
  // The laws above say nothing unless the drawings were edited and were wrong in many ways.
  expect(edits).toBeGreaterThan(RUNS * 5);
  expect([...ruleIds].sort()).toEqual(
    expect.arrayContaining(["box-overfull", "outlet-not-protected", "splice-over-capacity", "open-neutral"]),
  );
  expect(ruleIds).not.toContain("internal-error");
  expect([...standings].sort()).toEqual(["inherited", "inherited-touched", "introduced", "repaired", "stays"]);
  for (const count of Object.values(edited)) expect(count).toBeGreaterThan(RUNS_OF_BOTH / 6);
});

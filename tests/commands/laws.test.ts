import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { emptyHistory, type History, record, redo, undo } from "../../shared-model/commands/history.ts";
import { commands } from "../../shared-model/commands/registry.ts";
import { applyPatches, refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import { freezeThrough } from "../../shared-model/lib/freeze-through.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { drawing, heldBackDrawing, laundryAsFound, laundryDrawing } from "../builders/drawing.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { isFrozenThrough, sameDocument } from "./same-document.ts";
import { leftOvers } from "./sound-references.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
/** Sequences are 1 to 40 steps long, about twenty on average: some six thousand commands. */
const RUNS = LONG ? 3_300 : 330;
const STEPS = 40;

const STARTS: Readonly<Record<string, Project>> = {
  empty: freezeThrough(drawing().project),
  laundry: laundryAsFound(),
  both: freezeThrough(laundryDrawing().propose().project),
  heldBack: freezeThrough(heldBackDrawing().project),
};

const ran = new Map<string, number>();
let refused = 0;

/** Each step far from the one before, so that none merge and every step can be undone by itself. */
const FAR_APART_MS = 10_000;

function checkSequence(start: Project, steps: readonly RandomStep[]): void {
  // Frozen through and through, so that a command that wrote to what it was given would throw.
  expect(isFrozenThrough(start)).toBe(true);
  let project = start;
  let history: History = emptyHistory;
  let mirror = start;
  const states = [start];
  steps.forEach((step, index) => {
    const call = callOf(project, step, index);
    const expected = refusalOf(project, call);
    const done = runCommand(project, call);
    if (!done.ok) {
      refused++;
      expect(expected).toEqual(done.refusal);
      return;
    }
    ran.set(call.command, (ran.get(call.command) ?? 0) + 1);
    expect(expected).toBeUndefined();
    expect(invariantProblems(done.project)).toEqual([]);
    expect(leftOvers(done.project)).toEqual([]);
    // Patches cross to the worker as a structured clone.
    mirror = applyPatches(mirror, structuredClone(done.patches));
    expect(sameDocument(mirror, done.project)).toBe(true);
    if (done.patches.length === 0) expect(done.project).toBe(project);
    else states.push(done.project);
    history = record(history, done, index * FAR_APART_MS);
    project = done.project;
  });
  expect(isFrozenThrough(project)).toBe(true);
  expect(canonicalText(mirror)).toBe(canonicalText(project));
  checkTravel(project, history, states);
}

function checkTravel(end: Project, made: History, states: readonly Project[]): void {
  let project = end;
  let history = made;
  for (let index = states.length - 2; index >= 0; index--) {
    const travel = undo(history);
    if (travel === undefined) throw new Error("A step is missing.");
    project = applyPatches(project, travel.patches);
    history = travel.history;
    expect(sameDocument(project, states[index])).toBe(true);
  }
  expect(undo(history)).toBeUndefined();
  expect(canonicalText(project)).toBe(canonicalText(states[0]));
  for (let index = 1; index < states.length; index++) {
    const travel = redo(history);
    if (travel === undefined) throw new Error("A step is missing.");
    project = applyPatches(project, travel.patches);
    history = travel.history;
    expect(sameDocument(project, states[index])).toBe(true);
  }
  expect(redo(history)).toBeUndefined();
  expect(canonicalText(project)).toBe(canonicalText(end));
}

test("undo restores, redo restores, patches replay, invariants hold and a refused command changes nothing", {
  timeout: LONG ? 1_800_000 : 180_000,
}, () => {
  fc.assert(
    fc.property(fc.constantFrom(...Object.keys(STARTS)), randomSteps(STEPS), (start, steps) => {
      checkSequence(STARTS[start] ?? drawing().project, steps);
    }),
    { numRuns: RUNS },
  );
  expect(
    Object.keys(commands).filter((id) => !ran.has(id)),
    "commands that never ran",
  ).toEqual([]);
});

afterAll(() => {
  const sum = [...ran.values()].reduce((total, one) => total + one, 0);
  console.log(`random sequences: ${sum} commands ran, ${refused} were refused`);
});

import { describe, expect, test } from "vitest";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import {
  emptyHistory,
  HISTORY_LIMIT,
  type History,
  isDirty,
  MERGE_WITHIN_MS,
  markSaved,
  record,
  redo,
  redoTitle,
  undo,
  undoTitle,
} from "../../shared-model/commands/history.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId, drawing } from "../builders/drawing.ts";

interface Desk {
  readonly project: Project;
  readonly history: History;
}

const begin = (): Desk => ({ project: drawing().box("B1").box("B2").project, history: emptyHistory });

function make({ project, history }: Desk, call: TypedCall, at: number): Desk {
  const done = runCommand(project, call);
  if (!done.ok) throw new Error(done.refusal.message);
  return { project: done.project, history: record(history, done, at) };
}

function travel({ project, history }: Desk, way: typeof undo): Desk {
  const step = way(history);
  if (step === undefined) throw new Error("There is no such step.");
  return { project: applyPatches(project, step.patches), history: step.history };
}

const nudge = (x: number, box = "B1"): TypedCall => ({
  command: "move-enclosures",
  args: { moves: [{ id: boxId(box), to: { x, y: 0 } }] },
});
const rename = (name: string): TypedCall => ({
  command: "rename-item",
  args: { state: "as-found", item: { kind: "enclosure", id: boxId("B1") }, name },
});

describe("undo and redo", () => {
  test("steps are named, and go back and forth in order", () => {
    let desk = make(make(begin(), rename("L1"), 0), rename("L2"), 0);
    expect(undoTitle(desk.history)).toBe("Rename L1 to L2");
    desk = travel(desk, undo);
    expect([undoTitle(desk.history), redoTitle(desk.history)]).toEqual(["Rename B1 to L1", "Rename L1 to L2"]);
    desk = travel(desk, undo);
    expect(undo(desk.history)).toBeUndefined();
    expect(canonicalText(desk.project)).toBe(canonicalText(begin().project));
    desk = travel(travel(desk, redo), redo);
    expect(desk.project.asFound.enclosures[boxId("B1")]?.name).toBe("L2");
    expect(redo(desk.history)).toBeUndefined();
  });

  test("a new edit drops what could be redone", () => {
    const desk = make(travel(make(begin(), rename("L1"), 0), undo), rename("L3"), 0);
    expect(redo(desk.history)).toBeUndefined();
  });

  test("an edit that changes nothing is no step and leaves redo alone", () => {
    const undone = travel(make(begin(), rename("L1"), 0), undo);
    const same = make(undone, rename("B1"), 0);
    expect(same.history).toBe(undone.history);
  });

  test("a thousand steps and more are kept; the oldest go first", () => {
    let desk = begin();
    for (let step = 1; step <= HISTORY_LIMIT + 5; step++) desk = make(desk, rename(`N${step}`), step);
    expect(HISTORY_LIMIT).toBeGreaterThanOrEqual(1_000);
    expect(desk.history.past).toHaveLength(HISTORY_LIMIT);
    while (undo(desk.history) !== undefined) desk = travel(desk, undo);
    expect(desk.project.asFound.enclosures[boxId("B1")]?.name).toBe("N5");
    expect(isDirty(desk.history)).toBe(true);
  });
});

describe("like edits close together are one step", () => {
  test("nudges merge while they follow within the time, and undo takes them back together", () => {
    const start = begin();
    let desk = make(start, nudge(10), 0);
    desk = make(desk, nudge(20), MERGE_WITHIN_MS);
    desk = make(desk, nudge(30), 2 * MERGE_WITHIN_MS);
    expect(desk.history.past).toHaveLength(1);
    expect(travel(desk, undo).project.layout).toEqual(start.project.layout);
    expect(travel(travel(desk, undo), redo).project.layout.enclosures[boxId("B1")]).toEqual({ x: 30, y: 0 });
  });

  test("a pause, another box or another kind of edit begins a step", () => {
    let desk = make(begin(), nudge(10), 0);
    desk = make(desk, nudge(20), MERGE_WITHIN_MS + 1);
    desk = make(desk, nudge(20, "B2"), MERGE_WITHIN_MS + 2);
    desk = make(desk, rename("L1"), MERGE_WITHIN_MS + 3);
    desk = make(desk, rename("L2"), MERGE_WITHIN_MS + 4);
    expect(desk.history.past).toHaveLength(5);
  });

  test("an undo in between begins a step", () => {
    let desk = make(make(begin(), nudge(10), 0), rename("L1"), 1);
    desk = make(travel(desk, undo), nudge(20), 2);
    expect(desk.history.past).toHaveLength(2);
  });

  test("a saved document can be gone back to: nothing is merged into its last step", () => {
    let desk = make(begin(), nudge(10), 0);
    desk = { ...desk, history: markSaved(desk.history) };
    desk = make(desk, nudge(20), 1);
    expect(isDirty(desk.history)).toBe(true);
    desk = travel(desk, undo);
    expect(isDirty(desk.history)).toBe(false);
    expect(desk.project.layout.enclosures[boxId("B1")]).toEqual({ x: 10, y: 0 });
  });
});

describe("what no file holds", () => {
  test("a document is dirty after an edit, not after its undo, and clean once saved", () => {
    let desk = begin();
    expect(isDirty(desk.history)).toBe(false);
    desk = make(desk, rename("L1"), 0);
    expect(isDirty(desk.history)).toBe(true);
    expect(isDirty(travel(desk, undo).history)).toBe(false);
    const saved = { ...desk, history: markSaved(desk.history) };
    expect(isDirty(saved.history)).toBe(false);
    expect(isDirty(travel(saved, undo).history)).toBe(true);
    expect(isDirty(travel(travel(saved, undo), redo).history)).toBe(false);
    expect(isDirty(make(travel(saved, undo), rename("L1"), 0).history)).toBe(true);
  });

  test("a merged edit after a save that was undone to is seen", () => {
    const saved = { ...begin(), history: markSaved(begin().history) };
    expect(isDirty(make(make(saved, nudge(10), 0), nudge(20), 1).history)).toBe(true);
  });
});

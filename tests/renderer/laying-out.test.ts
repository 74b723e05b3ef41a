/** Layouts that take long: in slices, with a way out, and one step in the end. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { layOutAll } from "../../renderer/state/arranging.ts";
import {
  dispatch,
  documentStore,
  newDocument,
  nextUndo,
  openDocument,
  undo,
} from "../../renderer/state/document-store.ts";
import { cancelLayOut, layingOutStore, layOut } from "../../renderer/state/laying-out.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import type { BoxMove } from "../../shared-model/geometry/arrange.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { bigHouse } from "../bench/big-house.ts";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  openDocument({ project: bigHouse(6, 3) });
});
afterEach(() => {
  cancelLayOut();
  vi.useRealTimers();
  vi.restoreAllMocks();
});

const MOVES: readonly BoxMove[] = [{ id: "b0" as EnclosureId, to: { x: 160, y: 320 } }];

/** A layout whose every step takes some milliseconds of the clock that the slices look at. */
function slowly(steps: number, ms: number) {
  const begun: number[] = [];
  const ended = vi.fn();
  function* begin() {
    begun.push(begun.length);
    for (let done = 1; done <= steps; done++) {
      clock += ms;
      yield { done, of: steps };
    }
    return MOVES;
  }
  return { begun, ended, layout: { title: "Lay out everything", begin, end: ended } };
}

let clock = 0;
beforeEach(() => {
  clock = 0;
  vi.spyOn(performance, "now").mockImplementation(() => clock);
});

test("what is quick is done at once, and nobody is told", () => {
  const { ended, layout } = slowly(3, 5);
  layOut(layout);
  expect(ended).toHaveBeenCalledExactlyOnceWith(MOVES);
  expect(layingOutStore.get().running).toBeUndefined();
});

test("what is long goes on in slices and tells how far it is; the window has its turn between them", () => {
  const { ended, layout } = slowly(100, 5);
  layOut(layout);
  expect(ended).not.toHaveBeenCalled();
  const shown: number[] = [];
  while (layingOutStore.get().running !== undefined) {
    shown.push(layingOutStore.get().running?.progress.done ?? 0);
    const before = clock;
    vi.advanceTimersToNextTimer();
    expect(clock - before).toBeLessThan(30);
  }
  expect(shown.length).toBeGreaterThan(20);
  expect(shown).toEqual([...shown].sort((a, b) => a - b));
  expect(ended).toHaveBeenCalledExactlyOnceWith(MOVES);
});

test("a cancelled layout leaves no trace, and says so", () => {
  const before = documentStore.get();
  const { ended, layout } = slowly(100, 5);
  layOut(layout);
  expect(cancelLayOut()).toBe(true);
  vi.runAllTimers();
  expect(ended).not.toHaveBeenCalled();
  expect(documentStore.get()).toBe(before);
  expect(sessionStore.get().notice?.title).toBe("Cancelled: Lay out everything");
  expect(cancelLayOut()).toBe(false);
});

test("an edit on the way begins it anew from what is there now; another document ends it", () => {
  const first = slowly(100, 5);
  layOut(first.layout);
  vi.advanceTimersToNextTimer();
  expect(dispatch({ command: "move-enclosures", args: { moves: MOVES } }).ok).toBe(true);
  vi.runAllTimers();
  expect(first.begun).toHaveLength(2);
  expect(first.ended).toHaveBeenCalledOnce();
  const second = slowly(100, 5);
  layOut(second.layout);
  openDocument(newDocument());
  vi.runAllTimers();
  expect(second.ended).not.toHaveBeenCalled();
  expect(layingOutStore.get().running).toBeUndefined();
});

test("of two layouts the later counts", () => {
  const first = slowly(100, 5);
  const second = slowly(100, 5);
  layOut(first.layout);
  layOut(second.layout);
  vi.runAllTimers();
  expect(first.ended).not.toHaveBeenCalled();
  expect(second.ended).toHaveBeenCalledOnce();
});

test("laying out everything is one step, and undo brings every place back", () => {
  const { layout } = documentStore.get().project;
  layOutAll();
  vi.runAllTimers();
  expect(documentStore.get().project.layout).not.toEqual(layout);
  expect(nextUndo(documentStore.get())).toBe("Lay out everything");
  undo();
  expect(documentStore.get().project.layout).toEqual(layout);
});

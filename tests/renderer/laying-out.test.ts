/** Layouts are worked out elsewhere: the window asks, tells how far it is, has a way out, and takes one step in the end. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { arrangeBoxes } from "../../renderer/state/arranging.ts";
import {
  dispatch,
  documentStore,
  newDocument,
  nextUndo,
  openDocument,
  undo,
} from "../../renderer/state/document-store.ts";
import { arrangeBy, cancelLayOut, layingOutStore } from "../../renderer/state/laying-out.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import type { ArrangedMove, ArrangeProgress, ArrangeWhat } from "../../shared-model/analysis/protocol.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import { bigHouse } from "../bench/big-house.ts";

/** What the stand-in for the worker was asked; the test answers. */
interface Asked {
  readonly what: ArrangeWhat;
  readonly tell: (progress: ArrangeProgress) => void;
  readonly answer: (moves: readonly ArrangedMove[] | undefined) => Promise<void>;
  stopped: boolean;
}

let asked: Asked[];
const last = (): Asked => {
  const one = asked.at(-1);
  if (one === undefined) throw new Error("Nothing was asked.");
  return one;
};
const box = (id: string) => id as EnclosureId;
const B0: readonly ArrangedMove[] = [{ id: box("b0"), to: { x: 160, y: 320 } }];
const TITLE = "Arrange the drawing by circuit";
const begin = (): void => arrangeBoxes(TITLE, "by-circuit");

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  asked = [];
  arrangeBy((_state, what, tell) => {
    let done: (moves: readonly ArrangedMove[] | undefined) => void = () => {};
    const moves = new Promise<readonly ArrangedMove[] | undefined>((resolve) => {
      done = resolve;
    });
    const one: Asked = {
      what,
      tell,
      stopped: false,
      async answer(given) {
        done(given);
        await vi.advanceTimersByTimeAsync(0);
      },
    };
    asked.push(one);
    return {
      moves,
      stop() {
        one.stopped = true;
        done(undefined);
      },
    };
  });
  openDocument({ project: bigHouse(6, 3) });
});
afterEach(() => {
  cancelLayOut();
  vi.useRealTimers();
});

test("what is quick is done without a word, as one step; undo brings every place back", async () => {
  const { layout } = documentStore.get().project;
  begin();
  await last().answer(B0);
  expect(layingOutStore.get().running).toBeUndefined();
  expect(documentStore.get().project.layout.enclosures[box("b0")]).toEqual({ x: 160, y: 320 });
  expect(nextUndo(documentStore.get())).toBe(TITLE);
  undo();
  expect(documentStore.get().project.layout).toEqual(layout);
});

test("the worker is told what was drawn and what is asked for", () => {
  const { project } = documentStore.get();
  const { bounds } = boxDrawing(project, project.asFound, box("b1"));
  arrangeBoxes("Some", "by-room", [box("b1"), box("b2")]);
  const { order, only, sizes, places } = last().what;
  expect([order, only, places]).toEqual(["by-room", ["b1", "b2"], {}]);
  expect(sizes).toContainEqual(["b1", bounds.x, bounds.y, bounds.width, bounds.height]);
});

test("what is long is told, and how far it is never goes back", () => {
  begin();
  expect(layingOutStore.get().running).toBeUndefined();
  vi.advanceTimersByTime(1000);
  expect(layingOutStore.get().running?.title).toBe(TITLE);
  last().tell({ done: 4, of: 6 });
  last().tell({ done: 2, of: 6 });
  expect(layingOutStore.get().running?.progress).toEqual({ done: 4, of: 6 });
});

test("a cancelled layout leaves no trace, and says so; the worker is told", async () => {
  const before = documentStore.get();
  begin();
  vi.advanceTimersByTime(1000);
  expect(cancelLayOut()).toBe(true);
  expect(last().stopped).toBe(true);
  await last().answer(B0);
  expect(documentStore.get()).toBe(before);
  expect(sessionStore.get().notice?.title).toBe(`Cancelled: ${TITLE}`);
  expect(cancelLayOut()).toBe(false);
});

test("an edit on the way has it asked anew from what is there now; another document ends it", async () => {
  begin();
  const moves = [{ id: box("b1"), to: { x: 0, y: 16 } }];
  expect(dispatch({ command: "move-enclosures", args: { moves } }).ok).toBe(true);
  await last().answer(B0);
  expect(asked).toHaveLength(2);
  expect(documentStore.get().project.layout.enclosures[box("b0")]).not.toEqual({ x: 160, y: 320 });
  await last().answer(B0);
  expect(documentStore.get().project.layout.enclosures[box("b0")]).toEqual({ x: 160, y: 320 });
  begin();
  openDocument(newDocument());
  expect(last().stopped).toBe(true);
  await last().answer(B0);
  expect(layingOutStore.get().running).toBeUndefined();
  expect(nextUndo(documentStore.get())).toBeUndefined();
});

test("of two layouts the later counts", async () => {
  begin();
  const [first] = asked;
  arrangeBoxes("Later", "by-room");
  expect(first?.stopped).toBe(true);
  await first?.answer([{ id: box("b1"), to: { x: 16, y: 16 } }]);
  await last().answer(B0);
  expect(nextUndo(documentStore.get())).toBe("Later");
  expect(documentStore.get().project.layout.enclosures[box("b1")]).not.toEqual({ x: 16, y: 16 });
});

test("where nobody answers it is said, and nothing moves", async () => {
  const before = documentStore.get();
  begin();
  await last().answer(undefined);
  expect(sessionStore.get().notice?.title).toBe(`Not done: ${TITLE}`);
  expect(documentStore.get()).toBe(before);
});

test("bends go along where both boxes go the same way, and are straightened where not, in the same step", async () => {
  const bend = (cable: string) =>
    dispatch({ command: "bend-cable", args: { cable: cable as CableId, bends: [{ x: 800, y: 400 }] } });
  expect([bend("c1").ok, bend("c2").ok]).toEqual([true, true]);
  const { enclosures } = documentStore.get().project.layout;
  const by = (id: string, dx: number, dy: number): ArrangedMove => {
    const at = enclosures[box(id)] ?? { x: 0, y: 0 };
    return { id: box(id), to: { x: at.x + dx, y: at.y + dy } };
  };
  begin();
  await last().answer([by("b0", 32, 48), by("b1", 32, 48), by("b2", 0, 160)]);
  const { cables } = documentStore.get().project.layout;
  expect(cables).toEqual({ c1: [{ x: 832, y: 448 }] });
  undo();
  expect(Object.keys(documentStore.get().project.layout.cables)).toEqual(["c1", "c2"]);
});

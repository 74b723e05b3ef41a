import { afterEach, beforeEach, expect, test, vi } from "vitest";

type Frame = (time: number) => void;

let frames: Frame[] = [];

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "performance"] });
  vi.resetModules();
  frames = [];
  vi.stubGlobal("requestAnimationFrame", (frame: Frame) => frames.push(frame));
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const afterPaint = async () => (await import("../../renderer/platform/after-paint.ts")).afterPaint;

/** The browser paints, and does what waits for the painted frame. */
function paint(): void {
  for (const frame of frames.splice(0)) frame(performance.now());
  vi.advanceTimersByTime(16);
}

test("each that waits has a painted frame of its own, in the order in which they came", async () => {
  const call = await afterPaint();
  const done: string[] = [];
  for (const name of ["checks", "panes", "boxes"]) call(() => done.push(name));
  expect(done).toEqual([]);
  paint();
  expect(done).toEqual(["checks"]);
  paint();
  expect(done).toEqual(["checks", "panes"]);
  // What one of them asks for comes after those that wait already.
  call(() => call(() => done.push("later")));
  paint();
  paint();
  expect(done).toEqual(["checks", "panes", "boxes"]);
  paint();
  expect(done).toEqual(["checks", "panes", "boxes", "later"]);
  paint();
  expect(done).toHaveLength(4);
});

test("in a window that is not painted nothing waits for ever, and nothing is done twice", async () => {
  const call = await afterPaint();
  const done: string[] = [];
  call(() => done.push("checks"));
  call(() => done.push("panes"));
  vi.advanceTimersByTime(499);
  expect(done).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(done).toEqual(["checks", "panes"]);
  paint();
  call(() => done.push("boxes"));
  vi.advanceTimersByTime(1000);
  expect(done).toEqual(["checks", "panes", "boxes"]);
});

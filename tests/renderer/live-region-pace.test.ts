import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { paced } from "../../renderer/panels/live-region/pace.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Times at which something was said, in milliseconds. */
function heard(hasNews: () => boolean = () => true) {
  const times: number[] = [];
  const start = performance.now();
  const pace = paced(() => {
    if (hasNews()) times.push(Math.round(performance.now() - start));
    return hasNews();
  });
  return { times, ...pace };
}

test("a run of edits is told once, when it is quiet", () => {
  const { times, changed } = heard();
  for (let edit = 0; edit < 5; edit += 1) {
    changed();
    vi.advanceTimersByTime(100);
  }
  expect(times).toEqual([]);
  vi.advanceTimersByTime(5000);
  expect(times).toEqual([900]);
});

test("two sentences are a second apart at least, and what came between is told with the second", () => {
  const { times, changed } = heard();
  changed();
  vi.advanceTimersByTime(501);
  changed();
  vi.advanceTimersByTime(400);
  changed();
  vi.advanceTimersByTime(5000);
  expect(times).toEqual([500, 1500]);
});

test("edits that never end are told of all the same, at most once a second", () => {
  const { times, changed } = heard();
  for (let edit = 0; edit < 200; edit += 1) {
    changed();
    vi.advanceTimersByTime(50);
  }
  expect(times.length).toBeGreaterThanOrEqual(2);
  for (const [at, time] of times.entries()) expect(time - (times[at - 1] ?? -1000)).toBeGreaterThanOrEqual(1000);
});

test("where there was nothing to say nothing is put off, and an ended pace is silent", () => {
  let news = false;
  const { times, changed, stop } = heard(() => news);
  changed();
  vi.advanceTimersByTime(600);
  news = true;
  changed();
  vi.advanceTimersByTime(600);
  expect(times).toEqual([1100]);
  changed();
  stop();
  vi.advanceTimersByTime(5000);
  expect(times).toEqual([1100]);
});

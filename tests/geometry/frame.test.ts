import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { StandingBox } from "../../shared-model/geometry/arrange.ts";
import { afterFrame, boxesInFrame, frameBetween } from "../../shared-model/geometry/frame.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";

const ids = (...names: readonly string[]) => names as readonly EnclosureId[];
const BOXES: readonly StandingBox[] = [
  { id: "a" as EnclosureId, rect: { x: 0, y: 0, width: 100, height: 100 } },
  { id: "b" as EnclosureId, rect: { x: 200, y: 0, width: 100, height: 100 } },
  { id: "c" as EnclosureId, rect: { x: 0, y: 200, width: 100, height: 100 } },
];

test("a frame is the same whichever corner it was drawn from", () => {
  const corners = [
    { x: 10, y: 20 },
    { x: 110, y: 70 },
  ] as const;
  const frame = { x: 10, y: 20, width: 100, height: 50 };
  expect(frameBetween(corners[0], corners[1])).toEqual(frame);
  expect(frameBetween(corners[1], corners[0])).toEqual(frame);
  expect(frameBetween({ x: 10, y: 70 }, { x: 110, y: 20 })).toEqual(frame);
});

describe("boxes in a frame", () => {
  const frame = { x: -10, y: -10, width: 260, height: 120 };
  test("touched: any part counts, an edge alone does not", () => {
    expect(boxesInFrame(frame, BOXES, "touched")).toEqual(ids("a", "b"));
    expect(boxesInFrame({ x: 100, y: 0, width: 100, height: 100 }, BOXES, "touched")).toEqual([]);
    expect(boxesInFrame({ x: 99, y: 0, width: 102, height: 100 }, BOXES, "touched")).toEqual(ids("a", "b"));
  });
  test("within: only whole boxes, their edges on the frame included", () => {
    expect(boxesInFrame(frame, BOXES, "within")).toEqual(ids("a"));
    expect(boxesInFrame({ x: 0, y: 0, width: 300, height: 100 }, BOXES, "within")).toEqual(ids("a", "b"));
    expect(boxesInFrame({ x: 0, y: 0, width: 299, height: 100 }, BOXES, "within")).toEqual(ids("a"));
  });
  test("what is within is touched too", () => {
    const side = fc.integer({ min: -50, max: 350 });
    fc.assert(
      fc.property(side, side, side, side, (x, y, u, v) => {
        const drawn = frameBetween({ x, y }, { x: u, y: v });
        const touched = boxesInFrame(drawn, BOXES, "touched");
        for (const id of boxesInFrame(drawn, BOXES, "within")) expect(touched).toContain(id);
      }),
    );
  });
});

test("framed boxes join once, after those that were first, or leave", () => {
  expect(afterFrame(ids("c", "a"), ids("a", "b"), "add")).toEqual(ids("c", "a", "b"));
  expect(afterFrame(ids("c", "a"), ids("a", "b"), "take-out")).toEqual(ids("c"));
});

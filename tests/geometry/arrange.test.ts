import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ALIGNMENTS, align, type BoxMove, distribute, type StandingBox } from "../../shared-model/geometry/arrange.ts";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { snapMove } from "../../shared-model/geometry/snap.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";

const box = (id: string, x: number, y: number, width = 100, height = 80): StandingBox => ({
  id: id as EnclosureId,
  rect: { x, y, width, height },
});

const place = (boxes: readonly StandingBox[], moves: readonly BoxMove[]): readonly StandingBox[] =>
  boxes.map((each) => {
    const move = moves.find(({ id }) => id === each.id);
    return move === undefined ? each : { id: each.id, rect: { ...each.rect, ...move.to } };
  });

const anyBoxes = fc
  .array(
    fc.record({
      x: fc.integer({ min: -2000, max: 2000 }),
      y: fc.integer({ min: -2000, max: 2000 }),
      width: fc.integer({ min: 10, max: 900 }),
      height: fc.integer({ min: 10, max: 900 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((rects) => rects.map((rect, index) => ({ id: `b${index}` as EnclosureId, rect })));

const LINES: Readonly<Record<(typeof ALIGNMENTS)[number], (rect: Rect) => number>> = {
  left: ({ x }) => x,
  right: ({ x, width }) => x + width,
  top: ({ y }) => y,
  bottom: ({ y, height }) => y + height,
  "middles-upright": ({ x, width }) => x + width / 2,
  "middles-level": ({ y, height }) => y + height / 2,
};

describe("align", () => {
  test("three boxes by hand", () => {
    const boxes = [box("a", 0, 0), box("b", 40, 300, 60), box("c", -20, 600)];
    expect(align(boxes, "left")).toEqual([
      { id: "a", to: { x: -20, y: 0 } },
      { id: "b", to: { x: -20, y: 300 } },
    ]);
    expect(align(boxes, "right")).toEqual([{ id: "c", to: { x: 0, y: 600 } }]);
    expect(align(boxes, "middles-upright")).toEqual([
      { id: "a", to: { x: -10, y: 0 } },
      { id: "b", to: { x: 10, y: 300 } },
      { id: "c", to: { x: -10, y: 600 } },
    ]);
    expect(align(boxes, "bottom")).toEqual([
      { id: "a", to: { x: 0, y: 600 } },
      { id: "b", to: { x: 40, y: 600 } },
    ]);
  });

  test.each(ALIGNMENTS)("%s: all on one line, the other axis untouched, a second time nothing moves", (how) => {
    fc.assert(
      fc.property(anyBoxes, (boxes) => {
        const after = place(boxes, align(boxes, how));
        const lines = after.map(({ rect }) => LINES[how](rect));
        // A middle of whole units may lie half a unit off.
        if (boxes.length > 1) expect(Math.max(...lines) - Math.min(...lines)).toBeLessThanOrEqual(1);
        const upright = how === "left" || how === "right" || how === "middles-upright";
        after.forEach(({ rect }, i) => {
          const before = boxes[i]?.rect;
          expect(upright ? rect.y : rect.x).toBe(upright ? before?.y : before?.x);
        });
        if (!how.startsWith("middles")) expect(align(after, how)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe("distribute", () => {
  test("the middle of three goes half way, by gaps and not by middles", () => {
    const boxes = [box("a", 0, 0, 100), box("b", 110, 7, 200), box("c", 700, 0, 100)];
    expect(distribute(boxes, "across")).toEqual([{ id: "b", to: { x: 300, y: 7 } }]);
    expect(distribute(boxes, "down").map(({ id }) => id)).toContain("c");
  });

  test("two have nothing to share, and boxes of one place fall into the order of their ids", () => {
    expect(distribute([box("a", 0, 0), box("b", 500, 0)], "across")).toEqual([]);
    const moves = distribute([box("c", 0, 0), box("a", 0, 0), box("b", 0, 0)], "across");
    expect(moves.map(({ id, to }) => [id, to.x])).toEqual([
      ["c", 328],
      ["b", 164],
    ]);
  });

  test.each(["across", "down"] as const)("%s: no two overlap on the axis, and the first stays", (axis) => {
    fc.assert(
      fc.property(anyBoxes, (boxes) => {
        const after = place(boxes, distribute(boxes, axis));
        if (boxes.length < 3) return;
        const spans = after
          .map(({ rect }) => (axis === "across" ? [rect.x, rect.x + rect.width] : [rect.y, rect.y + rect.height]))
          .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
        const first = Math.min(...boxes.map(({ rect }) => (axis === "across" ? rect.x : rect.y)));
        expect(spans[0]?.[0]).toBe(first);
        // Whole units: a gap of nothing may be short by one.
        spans.slice(1).forEach(([from], i) => {
          expect((from ?? 0) - (spans[i]?.[1] ?? 0)).toBeGreaterThanOrEqual(-1);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe("snap", () => {
  const still: Rect = { x: 1000, y: 500, width: 300, height: 200 };
  const held: Rect = { x: 0, y: 0, width: 160, height: 160 };

  test("an edge comes onto the edge of a neighbour, with a line along both", () => {
    const { by, guides } = snapMove(held, { x: 1005, y: 48 }, [still], 8);
    expect(by).toEqual({ x: 1000, y: 48 });
    expect(guides).toEqual([{ axis: "x", at: 1000, from: 48, to: 700 }]);
  });

  test("the nearest line wins, right edges and middles too", () => {
    expect(snapMove(held, { x: 1137, y: 48 }, [still], 8).by.x).toBe(1140);
    expect(snapMove(held, { x: 1072, y: 48 }, [still], 8).by.x).toBe(1070);
    expect(snapMove(held, { x: 848, y: 345 }, [still], 8).by).toEqual({ x: 840, y: 340 });
  });

  test("out of reach it falls onto the pitch of 16, from wherever it began", () => {
    expect(snapMove({ ...held, x: 3, y: -5 }, { x: 100, y: 100 }, [still], 8)).toEqual({
      by: { x: 93, y: 101 },
      guides: [],
      gaps: [],
    });
  });

  test("never further than the reach, or half the pitch", () => {
    fc.assert(
      fc.property(
        anyBoxes,
        fc.integer({ min: -3000, max: 3000 }),
        fc.integer({ min: 0, max: 40 }),
        (boxes, x, reach) => {
          const [first, ...others] = boxes.map(({ rect }) => rect);
          if (first === undefined) return;
          const { by, guides } = snapMove(first, { x, y: 0 }, others, reach);
          expect(Math.abs(by.x - x)).toBeLessThanOrEqual(Math.max(reach + 0.5, 8));
          for (const { from, to } of guides) expect(to - from).toBeGreaterThan(0);
        },
      ),
      { numRuns: 200 },
    );
  });
});

import { expect, test } from "vitest";
import { boundsOfMarks } from "../../shared-model/sheets/mark-bounds.ts";
import { circle, group, rect } from "../../shared-model/sheets/marks.ts";
import { pathBounds, readPath } from "../../shared-model/sheets/path-data.ts";

test("steps are read with their numbers, written in any of the ways of SVG", () => {
  expect(readPath("M1-2l.5.5 3 4h-1z")).toEqual([
    { letter: "M", numbers: [1, -2] },
    { letter: "l", numbers: [0.5, 0.5] },
    { letter: "l", numbers: [3, 4] },
    { letter: "h", numbers: [-1] },
    { letter: "z", numbers: [] },
  ]);
  for (const wrong of ["M1", "M0 0X3", "hello", "M0 0L1 NaN", `M0 0"`])
    expect(() => readPath(wrong), wrong).toThrow("Not a path");
});

test.each([
  ["M10 20h30v-5l-10-10z", { x: 10, y: 5, width: 30, height: 15 }],
  // Half a circle of radius 5 over the line between its ends: sweep 1 runs clockwise, which is over them on paper.
  ["M0 0A5 5 0 0 1 10 0", { x: 0, y: -5, width: 10, height: 5 }],
  ["M0 0A5 5 0 0 0 10 0", { x: 0, y: 0, width: 10, height: 5 }],
  // A quarter of a circle stays in the square of its ends.
  ["M0 0a9 9 0 0 1 9 9", { x: 0, y: 0, width: 9, height: 9 }],
  // The longer way round: three quarters of a circle about (0, 9).
  ["M0 0a9 9 0 1 0 9 9", { x: -9, y: 0, width: 18, height: 18 }],
])("%s covers %j", (d, box) => {
  const found = pathBounds(d);
  for (const key of ["x", "y", "width", "height"] as const) expect(found[key], key).toBeCloseTo(box[key], 6);
});

test("marks cover what they draw, scaled, shifted and clipped", () => {
  const disc = circle(0, 0, 2, { stroke: { ink: "#000000", width: 1 } });
  expect(boundsOfMarks([group([disc], { scale: 2, shift: { x: 10, y: 10 } })])).toEqual({
    x: 5,
    y: 5,
    width: 10,
    height: 10,
  });
  const wide = rect({ x: -50, y: 0, width: 100, height: 1 }, { fill: "#000000" });
  expect(boundsOfMarks([group([wide], { clip: { x: 0, y: 0, width: 10, height: 10 } })])).toEqual({
    x: 0,
    y: 0,
    width: 10,
    height: 1,
  });
  expect(boundsOfMarks([])).toBeUndefined();
});

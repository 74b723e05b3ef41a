import fc from "fast-check";
import { expect, test } from "vitest";
import { freePlace } from "../../shared-model/geometry/free-place.ts";
import { asId, type EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { boxId, drawing } from "../builders/drawing.ts";

const withBoxes = (points: readonly Point[]): Project =>
  points.reduce((house, at, index) => house.box(`B${index}`, "square-4-2-1-8", { at }), drawing()).project;

const BOX = "square-4-2-1-8";

test("an empty sheet starts at its origin", () => {
  const { project } = drawing();
  expect(freePlace(project, project.asFound, BOX)).toEqual({ x: 0, y: 0 });
});

test("a second box goes beside the first, clear of its sheaths", () => {
  const project = withBoxes([{ x: 300, y: 100 }]);
  const at = freePlace(project, project.asFound, BOX);
  expect(at.y).toBe(100);
  expect(at.x - 300).toBeGreaterThanOrEqual(1000);
});

test("a gap is filled before the drawing grows", () => {
  const project = withBoxes([
    { x: 0, y: 0 },
    { x: 2200, y: 0 },
  ]);
  expect(freePlace(project, project.asFound, BOX)).toEqual({ x: 1100, y: 0 });
});

test("wherever boxes stand, the new one is 1100 aside or 960 above or below each of them", () => {
  const spot = fc.record({ x: fc.integer({ min: -4000, max: 4000 }), y: fc.integer({ min: -3000, max: 3000 }) });
  fc.assert(
    fc.property(fc.array(spot, { minLength: 1, maxLength: 12 }), (points) => {
      const base = withBoxes(points.slice(0, 1));
      const first = base.asFound.enclosures[boxId("B0")];
      if (first === undefined) throw new Error("The box is missing.");
      const ids = points.map((_, index) => asId<EnclosureId>(`e${index}`));
      const enclosures = Object.fromEntries(ids.map((id) => [id, { ...first, id }]));
      const places = Object.fromEntries(points.map((point, index) => [`e${index}`, point]));
      const asFound = { ...base.asFound, enclosures };
      const at = freePlace({ ...base, asFound, layout: { ...base.layout, enclosures: places } }, asFound, BOX);
      for (const point of points)
        expect(Math.abs(at.x - point.x) >= 1100 || Math.abs(at.y - point.y) >= 960).toBe(true);
    }),
  );
});

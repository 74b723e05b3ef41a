import fc from "fast-check";
import { expect, test } from "vitest";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { faultsOf } from "./drawing-faults.ts";
import { type BoxSpec, boxSpec, buildBox, HERE } from "./random-box.ts";

const drawingOf = (project: Project) => boxDrawing(project, project.asFound, HERE);

function expectNoFaults(spec: BoxSpec): void {
  const project = buildBox(spec);
  const drawing = drawingOf(project);
  expect(faultsOf(drawing, getEnclosure(project.asFound, HERE))).toEqual([]);
  expect([drawing.measure.bodyHits, drawing.measure.sharedSegments]).toEqual([0, 0]);
}

test("an ordinary box is drawn without faults, whatever lands where", () => {
  fc.assert(fc.property(boxSpec({ cables: 6, devices: 2 }), expectNoFaults), { numRuns: 120 });
});

test("a crowded box or panel is drawn without faults", () => {
  fc.assert(fc.property(boxSpec({ cables: 16, devices: 8 }), expectNoFaults), { numRuns: 40 });
});

test("two ends in one hole: the plate of the one that comes in aslant is clear of the plate beside its sheath", () => {
  // A cable of two whites, one of them re-identified, on a short run from its wall to a screw that it shares.
  const spec: BoxSpec = {
    panel: false,
    cables: [
      { item: 2, far: 3, flipped: false },
      { item: 40, far: 0, flipped: false },
    ],
    devices: [{ type: 0, slot: 0 }],
    splices: 1,
    jumpers: [],
    pass: false,
    choices: [
      0, 238841, 0, 0, 212904, 0, 0, 137327, 0, 0, 486690, 0, 0, 4663, 0, 0, 0, 0, 0, 690369, 0, 0, 738157, 0, 1, 80502,
      0, 0,
    ],
  };
  const codes = drawingOf(buildBox(spec)).conductors.flatMap(({ plates }) => plates.map(({ text }) => text));
  expect(codes).toEqual(expect.arrayContaining(["WH 2", "C2 WH 2 as BK", "WH as BK"]));
  expectNoFaults(spec);
});

test("in the narrow channel of a panel the plates beside a sheath are clear of the words over a splice", () => {
  const spec: BoxSpec = {
    panel: true,
    cables: [
      { item: 21, far: 1, flipped: false },
      { item: 27, far: 0, flipped: false },
    ],
    devices: [{ type: 52, slot: 0 }],
    splices: 2,
    jumpers: ["black"],
    pass: false,
    choices: [
      0, 656861, 0, 0, 4064, 0, 0, 23507, 35707, 0, 0, 0, 0, 0, 0, 0, 43953, 0, 0, 0, 0, 232831, 0, 0, 0, 0, 0, 133447,
      0, 0, 0, 0, 0, 0, 0, 0,
    ],
  };
  expectNoFaults(spec);
});

/** The same document with every record written in the opposite order, as after undo. */
function backwards<T>(value: T): T {
  if (Array.isArray(value)) return value.map(backwards) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, each]) => [key, backwards(each)]),
  ) as T;
}

test("the same box gives the same drawing, whatever the order of its records", () => {
  fc.assert(
    fc.property(boxSpec({ cables: 8, devices: 3 }), (spec) => {
      const project = buildBox(spec);
      const drawing = drawingOf(project);
      expect(drawingOf(buildBox(spec))).toEqual(drawing);
      expect(drawingOf(backwards(project))).toEqual(drawing);
    }),
    { numRuns: 40 },
  );
});

test("a change of names moves nothing but words", () => {
  fc.assert(
    fc.property(boxSpec({ cables: 6, devices: 2 }), (spec) => {
      const project = buildBox(spec);
      const box = getEnclosure(project.asFound, HERE);
      const renamed = { ...box, name: "another", note: "place" };
      const asFound = { ...project.asFound, enclosures: { ...project.asFound.enclosures, [HERE]: renamed } };
      const { header: _a, bounds: _b, ...after } = drawingOf({ ...project, asFound });
      const { header: _c, bounds: _d, ...before } = drawingOf(project);
      expect(after).toEqual(before);
    }),
    { numRuns: 40 },
  );
});

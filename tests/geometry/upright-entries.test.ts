import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { boxId } from "../builders/drawing.ts";
import { faultsOf } from "./drawing-faults.ts";
import { laundryFound } from "./laundry-sheet.ts";

const found = laundryFound();
const B1 = boxId("B1");
const C4 = "cable-C4" as CableId;

const placed = (project: Project, places: Readonly<Record<string, Point>>): Project => ({
  ...project,
  layout: { ...project.layout, enclosures: { ...project.layout.enclosures, ...places } },
});

/** The laundry with B5, at the other end of C4, so far from B1. */
const away = (x: number, y: number): Project => placed(found, { [B1]: { x: 0, y: 0 }, [boxId("B5")]: { x, y } });
const draw = (project: Project, id: EnclosureId): BoxDrawing => boxDrawing(project, project.asFound, id);
const wallOf = (project: Project, id: EnclosureId, cable = C4) =>
  draw(project, id).sheaths.find((sheath) => sheath.cable === cable)?.wall;

test("a cable goes through the lower wall to a box under it, and comes in through the upper wall there", () => {
  expect([wallOf(away(0, 1200), B1), wallOf(away(0, 1200), boxId("B5"))]).toEqual(["bottom", "top"]);
  expect([wallOf(away(-200, -1200), B1), wallOf(away(-200, -1200), boxId("B5"))]).toEqual(["top", "bottom"]);
});

test("side walls are kept for what stands too near, too far off for the roads to be straight, or aside", () => {
  for (const [x, y] of [
    [0, 799],
    [0, 1600],
    [640, 1200],
    [-640, -1200],
    [1250, 1000],
  ] as const)
    expect(["left", "right"]).toContain(wallOf(away(x, y), B1));
  for (const [x, y] of [
    [0, 800],
    [0, 1599],
    [639, 1200],
    [-639, -1200],
  ] as const)
    expect(wallOf(away(x, y), B1)).toBe(y > 0 ? "bottom" : "top");
});

test("cables of a panel keep to its side walls", () => {
  const under = placed(found, { [boxId("P")]: { x: 0, y: 0 }, [B1]: { x: 0, y: 1200 } });
  expect(["left", "right"]).toContain(wallOf(under, B1, "cable-C1" as CableId));
  expect(["left", "right"]).toContain(wallOf(under, boxId("P"), "cable-C1" as CableId));
});

test("both ends of a cable agree, wherever two boxes stand: through facing walls, or through side walls", () => {
  const facing: Readonly<Record<string, string>> = { top: "bottom", bottom: "top" };
  const at = fc.integer({ min: -2000, max: 2000 });
  fc.assert(
    fc.property(at, at, (x, y) => {
      const [here, there] = [wallOf(away(x, y), B1), wallOf(away(x, y), boxId("B5"))];
      if (here === "top" || here === "bottom") expect(there).toBe(facing[here]);
      else expect(["left", "right"]).toContain(there);
    }),
    { numRuns: 40 },
  );
});

test("two boxes of one place across, one under the other, are joined straight", () => {
  const project = away(0, 1200);
  const [upper, lower] = [draw(project, B1), draw(project, boxId("B5"))].map(({ sheaths }) =>
    sheaths.find(({ cable }) => cable === C4),
  );
  expect(upper?.outer.x).toBe(lower?.outer.x);
  expect((upper?.outer.y ?? 0) < 1200 + (lower?.outer.y ?? 0)).toBe(true);
});

test("a move of a far box that changes no wall and no order redraws nothing", () => {
  const project = away(0, 1200);
  const before = draw(project, B1);
  expect(draw(placed(project, { [boxId("B5")]: { x: 500, y: 1500 } }), B1)).toBe(before);
});

test("a bottom entry grows its box downward: what stands over it keeps its place", () => {
  const [beside, under] = [draw(away(-1250, 1000), B1), draw(away(0, 1200), B1)];
  expect(under.sheaths.find(({ cable }) => cable === C4)?.at.y).toBe(under.height);
  expect(under.header.at).toEqual(beside.header.at);
});

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

test.each(readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside")))(
  "no box of %s has a fault in its drawing with all boxes under one another",
  (name) => {
    const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
    if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
    const { project } = parsed.value;
    const ids = Object.keys(project.asFound.enclosures);
    for (const aside of [0, 150]) {
      const stacked = placed(project, Object.fromEntries(ids.map((id, i) => [id, { x: (i % 3) * aside, y: i * 900 }])));
      const drawn = (ids as EnclosureId[]).map((id) => ({ id, drawing: draw(stacked, id) }));
      expect(drawn.some(({ drawing }) => drawing.sheaths.some(({ wall }) => wall === "top"))).toBe(true);
      for (const { id, drawing } of drawn) expect(faultsOf(drawing, getEnclosure(stacked.asFound, id))).toEqual([]);
    }
  },
);

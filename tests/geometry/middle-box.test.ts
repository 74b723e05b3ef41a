import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { middleBox, spread, tabsOf } from "../../shared-model/geometry/middle-box.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

function drawingsOf(name: string): readonly BoxDrawing[] {
  const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  const { project } = parsed.value;
  const ids = Object.keys(project.asFound.enclosures) as EnclosureId[];
  // As it stands, and with all boxes under one another.
  const stacked = Object.fromEntries(ids.map((id, index) => [id, { x: 0, y: index * 900 }]));
  return [project, { ...project, layout: { ...project.layout, enclosures: stacked } }].flatMap((each) =>
    ids.map((id) => boxDrawing(each, each.asFound, id)),
  );
}

/** Drawing units of a pixel from where near begins to where afar does. */
const UNITS = [2.3, 3.6, 5.6, 8.9, 11.2];

const inside = (rect: Rect, { width, height }: BoxDrawing): boolean =>
  rect.x >= -0.01 && rect.y >= -0.01 && rect.x + rect.width <= width + 0.01 && rect.y + rect.height <= height + 0.01;

describe.each(readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside")))("%s", (name) => {
  const drawings = drawingsOf(name);

  test("every device stands inside its box, and beside its neighbours", () => {
    for (const drawing of drawings) {
      for (const unit of UNITS) {
        const { devices, freeSlots } = middleBox(drawing, unit);
        const plates = [...devices.map(({ plate }) => plate), ...freeSlots.map(({ at }) => at)];
        for (const plate of plates) expect(inside(plate, drawing), `${drawing.header.name} at ${unit}`).toBe(true);
        plates.forEach((one, i) => {
          for (const other of plates.slice(i + 1)) {
            const x = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
            const y = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
            expect(Math.min(x, y), `${drawing.header.name} at ${unit}`).toBeLessThan(1);
          }
        });
      }
    }
  });

  test("a tab for each cable on the wall of its sheath, in the same order, inside the wall", () => {
    for (const drawing of drawings) {
      for (const unit of UNITS) {
        const tabs = tabsOf(drawing, unit);
        expect(tabs).toHaveLength(drawing.sheaths.length);
        for (const wall of ["left", "right", "top", "bottom"] as const) {
          const [along, long] =
            wall === "left" || wall === "right" ? (["y", drawing.height] as const) : (["x", drawing.width] as const);
          const here = tabs.filter((tab) => tab.wall === wall);
          const sheaths = drawing.sheaths.filter((sheath) => sheath.wall === wall);
          sheaths.sort((a, b) => a.at[along] - b.at[along]);
          expect(here.map(({ cable, side }) => `${cable} ${side}`)).toEqual(
            sheaths.map(({ cable, side }) => `${cable} ${side}`),
          );
          const places = here.map(({ at }) => at[along]);
          places.slice(1).forEach((at, i) => {
            expect(at).toBeGreaterThan(places[i] ?? at);
          });
          for (const at of places) expect(at > 0 && at < long).toBe(true);
          for (const { out } of here) expect(out).toBe(wall === "left" || wall === "top" ? -1 : 1);
        }
      }
    }
  });
});

describe("spread", () => {
  test("what stands apart stays, what is too close parts about its middle", () => {
    expect(spread([10, 100, 200], 24, 0, 300)).toEqual([10, 100, 200]);
    expect(spread([100, 100], 24, 0, 300)).toEqual([88, 112]);
    expect(spread([100, 104, 250], 24, 0, 300)).toEqual([90, 114, 250]);
    expect(spread([2, 4], 24, 10, 300)).toEqual([10, 34]);
    expect(spread([290, 299], 24, 0, 300)).toEqual([276, 300]);
  });

  test("never closer than the gap where there is room, even where there is none, always within bounds", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -100, max: 700 }), { minLength: 1, maxLength: 20 }),
        fc.integer({ min: 1, max: 80 }),
        (places, gap) => {
          const wanted = [...places].sort((a, b) => a - b);
          const got = spread(wanted, gap, 0, 600);
          const apart = Math.min(gap, 600 / Math.max(1, wanted.length - 1));
          expect(got).toHaveLength(wanted.length);
          got.slice(1).forEach((at, i) => {
            expect(at - (got[i] ?? at)).toBeGreaterThan(apart - 1e-6);
          });
          for (const at of got) expect(at > -1e-6 && at < 600 + 1e-6).toBe(true);
        },
      ),
    );
  });
});

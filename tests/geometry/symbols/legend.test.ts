import { expect, test } from "vitest";
import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import { symbolOf } from "../../../shared-model/geometry/symbols/find-symbol.ts";
import { drawLegend, LEGEND_LETTERS } from "../../../shared-model/geometry/symbols/legend-drawing.ts";
import { symbolLegend } from "../../../shared-model/geometry/symbols/symbol-legend.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { emptyInstallation } from "../../../shared-model/model/project.ts";
import { SYMBOL_SETS } from "../../../shared-model/model/symbol-set.ts";
import { drawnSamples } from "../../builders/samples/index.ts";

const samples = Object.entries(drawnSamples).map(([name, draw]) => [name, draw()] as const);

test("the legend of every sample has what stands on its plan, counted, and nothing else", () => {
  for (const [name, project] of samples) {
    for (const set of SYMBOL_SETS) {
      const legend = symbolLegend(project.asFound, set);
      const boxes = Object.values(project.asFound.enclosures);
      const devices = boxes.flatMap(({ kind, devices: all }) => (kind === "panel" ? [] : Object.values(all)));
      const kinds = devices.map(({ type }) => symbolOf({ type, glyph: findDeviceType(type)?.glyph ?? "" }));
      const panels = boxes.filter(({ kind }) => kind === "panel").length;
      const bare = boxes.filter(({ kind, devices: all }) => kind !== "panel" && Object.keys(all).length === 0).length;
      const total = legend.reduce((sum, { count }) => sum + count, 0);
      expect(total, name).toBe(devices.length + panels + bare);
      const shown = new Set<string>(legend.map(({ symbol }) => symbol.id));
      for (const kind of kinds) expect(shown, name).toContain(kind);
      expect(shown.has("panel"), name).toBe(panels > 0);
      expect(shown.has("junction"), name).toBe(bare > 0);
      expect(shown.size, name).toBe(new Set(kinds).size + Number(panels > 0) + Number(bare > 0));
    }
  }
});

test("a drawing of nothing has an empty legend", () => {
  expect(symbolLegend(emptyInstallation, "us")).toEqual([]);
});

test("no words of a legend lie over each other or leave it", () => {
  for (const [name, project] of samples)
    for (const set of SYMBOL_SETS) {
      const { width, height, lines, note } = drawLegend(symbolLegend(project.asFound, set), set);
      for (const { text, textAt, count, countAt, corner, side } of lines) {
        const end = textAt.x + textWidth(text, LEGEND_LETTERS.line);
        expect(end, `${name} ${text}`).toBeLessThan(countAt.x - textWidth(count, LEGEND_LETTERS.line));
        expect(corner.x + side, text).toBeLessThan(textAt.x);
        expect(countAt.x, text).toBeLessThanOrEqual(width);
        expect(corner.y + side, text).toBeLessThan(note[0]?.at.y ?? 0);
      }
      for (const { text, at } of note) {
        expect(at.x + textWidth(text, LEGEND_LETTERS.note)).toBeLessThanOrEqual(width);
        expect(at.y).toBeLessThan(height);
      }
    }
});

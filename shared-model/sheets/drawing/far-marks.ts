import { getDeviceType } from "../../catalog/device-types.ts";
import { farBox } from "../../geometry/far-box.ts";
import { feetPath } from "../../geometry/feet-path.ts";
import { linePath } from "../../geometry/line-path.ts";
import { WALL } from "../../geometry/metrics.ts";
import type { Road } from "../../geometry/roads/road-map.ts";
import { findSymbol, symbolOf } from "../../geometry/symbols/find-symbol.ts";
import { type PlanSymbol, SYMBOL_SIZE, SYMBOL_STROKE, type SymbolKind } from "../../geometry/symbols/plan-symbol.ts";
import { symbolPaths } from "../../geometry/symbols/symbol-lines.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { SymbolSet } from "../../model/symbol-set.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { Mark } from "../display-list.ts";
import { group, path, rect, text } from "../marks.ts";
import { INK, PAPER } from "../page/inks.ts";
import type { Standing } from "./house-scene.ts";

/** A symbol of a plan, centred at a point. */
export function symbolMarks(symbol: PlanSymbol, x: number, y: number, size: number): readonly Mark[] {
  const { strokes, areas } = symbolPaths(symbol);
  const scale = size / SYMBOL_SIZE;
  const marks: readonly Mark[] = [
    ...(areas === "" ? [] : [path(areas, { fill: INK })]),
    ...(strokes === ""
      ? []
      : [path(strokes, { stroke: { ink: INK, width: SYMBOL_STROKE, cap: "round", join: "round" } })]),
  ];
  return [group(marks, { shift: { x: x - size / 2, y: y - size / 2 }, scale })];
}

/** What stands for a box on a plan. */
function symbolsIn(enclosure: Enclosure): readonly SymbolKind[] {
  if (enclosure.kind === "panel") return ["panel"];
  const kinds = inOrder(enclosure.devices).flatMap(
    ({ type }) => symbolOf({ type, glyph: getDeviceType(type).glyph }) ?? [],
  );
  return kinds.length === 0 ? ["junction"] : kinds;
}

/** A box from afar, in drawing units of the sheet: its name, symbols for what is in it, how full it is. */
export function farMarks(
  { enclosure, rect: outer }: Standing,
  set: SymbolSet,
  ratio: number | undefined,
  unit: number,
  marked: boolean,
): readonly Mark[] {
  const kinds = symbolsIn(enclosure);
  const inside = farBox({
    width: (outer.width - 2 * WALL) / unit,
    height: (outer.height - 2 * WALL) / unit,
    name: enclosure.name,
    symbols: kinds.length,
    ratio,
    marked,
  });
  const px = (pixels: number, along: "x" | "y"): number => outer[along] + WALL + pixels * unit;
  const { name, symbols, bar } = inside;
  return [
    rect(outer, { fill: PAPER, stroke: { ink: INK, width: 1.6 * unit } }),
    ...(symbols === undefined
      ? []
      : kinds
          .slice(0, symbols.count)
          .flatMap((kind, i) =>
            symbolMarks(
              findSymbol(set, kind),
              px(symbols.x + i * symbols.size, "x"),
              px(symbols.y, "y"),
              symbols.size * unit,
            ),
          )),
    ...(bar === undefined || ratio === undefined
      ? []
      : [
          rect(
            { x: px(bar.x, "x"), y: px(bar.y, "y"), width: bar.width * unit, height: bar.height * unit },
            { stroke: { ink: INK, width: 0.5 * unit } },
          ),
          rect(
            {
              x: px(bar.x, "x"),
              y: px(bar.y, "y"),
              width: bar.width * unit * Math.min(1, ratio),
              height: bar.height * unit,
            },
            ratio > 1
              ? { hatch: { kind: "lines", ink: INK, gap: 2 * unit, width: unit }, stroke: { ink: INK, width: unit } }
              : { fill: INK },
          ),
        ]),
    ...(name === undefined
      ? []
      : [
          text(enclosure.name, px(name.x, "x"), px(name.y, "y"), {
            size: name.size * unit,
            weight: 700,
            anchor: name.centred ? "middle" : "start",
          }),
        ]),
  ];
}

/** A cable from afar: one line, with feet where it lies on LOAD. */
export function farRoadMarks({ points }: Road, unit: number, isGuarded: boolean): readonly Mark[] {
  const d = linePath(points, 4 * unit);
  const feet = isGuarded ? feetPath(points, 0, 4 * unit, 5 * unit, 6 * unit) : "";
  return [
    ...(d === "" ? [] : [path(d, { stroke: { ink: INK, width: 1.5 * unit } })]),
    ...(feet === "" ? [] : [path(feet, { stroke: { ink: INK, width: unit } })]),
  ];
}

import { feetPath } from "../../geometry/feet-path.ts";
import { linePath } from "../../geometry/line-path.ts";
import type { Crossings } from "../../geometry/roads/crossings.ts";
import { roadLabel } from "../../geometry/roads/road-label.ts";
import type { Road } from "../../geometry/roads/road-map.ts";
import type { Point } from "../../model/project.ts";
import type { Mark } from "../display-list.ts";
import { offAxis } from "../draw/off-axis.ts";
import { path, rect, text } from "../marks.ts";
import { INK, PAPER } from "../page/inks.ts";
import { measure } from "../page/measure.ts";

/** Of the words of a cable, in pixels: they keep their size on paper, however small the drawing is. */
const LETTERS = 12;

/** A cable as a road, with feet on its side where it lies on LOAD. */
export function roadMarks(points: readonly Point[], road: number, unit: number, isGuarded: boolean): readonly Mark[] {
  const d = offAxis(linePath(points, road * 0.9 + 5 * unit));
  if (d === "") return [];
  const feet = isGuarded ? feetPath(points, road / 2, 5 * unit, road, 7 * unit) : "";
  return [
    path(d, { stroke: { ink: PAPER, width: road + 5 * unit } }),
    path(d, { stroke: { ink: INK, width: road + unit } }),
    path(d, { stroke: { ink: PAPER, width: road - unit } }),
    ...(feet === "" ? [] : [path(feet, { stroke: { ink: INK, width: unit } })]),
  ];
}

/** Between a name alone and the next bend, in pixels: paper cannot be looked at closer, so that no cable is without one. */
const TIGHT = 2;

/**
 * Its name, size and length, on the stretch of its way that is shown and that no other cable crosses; where there is none,
 * its name on paper of its own.
 */
export function roadWords(
  { sheath }: Road,
  shown: readonly Point[],
  road: number,
  unit: number,
  crossed: Crossings,
): readonly Mark[] {
  const size = LETTERS * unit;
  const alone = { name: sheath.name, sizeText: "", lengthText: "" };
  const free = roadLabel(shown, sheath, size, unit, crossed) ?? roadLabel(shown, alone, size, unit, crossed, TIGHT);
  const label = free ?? roadLabel(shown, alone, size, unit, undefined, TIGHT);
  return label === undefined ? [] : labelMarks(label, road, unit, size, free === undefined);
}

function labelMarks(
  { at, upright, name, rest, long }: NonNullable<ReturnType<typeof roadLabel>>,
  road: number,
  unit: number,
  size: number,
  isOver: boolean,
): readonly Mark[] {
  const half = long / 2 + 3 * unit;
  // On a wide way its own outline stays beside the words.
  const isNarrow = road < 14 * unit;
  const high = isNarrow ? 7.5 * unit : road / 2 - unit;
  const plate = upright
    ? { x: at.x - high, y: at.y - half, width: 2 * high, height: 2 * half }
    : { x: at.x - half, y: at.y - high, width: 2 * half, height: 2 * high };
  const nameLong = measure(name, size, 700);
  const common = { size, ...(upright && { turn: -90 as const }) };
  const on = (along: number) =>
    upright
      ? ([at.x + 4.2 * unit, at.y + long / 2 - along] as const)
      : ([at.x - long / 2 + along, at.y + 4.2 * unit] as const);
  return [
    ...(isOver || isNarrow ? [rect(plate, { fill: PAPER })] : []),
    text(name, ...on(0), { ...common, weight: 700 }),
    ...(rest === "" ? [] : [text(rest, ...on(nameLong + 5 * unit), common)]),
  ];
}

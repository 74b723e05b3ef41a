import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";

/** Zones of the frame: 1 to 8 across, A to F down. */
export const COLUMNS = 8;
export const ROWS = ["A", "B", "C", "D", "E", "F"] as const;

/** The zone that a point lies in, "C4"; undefined outside the sheet. @param sheet Inside of the frame. */
export function zoneAt({ x, y }: Point, sheet: Rect): string | undefined {
  const column = Math.floor(((x - sheet.x) / sheet.width) * COLUMNS);
  const row = ROWS[Math.floor(((y - sheet.y) / sheet.height) * ROWS.length)];
  return row === undefined || column < 0 || column >= COLUMNS ? undefined : `${row}${column + 1}`;
}

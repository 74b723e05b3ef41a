import { memo } from "react";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { EnclosureChange } from "../../../shared-model/queries/changed-between-states.ts";
import { FOR_EYES_ONLY } from "../svg-roles.ts";

/** Outside the wall, inside the frame of a selected box. */
const AWAY = WALL + 4.5;

/**
 * A box that the work touches, while proposed is shown: a dashed line around the walls of one that is opened, a heavy one
 * around a new one. The word stands beside the name of the box.
 */
export const ChangeOutline = memo(function ChangeOutline({
  drawing,
  change,
  unit,
}: {
  readonly drawing: Pick<BoxDrawing, "width" | "height">;
  readonly change: EnclosureChange | undefined;
  /** Drawing units of a pixel from away; 0 near. */
  readonly unit: number;
}) {
  if (change === undefined) return null;
  const far = unit > 0;
  const away = far ? WALL + 4 * unit : AWAY;
  const line = change === "new" ? 2.4 : 1.5;
  return (
    <g className={`sheet-change sheet-change-${change}`} {...FOR_EYES_ONLY}>
      <rect
        x={-away}
        y={-away}
        width={drawing.width + 2 * away}
        height={drawing.height + 2 * away}
        rx={far ? 2 * unit : 5}
        {...(far && { style: { strokeWidth: line * unit, strokeDasharray: dashOf(change, unit) } })}
      />
    </g>
  );
});

const dashOf = (change: EnclosureChange, unit: number): string =>
  change === "new" ? "none" : `${7 * unit} ${4 * unit}`;

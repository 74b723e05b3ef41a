import { memo } from "react";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { EnclosureChange } from "../../../shared-model/queries/changed-between-states.ts";
import { CHANGE_WORDS } from "../difference.ts";
import { FOR_EYES_ONLY } from "../svg-roles.ts";

/** Outside the wall, inside the frame of a selected box. */
const AWAY = WALL + 4.5;
/** Of the word over a box from afar: readable at a fifth of full size. */
const FAR_WORD = 58;

/**
 * A box that the work touches, while proposed is shown: a dashed line around the walls of one that is opened, a heavy one
 * around a new one. From afar the word stands over it; near, it stands in the header.
 */
export const ChangeOutline = memo(function ChangeOutline({
  drawing,
  change,
  far,
}: {
  readonly drawing: Pick<BoxDrawing, "width" | "height">;
  readonly change: EnclosureChange | undefined;
  readonly far: boolean;
}) {
  if (change === undefined) return null;
  const away = far ? AWAY + 18 : AWAY;
  return (
    <g className={`sheet-change sheet-change-${change}${far ? " sheet-change-far" : ""}`} {...FOR_EYES_ONLY}>
      <rect x={-away} y={-away} width={drawing.width + 2 * away} height={drawing.height + 2 * away} rx={far ? 14 : 5} />
      {far && (
        <text x={-away} y={-away - 14} fontSize={FAR_WORD}>
          {CHANGE_WORDS[change]}
        </text>
      )}
    </g>
  );
});

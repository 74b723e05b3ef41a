import { memo, useMemo } from "react";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { middleBox } from "../../../shared-model/geometry/middle-box.ts";
import { FOR_EYES_ONLY } from "../svg-roles.ts";
import { ConditionTag, TAG } from "./condition-tag.tsx";
import { deviceCondition, type Lit } from "./lit.ts";
import { ProbesAway } from "./probes.tsx";

/** From middle distance: the condition of each device at the corner of its plate. */
export const LitAway = memo(function LitAway({
  drawing,
  lit,
  unit,
}: {
  readonly drawing: BoxDrawing;
  readonly lit: Lit;
  readonly unit: number;
}) {
  const { devices } = useMemo(() => middleBox(drawing, unit), [drawing, unit]);
  return (
    <g {...FOR_EYES_ONLY}>
      {devices.map(({ device, plate }) => {
        const condition = deviceCondition(lit, device);
        // A breaker's plate is as low as its letters: the tag stands in its outer end.
        const low = plate.height < 30 * unit;
        const size = Math.min(TAG * unit, low ? plate.height : TAG * unit);
        return condition === undefined ? null : (
          <ConditionTag
            key={device}
            condition={condition}
            x={plate.x + plate.width - size / 2}
            y={low ? plate.y + plate.height / 2 : plate.y + size / 2}
            size={size}
          />
        );
      })}
      <ProbesAway drawing={drawing} devices={devices} unit={unit} />
    </g>
  );
});

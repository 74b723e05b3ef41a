import { memo } from "react";
import { limitFeet, limitPath } from "../../../shared-model/geometry/limit-path.ts";
import type { LimitDrawing } from "../../../shared-model/geometry/protected-limit.ts";
import { fitText, textWidth } from "../../../shared-model/geometry/text-width.ts";

const SIZE = 11.5;

/** The limit of what lies behind a ground-fault device, as on a chart: dashed, with feet that point into it, and its words. */
export const LimitShape = memo(function LimitShape({
  limit,
  words,
}: {
  readonly limit: LimitDrawing;
  /** "behind R1b: R2, R3"; undefined on all but the first limit of a device. */
  readonly words: string | undefined;
}) {
  const { x, y, width } = limit.area;
  const text = words && fitText(words, Math.max(60, width - 24), SIZE, 500);
  return (
    <g className="sheet-limit">
      <path className="sheet-limit-line" d={limitPath(limit)} />
      <path d={limitFeet(limit)} />
      {text && (
        <>
          <rect x={x + 9} y={y - 7} width={textWidth(text, SIZE, 500) + 8} height={14} />
          <text x={x + 13} y={y + 4}>
            {text}
          </text>
        </>
      )}
    </g>
  );
});

import { memo } from "react";
import type { LimitDrawing } from "../../../shared-model/geometry/protected-limit.ts";
import { fitText, textWidth } from "../../../shared-model/geometry/text-width.ts";

const STEP = 18;
const FOOT = 6;
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
      <path className="sheet-limit-line" d={linePath(limit)} />
      <path d={feetPath(limit)} />
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

/** Open where the cables leave. */
function linePath({ area: { x, y, width, height }, open }: LimitDrawing): string {
  const right = x + width;
  const bottom = y + height;
  if (open === "right") return `M${right} ${y}H${x}V${bottom}H${right}`;
  if (open === "left") return `M${x} ${y}H${right}V${bottom}H${x}`;
  return `M${x} ${y}H${right}V${bottom}H${x}Z`;
}

function feetPath({ area: { x, y, width, height }, open }: LimitDrawing): string {
  let path = "";
  const right = x + width;
  const bottom = y + height;
  for (let at = x + STEP; at < right - 4; at += STEP) path += `M${at} ${y}v${FOOT}M${at} ${bottom}v${-FOOT}`;
  for (let at = y + STEP; at < bottom - 4; at += STEP) {
    if (open !== "left") path += `M${x} ${at}h${FOOT}`;
    if (open !== "right") path += `M${right} ${at}h${-FOOT}`;
  }
  return path;
}

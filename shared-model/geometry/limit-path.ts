import type { LimitDrawing } from "./protected-limit.ts";

const STEP = 18;
const FOOT = 6;

/** Outline of what lies behind a ground-fault device, open where the cables leave. */
export function limitPath({ area: { x, y, width, height }, open }: LimitDrawing): string {
  const right = x + width;
  const bottom = y + height;
  if (open === "right") return `M${right} ${y}H${x}V${bottom}H${right}`;
  if (open === "left") return `M${x} ${y}H${right}V${bottom}H${x}`;
  return `M${x} ${y}H${right}V${bottom}H${x}Z`;
}

/** Feet that point into it, as long as on a cable. */
export function limitFeet({ area: { x, y, width, height }, open }: LimitDrawing): string {
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

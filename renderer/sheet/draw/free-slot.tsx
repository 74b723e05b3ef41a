import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";

/** A breaker space with nothing in it: dashed, with its number. */
export const FreeSlot = ({ slot, at }: { readonly slot: number; readonly at: Rect }) => (
  <g className="sheet-free-slot">
    <rect x={at.x} y={at.y} width={at.width} height={at.height} rx={6} />
    <text x={at.x + at.width / 2} y={at.y + at.height / 2 + 4}>
      {slot}
    </text>
  </g>
);

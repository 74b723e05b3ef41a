import { memo } from "react";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";

/** The box itself: metal walls are hatched, nonmetallic ones dotted, walls of unknown make empty. */
export const Walls = memo(function Walls({
  width,
  height,
  material,
  line,
}: Pick<BoxDrawing, "width" | "height" | "material"> & {
  /** Width of the outline from away, where the pattern of the wall would only be noise; 0 near. */
  readonly line: number;
}) {
  const far = line > 0;
  const ring = `M${-WALL} ${-WALL}H${width + WALL}V${height + WALL}H${-WALL}ZM0 0V${height}H${width}V0Z`;
  return (
    <g className={far ? "sheet-walls-far" : undefined} style={far ? { strokeWidth: line * 1.7 } : undefined}>
      <path d={ring} fillRule="evenodd" className={`sheet-wall-${far ? "unknown" : material}`} />
      <rect
        className="sheet-wall-outer"
        x={-WALL}
        y={-WALL}
        width={width + 2 * WALL}
        height={height + 2 * WALL}
        rx={3}
      />
      <rect className="sheet-wall-inner" width={width} height={height} rx={1} />
    </g>
  );
});

/** Patterns that the drawings of one page share; placed once beside the flow. */
export function WallPatterns() {
  return (
    <svg className="sheet-patterns" aria-hidden="true" width="0" height="0">
      <defs>
        <pattern
          id="sheet-hatch-metal"
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="5" height="5" fill="var(--paper)" />
          <path d="M0 0V5" stroke="var(--ink-2)" strokeWidth="1.1" />
        </pattern>
        <pattern id="sheet-dots-nonmetallic" width="5" height="5" patternUnits="userSpaceOnUse">
          <rect width="5" height="5" fill="var(--paper)" />
          <circle cx="1.2" cy="1.2" r="0.8" fill="var(--ink-2)" />
          <circle cx="3.7" cy="3.7" r="0.8" fill="var(--ink-2)" />
        </pattern>
        <pattern
          id="sheet-hatch-over"
          width="3.4"
          height="3.4"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="3.4" height="3.4" fill="var(--paper)" />
          <path d="M0 0V3.4" stroke="var(--fill-over)" strokeWidth="1.5" />
        </pattern>
      </defs>
    </svg>
  );
}

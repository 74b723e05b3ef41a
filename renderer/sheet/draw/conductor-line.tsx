import { memo } from "react";
import type { ConductorDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { Colour } from "../../../shared-model/units/colour.ts";
import { linePath } from "./line-path.ts";

/** Casing, core and pattern of one conductor along a path. The casing keeps white, bare and yellow visible on paper. */
export function Strand({ path, colour }: { readonly path: string; readonly colour: Colour }) {
  return (
    <>
      <path d={path} className={`sheet-casing sheet-casing-${colour}`} />
      <path d={path} className={`sheet-core sheet-core-${colour}`} />
      {colour === "bare" && <path d={path} className="sheet-strand-rungs" />}
    </>
  );
}

/**
 * One conductor from its sheath to its place. Its halo of paper makes a crossing read as a bridge; it starts after the
 * fan, so that siblings of one sheath do not cut each other.
 */
export const ConductorLine = memo(function ConductorLine({
  conductor,
  state,
}: {
  readonly conductor: ConductorDrawing;
  /** `lifted`: its end is in the hand, so that the old way is only dotted. */
  readonly state: "plain" | "lifted" | "selected";
}) {
  const { points, fanPoints, colour, ends, markedAs, grips } = conductor;
  const path = linePath(points);
  const halo = fanPoints > 1 ? linePath(points.slice(fanPoints - 1)) : path;
  if (state === "lifted") return <path d={halo} className="sheet-lifted" />;
  return (
    <g>
      <path d={halo} className="sheet-halo" />
      {state === "selected" && <path d={path} className="sheet-chosen-line" />}
      <Strand path={path} colour={colour} />
      {ends.map((end, i) => {
        const mark = markedAs[i];
        const grip = grips[i];
        if (mark === undefined || grip === undefined) return null;
        return <Bands key={end} points={points} at={grip} colour={mark} />;
      })}
    </g>
  );
});

/** Two bands of the colour that an end is re-identified as, set across the conductor beside that end. */
function Bands({
  points,
  at,
  colour,
}: {
  readonly points: readonly Point[];
  readonly at: Point;
  readonly colour: Colour;
}) {
  const [first, second] = nearestLeg(points, at);
  const length = Math.hypot(second.x - first.x, second.y - first.y) || 1;
  const along = { x: (second.x - first.x) / length, y: (second.y - first.y) / length };
  const band = (offset: number) => {
    const from = { x: first.x + along.x * offset, y: first.y + along.y * offset };
    const to = { x: from.x + along.x * 5, y: from.y + along.y * 5 };
    return linePath([from, to]);
  };
  return (
    <g className="sheet-bands">
      <path d={`${band(12)}${band(19)}`} className={`sheet-casing sheet-casing-${colour}`} />
      <path d={`${band(12)}${band(19)}`} className={`sheet-core sheet-core-${colour}`} />
    </g>
  );
}

/** The last leg before an end, from the end inward. */
function nearestLeg(points: readonly Point[], at: Point): readonly [Point, Point] {
  const [start = at, next = at] = points;
  const last = points[points.length - 1] ?? at;
  const before = points[points.length - 2] ?? at;
  const toStart = Math.hypot(start.x - at.x, start.y - at.y);
  const toLast = Math.hypot(last.x - at.x, last.y - at.y);
  return toStart < toLast ? [start, next] : [last, before];
}

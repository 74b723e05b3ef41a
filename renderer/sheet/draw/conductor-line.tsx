import { memo } from "react";
import type { Condition } from "../../../shared-model/answers/energised.ts";
import { bandLegs } from "../../../shared-model/geometry/band-legs.ts";
import type { ConductorDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { CONDUCTOR_MARKS } from "../../../shared-model/geometry/conductor-marks.ts";
import { linePath } from "../../../shared-model/geometry/line-path.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { Colour } from "../../../shared-model/units/colour.ts";
import { DeadStrand, Sleeve } from "../energise/sleeve.tsx";

/**
 * Casing, core and mark of one conductor along a path. The casing keeps white, bare and yellow visible on paper, the mark
 * tells colours apart where they cannot be seen.
 */
export function Strand({ path, colour }: { readonly path: string; readonly colour: Colour }) {
  const mark = CONDUCTOR_MARKS[colour];
  return (
    <>
      <path d={path} className={`sheet-casing sheet-casing-${colour}`} />
      <path d={path} className={`sheet-core sheet-core-${colour}`} />
      {mark && (
        <path
          d={path}
          className={`sheet-strand-mark sheet-strand-mark-${colour}`}
          strokeWidth={mark.width}
          strokeDasharray={mark.dash?.join(" ")}
          strokeLinecap={mark.round ? "round" : "butt"}
        />
      )}
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
  condition,
}: {
  readonly conductor: ConductorDrawing;
  /** `lifted`: its end is in the hand, so that the old way is only dotted. */
  readonly state: "plain" | "lifted" | "selected";
  /** While the drawing is energised. */
  readonly condition?: Condition | undefined;
}) {
  const { points, fanPoints, colour, ends, markedAs, grips } = conductor;
  const path = linePath(points);
  const halo = fanPoints > 1 ? linePath(points.slice(fanPoints - 1)) : path;
  if (state === "lifted") return <path d={halo} className="sheet-lifted" />;
  return (
    <g>
      <path d={halo} className="sheet-halo" />
      {state === "selected" && <path d={path} className="sheet-chosen-line" />}
      {condition && <Sleeve path={halo} condition={condition} />}
      {condition?.kind === "dead" ? <DeadStrand path={path} /> : <Strand path={path} colour={colour} />}
      {ends.map((end, i) => {
        const mark = markedAs[i];
        const grip = grips[i];
        if (mark === undefined || grip === undefined) return null;
        return <Bands key={end} conductor={conductor} at={grip} colour={mark} />;
      })}
    </g>
  );
});

/**
 * Two bands of the colour that an end is re-identified as, set across the conductor where the way from that end first
 * has room for them: before its code plate, beyond it, or past the next bend. Without room the plate alone says it.
 */
function Bands({
  conductor,
  at,
  colour,
}: {
  readonly conductor: ConductorDrawing;
  readonly at: Point;
  readonly colour: Colour;
}) {
  const legs = bandLegs(conductor, at);
  if (legs === undefined) return null;
  const bands = legs.map((leg) => linePath(leg)).join("");
  return (
    <g className="sheet-bands">
      <path d={bands} className={`sheet-casing sheet-casing-${colour}`} />
      <path d={bands} className={`sheet-core sheet-core-${colour}`} />
    </g>
  );
}

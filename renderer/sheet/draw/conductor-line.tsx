import { memo } from "react";
import type { Condition } from "../../../shared-model/answers/energised.ts";
import type { ConductorDrawing, Plate } from "../../../shared-model/geometry/box-drawing.ts";
import { CONDUCTOR_MARKS } from "../../../shared-model/geometry/conductor-marks.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { Colour } from "../../../shared-model/units/colour.ts";
import { DeadStrand, Sleeve } from "../energise/sleeve.tsx";
import { linePath } from "./line-path.ts";

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
  const start = bandSpot(fromEnd(conductor.points, at), conductor.plates);
  if (start === undefined) return null;
  const bands = [0, 7].map((offset) => linePath([start(offset), start(offset + 5)])).join("");
  return (
    <g className="sheet-bands">
      <path d={bands} className={`sheet-casing sheet-casing-${colour}`} />
      <path d={bands} className={`sheet-core sheet-core-${colour}`} />
    </g>
  );
}

/** Length of both bands, and what keeps them off a hole, a plate or a bend. */
const BANDS = 12;
const CLEAR = 9;

/** Points from one end inward. */
function fromEnd(points: readonly Point[], at: Point): readonly Point[] {
  const [first = at] = points;
  const last = points[points.length - 1] ?? at;
  const near = Math.hypot(first.x - at.x, first.y - at.y) < Math.hypot(last.x - at.x, last.y - at.y);
  return near ? points : [...points].reverse();
}

/** The point of the conductor at some units past where the bands may begin. */
function bandSpot(points: readonly Point[], plates: readonly Plate[]): ((past: number) => Point) | undefined {
  for (let i = 1; i < Math.min(points.length, 4); i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const stops = [...plateSpans(plates, a, b), { from: length, to: length }].sort((p, q) => p.from - q.from);
    let from = CLEAR;
    for (const stop of stops) {
      if (stop.from - from >= BANDS + 2) {
        const start = from;
        return (past) => ({
          x: a.x + ((b.x - a.x) * (start + past)) / length,
          y: a.y + ((b.y - a.y) * (start + past)) / length,
        });
      }
      from = Math.max(from, stop.to + 2);
    }
  }
  return undefined;
}

/** Stretches of a leg that code plates cover. */
function plateSpans(
  plates: readonly Plate[],
  a: Point,
  b: Point,
): readonly { readonly from: number; readonly to: number }[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return plates.flatMap(({ at, text, vertical }) => {
    const along = ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / length;
    const across = Math.abs((at.x - a.x) * (b.y - a.y) - (at.y - a.y) * (b.x - a.x)) / length;
    if (across > 8 || along < -60 || along > length + 60) return [];
    const isUpright = a.x === b.x;
    const half = isUpright === vertical ? textWidth(text, 11, 640) / 2 + 3 : 7;
    return [{ from: along - half, to: along + half }];
  });
}

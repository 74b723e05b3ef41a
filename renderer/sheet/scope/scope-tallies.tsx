import { memo } from "react";
import type { ScopeBox } from "../../../shared-model/answers/scope.ts";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { SCOPE_LETTERS } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { scopeTally } from "../../../shared-model/geometry/scope/scope-tally.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import { FlagShape } from "../../ui/flag.tsx";
import { FOR_EYES_ONLY } from "../svg-roles.ts";

/** In pixels. */
const LETTERS = 12;
const FLAG = 19;
const GAP = 4;
/** What it may stand out on either side. */
const BESIDE = 7;
const HEIGHT = 19;
/** Its middle, under the lower wall: the wall stays in sight. */
const HANGS = 13;
const SIGNS = ["moved", "removed", "new"] as const;

/**
 * From a distance: how much of a box is moved, removed and new, each with its flag, on a plate that hangs under the lower
 * wall. Where the box is too narrow for that, the flags there are and the sum of all.
 */
export const ScopeTallies = memo(function ScopeTallies({
  box,
  drawing,
  unit,
}: {
  readonly box: ScopeBox;
  readonly drawing: Pick<BoxDrawing, "width" | "height">;
  /** Drawing units of a pixel. */
  readonly unit: number;
}) {
  const tally = scopeTally(box);
  const all = SIGNS.map((sign) => ({ sign, count: tally[sign] })).filter(({ count }) => count > 0);
  if (all.length === 0) return null;
  const wide = all.reduce((sum, { count }) => sum + widthOf(count), 0);
  // Hardly wider than the box: cables come down close beside it.
  const room = (drawing.width + 2 * WALL) / unit + 2 * BESIDE;
  const marks = wide <= room ? apart(all) : together(all);
  const width = marks.reduce((sum, mark) => sum + mark.width, 0);
  let x = -width / 2;
  return (
    <g
      className="scope-tallies"
      transform={`translate(${drawing.width / 2} ${drawing.height + WALL + HANGS * unit}) scale(${unit})`}
      {...FOR_EYES_ONLY}
    >
      <rect className="scope-tally-plate" x={x - 3} y={-HEIGHT / 2} width={width + 2} height={HEIGHT} rx={3} />
      {marks.map(({ sign, words, width: wide }) => {
        const left = x;
        x += wide;
        return (
          <g key={sign}>
            <FlagShape tone={sign} letter={SCOPE_LETTERS[sign]} x={left + 8} y={0} size={0.9} />
            {words !== "" && (
              <text className="scope-tally-figure" x={left + FLAG} y={4} fontSize={LETTERS}>
                {words}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
});

interface Count {
  readonly sign: (typeof SIGNS)[number];
  readonly count: number;
}

/** Each flag with its own figure. */
const apart = (all: readonly Count[]) =>
  all.map(({ sign, count }) => ({ sign, words: `${count}`, width: widthOf(count) }));

/** All flags, and their sum behind the last. */
function together(all: readonly Count[]) {
  const sum = all.reduce((total, { count }) => total + count, 0);
  return all.map(({ sign }, i) =>
    i === all.length - 1 ? { sign, words: `${sum}`, width: widthOf(sum) } : { sign, words: "", width: FLAG - 2 },
  );
}

const widthOf = (count: number): number => FLAG + textWidth(`${count}`, LETTERS, 650) + GAP;

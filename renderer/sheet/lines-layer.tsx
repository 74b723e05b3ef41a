import { memo, useMemo } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { linePath } from "../../shared-model/geometry/line-path.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { LINE_REACH, lineKey, plateArea } from "./line-at.ts";
import { FOR_EYES_ONLY } from "./svg-roles.ts";

/**
 * What takes presses along whole conductors and on their plates, under everything else that does: one shape a box, for
 * which conductor it was is told by where the press lies. People who use keys reach a conductor by its ends.
 */
export const LinesLayer = memo(function LinesLayer({
  drawing,
  resting,
}: {
  readonly drawing: BoxDrawing;
  readonly resting: boolean;
}) {
  const [lines, plates] = useMemo(
    () => [
      drawing.conductors.map(({ points }) => linePath(points)).join(""),
      drawing.conductors
        .flatMap((conductor) => conductor.plates.map(plateArea))
        .map(({ x, y, width, height }) => `M${x} ${y}h${width}v${height}h${-width}z`)
        .join(""),
    ],
    [drawing],
  );
  return (
    <g className={resting ? "sheet-lines sheet-lines-resting" : "sheet-lines"} data-lines="" {...FOR_EYES_ONLY}>
      <path className="sheet-lines-hit" d={lines} strokeWidth={2 * LINE_REACH} />
      <path className="sheet-lines-plates" d={plates} />
    </g>
  );
});

/** Rings around the ends of chosen conductors: from there they are taken in the hand. */
export const Grips = memo(function Grips({
  drawing,
  chosen,
}: {
  readonly drawing: BoxDrawing;
  /** As for the inside of the box: "end c1.bk.a", "jumper j1", one a line. */
  readonly chosen: string;
}) {
  const picks = new Set(chosen.split("\n"));
  const grips = drawing.conductors.flatMap(({ ends, jumper, grips: each }) =>
    each.filter((_, i) => picks.has(`end ${ends[i]}`) || (jumper !== undefined && picks.has(`jumper ${jumper}`))),
  );
  return (
    <g {...FOR_EYES_ONLY}>
      {grips.map(({ x, y }) => (
        <circle key={`${x} ${y}`} className="sheet-grip" cx={x} cy={y} r={7.5} />
      ))}
    </g>
  );
});

/** The conductor that the pointer or the focus is on, in the pen of the editor. */
export function LineGlow({
  id,
  drawing,
  focused,
}: {
  readonly id: EnclosureId;
  readonly drawing: BoxDrawing;
  /** Key of the item that has the focus by keys. */
  readonly focused: string | undefined;
}) {
  const under = useStore(gestureStore, ({ line }) => (line?.enclosure === id ? line.key : undefined));
  const conductor =
    under === undefined
      ? drawing.conductors.find(({ ends }) => ends.some((end) => `end ${end}` === focused))
      : drawing.conductors.find((each) => lineKey(each) === under);
  if (conductor === undefined) return null;
  const glow = under === undefined ? "sheet-line-glow sheet-line-focused" : "sheet-line-glow";
  return <path className={glow} d={linePath(conductor.points)} {...FOR_EYES_ONLY} />;
}

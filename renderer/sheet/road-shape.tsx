import { type CSSProperties, memo } from "react";
import { feetPath } from "../../shared-model/geometry/feet-path.ts";
import { linePath } from "../../shared-model/geometry/line-path.ts";
import type { Crossings } from "../../shared-model/geometry/roads/crossings.ts";
import type { RoadScale } from "../../shared-model/geometry/roads/road.ts";
import { type RoadLabel, roadLabel } from "../../shared-model/geometry/roads/road-label.ts";
import type { CableId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { Road } from "./sheet-roads.ts";

const LETTERS = 12;
/** Road narrower than this: its words stand on a plate that interrupts it. */
const HOLDS_WORDS = 14;

/** The stub of the cable in either box is the same thing with a name and for the keyboard; presses are answered by the sheet. */
export const RoadShape = memo(function RoadShape({
  cable,
  points,
  sheath,
  scale,
  crossed,
  unit,
  chosen,
  guarded,
  fresh,
}: {
  readonly cable: CableId;
  readonly points: readonly Point[];
  readonly sheath: Road["sheath"];
  readonly scale: RoadScale;
  /** What lies over it; not asked for near, where the stubs carry the words. */
  readonly crossed: Crossings | undefined;
  /** Drawing units of a pixel; 0 near, where the stubs carry the words. */
  readonly unit: number;
  readonly chosen: boolean;
  readonly guarded: boolean;
  readonly fresh: boolean;
}) {
  const { road } = scale;
  const away = unit > 0;
  const path = linePath(points, away ? road * 0.9 + 5 * unit : 16);
  const label = away ? roadLabel(points, sheath, LETTERS * unit, unit, crossed) : undefined;
  const edge = away ? unit : 1.3;
  const style = {
    "--road": `${road - edge}px`,
    "--road-edge": `${road + edge}px`,
    "--road-thick": `${road + edge * 3}px`,
    "--road-halo": `${road + (away ? 5 * unit : 10)}px`,
  } as CSSProperties;
  return (
    <g
      className={`sheet-road${chosen ? " sheet-chosen nopan" : ""}${fresh ? " sheet-new" : ""}`}
      data-road={cable}
      style={style}
    >
      <path className="sheet-road-halo" d={path} />
      <path className="sheet-road-edge" d={path} />
      <path className={away ? "sheet-road-body sheet-road-away" : "sheet-road-body"} d={path} />
      {guarded && (
        <path
          className="sheet-feet"
          d={away ? feetPath(points, road / 2, 5 * unit, road, 7 * unit) : feetPath(points, road / 2, 6, 18)}
          style={away ? { strokeWidth: unit } : undefined}
        />
      )}
      {label && <Words label={label} road={road} unit={unit} />}
    </g>
  );
});

function Words({ label, road, unit }: { readonly label: RoadLabel; readonly road: number; readonly unit: number }) {
  const { at, upright, name, rest, long } = label;
  const plate = road < HOLDS_WORDS * unit;
  return (
    <g className="sheet-road-words" transform={`translate(${at.x} ${at.y})${upright ? " rotate(-90)" : ""}`}>
      {plate && (
        <rect x={-long / 2 - 3 * unit} y={-7.5 * unit} width={long + 6 * unit} height={15 * unit} rx={2 * unit} />
      )}
      <text x={-long / 2} y={4.2 * unit} fontSize={LETTERS * unit}>
        <tspan className="sheet-road-name">{name}</tspan>
        {rest !== "" && <tspan dx={5 * unit}>{rest}</tspan>}
      </text>
    </g>
  );
}

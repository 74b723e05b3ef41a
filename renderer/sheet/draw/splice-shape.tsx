import { memo } from "react";
import type { Role } from "../../../shared-model/answers/circuit.ts";
import type { SpliceDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { EndKey } from "../../../shared-model/model/ids.ts";
import { spliceKey } from "../letterings.ts";
import { Letters } from "./letters.tsx";
import { NewFlag, ROLE_TAG, RoleTag } from "./small-tags.tsx";

const HALF_WIDTH = 11;

/**
 * A splice as a capsule: one row and dot per end, one bar through the dots. The count is seen before it is read. A lifted
 * end leaves an open, dashed port; an end that may join grows a free row.
 */
export const SpliceShape = memo(function SpliceShape({
  splice,
  chosen,
  lifted,
  growing,
  role,
  fresh,
}: {
  readonly splice: SpliceDrawing;
  readonly chosen: boolean;
  readonly lifted: EndKey | undefined;
  readonly growing: boolean;
  /** As it was checked last; undefined before. */
  readonly role: Role | undefined;
  /** As found does not have it. */
  readonly fresh: boolean;
}) {
  const { x, rows, freeRow } = splice;
  const ys = rows.map((row) => row.y);
  const half = textWidth(splice.name, 15, 700) / 2;
  const all = growing || ys.length === 0 ? [...ys, freeRow.y] : ys;
  const top = Math.min(...all) - HALF_WIDTH;
  const bottom = Math.max(...all) + HALF_WIDTH;
  const joined = rows.filter((row) => row.end !== lifted).map((row) => row.y);
  return (
    <g className={`sheet-splice${chosen ? " sheet-chosen" : ""}${fresh ? " sheet-new" : ""}`}>
      <rect x={x - HALF_WIDTH} y={top} width={HALF_WIDTH * 2} height={bottom - top} rx={HALF_WIDTH} />
      {joined.length > 1 && <path d={`M${x} ${Math.min(...joined)}V${Math.max(...joined)}`} />}
      {rows.map((row) => (
        <circle
          key={row.end}
          className={row.end === lifted ? "sheet-port-open" : "sheet-port"}
          cx={x}
          cy={row.y}
          r={row.end === lifted ? 3.6 : 3.9}
        />
      ))}
      {growing && <circle className="sheet-port-open" cx={freeRow.x} cy={freeRow.y} r={3.6} />}
      <Letters of={spliceKey(splice.splice)} about={{ x: splice.labelAt.x, y: splice.labelAt.y + 17 }}>
        {role !== undefined && <RoleTag role={role} x={x + half + 5 + ROLE_TAG / 2} y={splice.labelAt.y - 5} />}
        {fresh && <NewFlag x={x - half - 14} y={splice.labelAt.y - 5} />}
        <text className="sheet-item-name" x={splice.labelAt.x} y={splice.labelAt.y}>
          {splice.name}
        </text>
        <text className="sheet-item-note" x={splice.labelAt.x} y={splice.labelAt.y + 13.5}>
          {splice.caption}
        </text>
      </Letters>
    </g>
  );
});

import type { CableId } from "../../shared-model/model/ids.ts";
import { feetPath } from "./draw/feet-path.ts";
import { linePath } from "./draw/line-path.ts";
import type { Road } from "./sheet-roads.ts";

/** Pixels. */
const BEND = 4;
const LINE = 1.5;
const NEW_LINE = 2.6;

/** All cables from afar: single lines in one shape, those on LOAD with feet. */
export function FarRoads({
  roads,
  unit,
  guarded,
  isNew,
}: {
  readonly roads: readonly Road[];
  readonly unit: number;
  readonly guarded: ReadonlySet<CableId>;
  readonly isNew: (cable: CableId) => boolean;
}) {
  const lines = roads.map(({ cable, points }) => ({ cable, path: linePath(points, BEND * unit) }));
  const feet = roads.map(({ cable, points }) =>
    guarded.has(cable) ? feetPath(points, unit / 2, 4 * unit, 5 * unit, 6 * unit) : "",
  );
  return (
    <>
      <path
        className="sheet-road-line"
        d={lines.map(({ path }) => path).join("")}
        style={{ strokeWidth: LINE * unit }}
      />
      <path
        className="sheet-road-line sheet-road-new"
        d={lines.map(({ cable, path }) => (isNew(cable) ? path : "")).join("")}
        style={{ strokeWidth: NEW_LINE * unit }}
      />
      <path className="sheet-road-line" d={feet.join("")} style={{ strokeWidth: unit }} />
    </>
  );
}

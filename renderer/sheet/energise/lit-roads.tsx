import type { CSSProperties } from "react";
import type { ConditionKind, Energised } from "../../../shared-model/answers/energised.ts";
import { linePath } from "../../../shared-model/geometry/line-path.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { energiseStore, shownAnswer } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { Road } from "../sheet-roads.ts";
import { ConditionTag, TAG } from "./condition-tag.tsx";
import { cableCondition } from "./lit.ts";

interface Roads {
  readonly roads: readonly Road[];
  readonly unit: number;
  readonly road: number;
}

/** The condition of every cable in view as a sleeve around its road, under it: the gravest of its conductors. */
export function LitRoads({ roads, unit, road }: Roads) {
  const answer = useStore(energiseStore, shownAnswer);
  if (answer === undefined || unit === 0) return null;
  return roads.map(({ cable, points }) => {
    const kind = kindOf(answer, cable);
    if (kind === undefined || kind === "ground") return null;
    return (
      <path
        key={cable}
        className={`sheet-lit-line sheet-lit-line-${kind}`}
        d={linePath(points, road * 0.9 + 5 * unit)}
        style={{ strokeWidth: road + 11 * unit, "--px": unit } as CSSProperties}
      />
    );
  });
}

/** Its letter, where the road leaves its first box. */
export function LitRoadTags({ roads, unit }: Omit<Roads, "road">) {
  const answer = useStore(energiseStore, shownAnswer);
  if (answer === undefined || unit === 0) return null;
  return roads.map(({ cable, points }) => {
    const kind = kindOf(answer, cable);
    const at = pointAlong(points, 15 * unit);
    if (kind === undefined || at === undefined) return null;
    return <ConditionTag key={cable} condition={{ kind, volts: 0 }} x={at.x} y={at.y} size={TAG * unit} />;
  });
}

const kindOf = (answer: Energised, cable: CableId): ConditionKind | undefined =>
  cableCondition(answer, cable, shownInstallation().cables[cable])?.kind;

/** The point of a road some units after its beginning. */
function pointAlong(points: readonly Point[], units: number): Point | undefined {
  let left = units;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) continue;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length >= left && length > 0)
      return { x: a.x + ((b.x - a.x) * left) / length, y: a.y + ((b.y - a.y) * left) / length };
    left -= length;
  }
  return points.at(-1);
}

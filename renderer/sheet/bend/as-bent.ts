import { looseRoad } from "../../../shared-model/geometry/roads/lay-roads.ts";
import type { RoadScale } from "../../../shared-model/geometry/roads/road.ts";
import type { Road } from "../sheet-roads.ts";
import type { BendState } from "./bend-store.ts";

/** The road that a hand is bending, as it is bent now. */
export function asBent(roads: readonly Road[], bending: BendState["bending"], scale: RoadScale): readonly Road[] {
  if (bending === undefined) return roads;
  const { cable, bends } = bending;
  return roads.map((road) => (road.cable === cable ? { ...road, points: looseRoad({ ...road, bends }, scale) } : road));
}

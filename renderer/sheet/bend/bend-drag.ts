import { acrossLeg, bendLeg } from "../../../shared-model/geometry/roads/bends.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { BEND_WORDS } from "../../state/arrange-words.ts";
import { dispatch, shownInstallation } from "../../state/document-store.ts";
import { notify } from "../../state/session-store.ts";
import { say } from "../gesture-store.ts";
import { toSheet } from "../sheet-view.ts";
import { bendStore, shownRoad, shownRoads } from "./bend-store.ts";
import { followDrag } from "./follow-drag.ts";
import { wording } from "./words.ts";

/**
 * Follows a press on a selected cable: dragged, the stretch under the pointer goes along, and the cable keeps that way.
 * @param leg Which stretch; absent: the one under the pointer.
 */
export function beginBend(pressed: PointerEvent, cable: CableId, leg?: number): void {
  const road = shownRoad(cable);
  const scale = shownRoads.get().map?.scale;
  if (road === undefined || scale === undefined) return;
  const { points } = road;
  const index = leg ?? nearestLeg(points, toSheet(pressed));
  const [from, to] = [points[index], points[index + 1]];
  if (from === undefined || to === undefined) return;
  const axis = acrossLeg(from, to);
  const bendsAt = (event: PointerEvent): readonly Point[] | undefined =>
    bendLeg(road, points, index, toSheet(event)[axis], scale);
  followDrag(pressed, {
    move(event) {
      const bends = bendsAt(event);
      if (bends !== undefined) bendStore.merge({ bending: { cable, bends } });
    },
    drop() {
      const { bending } = bendStore.get();
      bendStore.merge({ bending: undefined });
      if (bending === undefined) {
        say(BEND_WORDS.noRoom);
        return;
      }
      const bends = road.turned ? bending.bends.toReversed() : bending.bends;
      const done = dispatch({ command: "bend-cable", args: { cable, bends } });
      if (done.ok) say(BEND_WORDS.bent(shownInstallation().cables[cable]?.name ?? ""));
      else notify("problem", wording.theCableStaysAsItWas, [done.refusal.message]);
    },
    leave: () => bendStore.merge({ bending: undefined }),
  });
}

/** The stretch of a way that a point lies nearest to. */
export function nearestLeg(points: readonly Point[], { x, y }: Point): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  points.forEach((b, i) => {
    const a = points[i - 1];
    if (a === undefined) return;
    const nearX = Math.min(Math.max(x, Math.min(a.x, b.x)), Math.max(a.x, b.x));
    const nearY = Math.min(Math.max(y, Math.min(a.y, b.y)), Math.max(a.y, b.y));
    const far = Math.hypot(x - nearX, y - nearY);
    if (far < least) [best, least] = [i - 1, far];
  });
  return best;
}

import type { CableId, EnclosureId, Side } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { createStore, type Store } from "../../state/store.ts";
import type { Road, RoadMap } from "../sheet-roads.ts";

/** A cable that is being led elsewhere: by its way, or by one of its ends. */
export interface BendState {
  /** Bends as the hand has them now, from end `a` of the road to end `b`. */
  readonly bending: { readonly cable: CableId; readonly bends: readonly Point[] } | undefined;
  readonly ending: HeldSide | undefined;
}

/** A side of a cable in the hand. */
export interface HeldSide {
  readonly cable: CableId;
  readonly side: Side;
  /** Where the cable comes from: its other end, else where this one was. */
  readonly from: Point;
  readonly pointer: Point;
  /** The box under the pointer, and what would come of letting go there. */
  readonly over: EnclosureId | undefined;
  readonly words: string;
  readonly possible: boolean;
}

export const bendStore: Store<BendState> = createStore<BendState>({ bending: undefined, ending: undefined });

/** Roads as the sheet shows them now. */
export const shownRoads: Store<{ readonly map: RoadMap | undefined }> = createStore<{
  readonly map: RoadMap | undefined;
}>({ map: undefined });

export const shownRoad = (cable: CableId): Road | undefined =>
  shownRoads.get().map?.roads.find((road) => road.cable === cable);

import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { createStore, type Store } from "../../state/store.ts";
import { type Place, samePlace } from "./place.ts";

/** Where the person who walks by keys is. Of this window only. */
export interface Here {
  readonly at: Place | undefined;
  /** Places before, along what is connected; the last one last. */
  readonly trail: readonly Place[];
  /** A place that the drawing has no element for: a cable between boxes. It is shown, and has the focus. */
  readonly stop: Place | undefined;
}

export const hereStore: Store<Here> = createStore<Here>({ at: undefined, trail: [], stop: undefined });

/** Steps back that are remembered. */
const MOST = 100;

/** Goes on along what is connected, so that one can come back. */
export function wentFrom(place: Place): void {
  hereStore.merge({ trail: [...hereStore.get().trail, place].slice(-MOST) });
}

/** The focus has come to a place by other means than along what is connected. */
export function isAt(at: Place): void {
  const now = hereStore.get();
  if (now.at !== undefined && samePlace(now.at, at)) return;
  const { stop } = now;
  hereStore.set({ ...now, at, stop: stop !== undefined && samePlace(stop, at) ? stop : undefined });
}

/** The place of an element of the sheet that has the focus. */
export function placeOf(element: Element): Place | undefined {
  const { dataset } = element as HTMLElement;
  const box = element.closest<HTMLElement>(".react-flow__node")?.dataset.id as EnclosureId | undefined;
  if (box === undefined) return undefined;
  return dataset.item === undefined ? { kind: "box", box } : { kind: "item", box, key: dataset.item };
}

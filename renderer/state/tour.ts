import { unfold } from "./folding.ts";
import { preferencesStore } from "./preferences-store.ts";
import { closeStart, openStart, startStore } from "./start.ts";
import { createStore, type Store } from "./store.ts";

export interface TourState {
  /** Which step is shown, from 0; undefined while there is no tour. */
  readonly step: number | undefined;
  /** It began on the start page, which comes back when it ends. */
  readonly fromStart: boolean;
}

export const tourStore: Store<TourState> = createStore<TourState>({ step: undefined, fromStart: false });

/** The regions that the tour points at are those of a drawing at work: the start page gives way while it lasts. */
export function startTour(): void {
  const fromStart = startStore.get().open;
  if (fromStart) closeStart();
  unfold("left");
  unfold("right");
  tourStore.set({ step: 0, fromStart });
}

export const goToStep = (step: number): void => tourStore.merge({ step });

/** However it ends, it does not come back by itself. */
export function endTour(): void {
  const { fromStart } = tourStore.get();
  tourStore.set({ step: undefined, fromStart: false });
  declineTour();
  if (fromStart) openStart();
}

/** It is not offered again; the menu still has it. */
export const declineTour = (): void => preferencesStore.merge({ tourSeen: true });

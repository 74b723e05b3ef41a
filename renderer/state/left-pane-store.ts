import { unfold } from "./folding.ts";
import { createStore, type Store } from "./store.ts";

/** Which tab of the left pane is shown: what can be placed, or the drawing as a tree. */
export type LeftTab = "stock" | "outline";

export interface LeftPaneState {
  readonly tab: LeftTab;
  /** Asks the tab to take the focus; counts up, 0 before the first. */
  readonly wanted: number;
}

export const leftPaneStore: Store<LeftPaneState> = createStore<LeftPaneState>({ tab: "stock", wanted: 0 });

export const showLeftTab = (tab: LeftTab): void => leftPaneStore.merge({ tab });

/** Shows a tab and puts the focus into it. */
export function goToLeftTab(tab: LeftTab): void {
  unfold("left");
  leftPaneStore.merge({ tab, wanted: leftPaneStore.get().wanted + 1 });
}

import { useEffect } from "react";
import { type LeftTab, leftPaneStore } from "../state/left-pane-store.ts";
import { useStore } from "../state/use-store.ts";

let answered = 0;

/** Calls `focus` when the tab that is shown is asked to take the focus. */
export function useWantedFocus(tab: LeftTab, focus: () => void): void {
  const wanted = useStore(leftPaneStore, (state) => (state.tab === tab ? state.wanted : 0));
  useEffect(() => {
    if (wanted <= answered) return;
    answered = wanted;
    focus();
  }, [wanted, focus]);
}

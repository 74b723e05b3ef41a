import { preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";

/** Shows the legend, or puts it away; the window remembers it. */
export function LegendButton() {
  const open = useStore(preferencesStore, ({ legend }) => legend);
  return (
    <button
      type="button"
      className="sheet-symbols-button"
      aria-expanded={open}
      onClick={() => preferencesStore.merge({ legend: !open })}
    >
      {wording.legend}
    </button>
  );
}

import { gestureStore } from "./gesture-store.ts";

/** What would follow at a place is learnt a moment after the hold: its words change while they are read. */
let changes: MutationObserver | undefined;

/** Shows the words of a target at it, as they are and as they become; of anything else, nothing. */
export function showTip(on: EventTarget | null): void {
  const target = on instanceof Element ? on.closest("[data-target]") : null;
  changes?.disconnect();
  if (target !== null) {
    changes = new MutationObserver(() => showTip(target));
    changes.observe(target, { attributes: true, attributeFilter: ["aria-label"] });
  }
  const words = target?.getAttribute("aria-label");
  const before = gestureStore.get().tip;
  if (target === null || words === null || words === undefined) {
    if (before !== undefined) gestureStore.merge({ tip: undefined });
    return;
  }
  const { x, y, width, height } = target.getBoundingClientRect();
  const tip = { x: x + width / 2, y: y + height / 2, words };
  if (before?.x !== tip.x || before.y !== tip.y || before.words !== words) gestureStore.merge({ tip });
}

import { gestureStore, say } from "./gesture-store.ts";
import { wording } from "./words.ts";

/** Begins or ends the mode in which presses add to the selection. */
export function setChoosing(choosing: boolean): void {
  gestureStore.merge({ choosing });
  say(choosing ? wording.choosingSeveralPressBoxesOrDrag : wording.choosingHasEnded);
}

/** Milliseconds after a pen was last felt in which a touch is the hand that holds it. A value of judgement. */
const PALM_MS = 500;

let down = false;
let felt = Number.NEGATIVE_INFINITY;

/** Notes what a pen does, hovering included. */
export function notePen({ type, pointerType, buttons, timeStamp }: PointerEvent): void {
  if (pointerType !== "pen") return;
  felt = timeStamp;
  down = type !== "pointerup" && type !== "pointercancel" && buttons !== 0;
}

/** Whether a touch is the palm of a hand that draws with a pen: one is down, or was felt a moment ago. */
export const isPalm = ({ timeStamp }: Event): boolean => down || timeStamp - felt < PALM_MS;

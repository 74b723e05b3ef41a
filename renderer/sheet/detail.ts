/** At this zoom and above every conductor is drawn. */
export const NEAR_FROM = 0.45;
const STEP = 2 ** (1 / 3);
/** Steps of the middle distance; beyond the last, boxes are drawn from afar. */
const MIDDLE_STEPS = 7;
export const MIDDLE_FROM = NEAR_FROM / STEP ** MIDDLE_STEPS;
/** Beyond this letters only grow with the drawing. */
const MOST_STEPS = 14;

export type Level = "near" | "middle" | "far";

/**
 * How far away the drawing is: 0 near, then one more for each time it has shrunk by a fifth. What keeps its size on the
 * screen is laid out anew from step to step, so that zooming in between renders nothing.
 */
export const stepAt = (zoom: number): number =>
  zoom >= NEAR_FROM ? 0 : Math.min(MOST_STEPS, 1 + Math.floor(Math.log(NEAR_FROM / zoom) / Math.log(STEP) + 1e-9));

export const levelOf = (step: number): Level => (step === 0 ? "near" : step <= MIDDLE_STEPS ? "middle" : "far");

/** Drawing units of a pixel in the middle of a step. */
export const unitOf = (step: number): number => STEP ** (step - 0.5) / NEAR_FROM;

/** Where the button of a level takes the drawing. */
export const ZOOM_OF: Readonly<Record<Level, number>> = { near: 0.82, middle: 0.2, far: 0.07 };

/** Of the distances from afar, how many share the lanes of their cables. */
const SHARING = 3;

/** The distance from which cables are laid for a distance from afar. */
export const laidFrom = (step: number): number =>
  Math.min(MOST_STEPS, MIDDLE_STEPS + 2 + SHARING * Math.floor((step - MIDDLE_STEPS - 1) / SHARING));

type Transformed = { readonly transform: readonly [number, number, number] };

/** Selector of the flow's store. */
export const stepNow = ({ transform }: Transformed): number => stepAt(transform[2]);
export const levelNow = ({ transform }: Transformed): Level => levelOf(stepAt(transform[2]));

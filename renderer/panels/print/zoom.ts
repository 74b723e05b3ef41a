/** How large a page is shown: all of it, as wide as there is room, or in parts of its true size. */
export type Zoom = "page" | "width" | number;

/** Points of a screen in a millimetre, as CSS has them. */
const TRUE_SIZE = 96 / 25.4;
/** White around the page, in points. */
const AROUND = 16;

export const ZOOM_STEPS: readonly number[] = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4];

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Points for each millimetre of a page.
 * @param page In millimetres.
 * @param room In points.
 */
export function scaleOf(zoom: Zoom, page: Size, room: Size): number {
  if (typeof zoom === "number") return zoom * TRUE_SIZE;
  const across = Math.max(1, room.width - 2 * AROUND) / page.width;
  if (zoom === "width") return across;
  return Math.min(across, Math.max(1, room.height - 2 * AROUND) / page.height);
}

/** A scale as a part of the true size. */
export const zoomOfScale = (scale: number): number => scale / TRUE_SIZE;

/** The next step above or below how large it is now. */
export function stepped(scale: number, direction: 1 | -1): number {
  const now = zoomOfScale(scale);
  // A step that is as good as reached is not taken.
  const beyond = (step: number): boolean => (direction === 1 ? step > now * 1.02 : step < now / 1.02);
  const steps = direction === 1 ? ZOOM_STEPS : [...ZOOM_STEPS].reverse();
  return steps.find(beyond) ?? steps[steps.length - 1] ?? 1;
}

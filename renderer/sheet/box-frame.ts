import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { LEAST_WHOLE, READABLE } from "./view-fit.ts";

/** How the sheet is seen. */
export interface View {
  readonly zoom: number;
  readonly width: number;
  readonly height: number;
}

const SHARE = 0.94;
/** Of an opened box: its plate reaches beyond its drawing. */
const PLATE = 80;
const FOOT = 60;

/**
 * How many times larger than the sheet an opened box is drawn: never smaller, and whole where its letters can be read then;
 * on a smaller screen it is panned.
 */
export function magnification({ bounds }: Pick<BoxDrawing, "bounds">, view: View): number {
  const fitting = Math.min(
    (view.width * SHARE) / (bounds.width + PLATE),
    ((view.height - FOOT) * SHARE) / (bounds.height + PLATE),
  );
  return Math.max(1, (fitting < LEAST_WHOLE ? READABLE : Math.min(READABLE, fitting)) / view.zoom);
}

type Sized = Pick<BoxDrawing, "bounds" | "width" | "height">;

/** What the drawing of a box covers on the sheet, relative to its place; magnified about its own middle. */
export function frameOf({ bounds, width, height }: Sized, scale: number): Rect {
  return {
    x: width / 2 - scale * (width / 2 - bounds.x),
    y: height / 2 - scale * (height / 2 - bounds.y),
    width: bounds.width * scale,
    height: bounds.height * scale,
  };
}

/** A point of the sheet in the drawing units of a box. */
export function intoBox({ x, y }: Point, origin: Point, { width, height }: Sized, scale: number): Point {
  return {
    x: (x - origin.x - width / 2) / scale + width / 2,
    y: (y - origin.y - height / 2) / scale + height / 2,
  };
}

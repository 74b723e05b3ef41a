import type { Rect } from "../geometry/box-drawing.ts";
import type { Mark } from "./display-list.ts";
import { pathBounds } from "./path-data.ts";

/** The least box around marks, half the width of their lines included; undefined where nothing is drawn. */
export function boundsOfMarks(marks: readonly Mark[]): Rect | undefined {
  let all: Rect | undefined;
  for (const mark of marks) {
    const own = boundsOfMark(mark);
    if (own !== undefined) all = all === undefined ? own : hull(all, own);
  }
  return all;
}

function boundsOfMark(mark: Mark): Rect | undefined {
  switch (mark.kind) {
    case "text":
      return mark.text.trim() === "" ? undefined : mark.box;
    case "path":
    case "rect": {
      if (mark.stroke === undefined && mark.fill === undefined && mark.hatch === undefined) return undefined;
      const half = (mark.stroke?.width ?? 0) / 2;
      const { x, y, width, height } = mark.kind === "rect" ? mark : pathBounds(mark.d);
      return { x: x - half, y: y - half, width: width + 2 * half, height: height + 2 * half };
    }
    case "group": {
      const inside = boundsOfMarks(mark.marks);
      const seen = inside !== undefined && mark.clip !== undefined ? common(inside, mark.clip) : inside;
      if (seen === undefined) return undefined;
      const { scale = 1, shift = { x: 0, y: 0 } } = mark;
      return {
        x: seen.x * scale + shift.x,
        y: seen.y * scale + shift.y,
        width: seen.width * scale,
        height: seen.height * scale,
      };
    }
  }
}

function hull(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}

function common(a: Rect, b: Rect): Rect | undefined {
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  const width = Math.min(a.x + a.width, b.x + b.width) - x;
  const height = Math.min(a.y + a.height, b.y + b.height) - y;
  return width <= 0 || height <= 0 ? undefined : { x, y, width, height };
}

import { tidy } from "../marks.ts";
import { readPath } from "../path-data.ts";

/** Drawing units, a few thousandths of a millimetre on paper: nobody sees it, and it is not lost to rounding. */
const ASKEW = 0.02;

/**
 * A path that is to be drawn wide and then narrower over it, so that its edges are left. Where all of it runs level or
 * upright, readers of PDF move each of the two to whole pixels of their own, and an edge is lost; they leave lines alone
 * that are a trace askew. A path that is not of straight lines only, or that is askew somewhere, stays as it is.
 */
export function offAxis(d: string): string {
  const steps = readPath(d);
  let [x, y] = [0, 0];
  let turned: { readonly x: number; readonly y: number } | undefined;
  for (const { letter, numbers } of steps) {
    const [toX = 0, toY = 0] = numbers;
    if (letter === "L") {
      if (x !== toX && y !== toY) return d;
      turned = x === toX ? { x: toX + ASKEW, y: toY } : { x: toX, y: toY + ASKEW };
    } else if (letter !== "M") return d;
    [x, y] = [toX, toY];
  }
  if (turned === undefined || steps[steps.length - 1]?.letter !== "L") return d;
  return `${d.slice(0, d.lastIndexOf("L"))}L${tidy(turned.x)} ${tidy(turned.y)}`;
}

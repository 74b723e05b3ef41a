import { PITCH } from "../../../shared-model/geometry/metrics.ts";
import { sessionStore } from "../../state/session-store.ts";
import { applyTool } from "../apply-tool.ts";
import { bringAreaIntoView } from "../sheet-view.ts";
import { aimAt, aimNow } from "./aim.ts";
import { freeSpot } from "./free-spot.ts";
import { newBox } from "./spot.ts";

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Steps of the pitch of the drawing. */
const STEP = 5;
const LEAP = 25;

/** Keys on the sheet while a box of the stock is in the hand: arrows move it, Enter puts it down. */
export function placeKey({ key, shiftKey, altKey }: KeyboardEvent): boolean {
  const { tool } = sessionStore.get();
  if (tool?.kind !== "enclosure" || altKey) return false;
  const at = aimNow()?.at ?? freeSpot();
  if (key === "Enter") return applyTool({ at, enclosure: undefined, device: undefined });
  const way = ARROWS[key];
  if (way === undefined) return false;
  const step = PITCH * (shiftKey ? LEAP : STEP);
  const next = { x: at.x + way[0] * step, y: at.y + way[1] * step };
  aimAt({ at: next, enclosure: undefined, device: undefined, by: "keys" });
  const { width = 0, height = 0 } = newBox(tool.id) ?? {};
  bringAreaIntoView({ ...next, width, height });
  return true;
}

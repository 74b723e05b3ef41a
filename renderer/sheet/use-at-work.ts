import { useEffect } from "react";
import { tellGrownConnectors } from "../state/connector-grown.ts";
import { revealChanged } from "./reveal-changed.ts";
import { useNoticeSpot } from "./use-notice-spot.ts";

/**
 * What follows the work of a hand on the sheet: nothing of it is needed before the drawing is seen.
 * @param held What is in the hand.
 */
export function useAtWork(held: unknown): void {
  useNoticeSpot(held);
  useEffect(() => tellGrownConnectors(), []);
  useEffect(() => revealChanged(), []);
}

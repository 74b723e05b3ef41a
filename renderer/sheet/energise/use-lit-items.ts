import { useMemo } from "react";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { energiseStore } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { BoxItem } from "../box-items.ts";
import { laterParts } from "../later.ts";
import type { Lit } from "./lit.ts";

/** What can be pressed in a box; where it is energised, by `litItems`. */
export function useLitItems(
  items: readonly BoxItem[],
  drawing: BoxDrawing | undefined,
  lit: Lit | undefined,
): readonly BoxItem[] {
  const inHand = useStore(energiseStore, (state) => state.on && state.inHand !== undefined);
  return useMemo(() => {
    const parts = laterParts();
    if (lit === undefined || drawing === undefined || items.length === 0 || parts === undefined) return items;
    return parts.litItems(items, drawing, lit, inHand);
  }, [items, drawing, lit, inHand]);
}

import { useStoreApi } from "@xyflow/react";
import { memo, useLayoutEffect, useMemo, useRef } from "react";
import type { SymbolSet } from "../../../shared-model/model/symbol-set.ts";
import type { RoomSign } from "../room-signs.ts";
import type { Road } from "../sheet-roads.ts";
import type { RoadTraits } from "./far-paint-roads.ts";
import { FarPainter, type FarScene } from "./far-painter.ts";
import type { FarItem } from "./far-scene.ts";

interface Props {
  /** Empty where nothing is painted: boxes and cables are then elements of the page. */
  readonly items: readonly FarItem[];
  readonly roads: readonly Road[];
  readonly rooms: readonly RoomSign[];
  readonly traits: RoadTraits;
  readonly set: SymbolSet;
  readonly unit: number;
}

/**
 * All that is seen from afar, painted as one layer under the boxes: a whole building costs the page one element. What is
 * pressed, dragged and walked to are the boxes over it, which show nothing themselves; people who hear the sheet have
 * those and the outline.
 */
export const FarLayer = memo(function FarLayer({ items, roads, rooms, traits, set, unit }: Props) {
  const host = useRef<HTMLCanvasElement>(null);
  const store = useStoreApi();
  const painter = useRef<FarPainter>(undefined);
  const scene = useMemo(
    (): FarScene => ({ items, roads, rooms, traits, set, unit }),
    [items, roads, rooms, traits, set, unit],
  );
  useLayoutEffect(() => {
    const canvas = host.current;
    if (canvas === null) return undefined;
    const made = new FarPainter(canvas, () => store.getState());
    painter.current = made;
    const stop = store.subscribe(made.look);
    return () => {
      stop();
      made.end();
      painter.current = undefined;
    };
  }, [store]);
  // In the same frame as the elements of the page that come or go with it.
  useLayoutEffect(() => painter.current?.show(scene), [scene]);
  return (
    <div className="sheet-painted" aria-hidden="true" data-boxes={items.length || undefined}>
      <canvas ref={host} />
    </div>
  );
});

import { useStoreApi } from "@xyflow/react";
import { useEffect, useState } from "react";
import { inSlices } from "../../shared-model/lib/in-slices.ts";
import { afterPaint } from "../platform/after-paint.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { createRoads, type RoadMap } from "./sheet-roads.ts";

/** Roads, and from where they are laid to be seen. */
export interface LaidRoads {
  readonly shown: SheetDrawings;
  readonly step: number;
  readonly map: RoadMap;
}

/** A zoom is at rest after this, in milliseconds: longer than from one step of a wheel to the next. */
const REST_MS = 150;
/** Milliseconds after which the window has its turn again. */
const SLICE_MS = 8;

const NONE: RoadMap = { roads: [], scale: { road: 0, lane: 1, stepOut: 0, between: 0, around: 0, past: 0 } };
const ignore = (): void => {};

/**
 * The roads of a drawing as they are laid for a distance. The many of a large building are laid anew once the zoom has come
 * to rest, between two frames, and until then seen as they were; what an edit moved is laid at once.
 */
export function useLaidRoads(shown: SheetDrawings, step: number, isLarge: boolean): LaidRoads {
  const [lay] = useState(createRoads);
  const flow = useStoreApi();
  const [kept, keep] = useState<LaidRoads>();
  let laid = kept;
  // While boxes still wait to be drawn, lanes would be given away too early.
  if (shown.missing > 0) laid = { shown, step, map: NONE };
  else if (laid?.shown !== shown || (laid.step !== step && !isLarge)) {
    laid = { shown, step, map: lay(shown, step) };
    keep(laid);
  }
  const isBehind = laid.step !== step;
  useEffect(() => {
    if (!isBehind) return undefined;
    let drop = ignore;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let { transform } = flow.getState();
    const begin = (): void => {
      stopWatching();
      drop = inSlices(lay.inSteps(shown, step), SLICE_MS, {
        now: () => performance.now(),
        // One slice a frame, so that whatever a hand does meanwhile goes on.
        later: afterPaint,
        tell: ignore,
        end: (map) => keep({ shown, step, map }),
      });
    };
    const wait = (): void => {
      clearTimeout(timer);
      timer = setTimeout(begin, REST_MS);
    };
    const stopWatching = flow.subscribe((now) => {
      if (now.transform[2] !== transform[2]) wait();
      transform = now.transform;
    });
    wait();
    return () => {
      stopWatching();
      clearTimeout(timer);
      drop();
    };
  }, [isBehind, shown, step, lay, flow]);
  return laid;
}

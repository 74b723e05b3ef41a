import { useSyncExternalStore } from "react";

const query = (): MediaQueryList => matchMedia("(pointer: coarse)");

function watch(tell: () => void): () => void {
  const media = query();
  media.addEventListener("change", tell);
  return () => media.removeEventListener("change", tell);
}

/** Whether the window is worked with fingers: what is pressed is larger then. */
export const useCoarse = (): boolean => useSyncExternalStore(watch, () => query().matches);

import { useEffect } from "react";
import { afterPaint } from "../platform/after-paint.ts";
import { fetchClipboard } from "../state/clipboard.ts";
import { fetchCommandLines } from "./command/fetch-lines.ts";

/**
 * Brings what a drawing at work needs in a moment and the start page does without. The questions of the window are among
 * it: a browser host that has been ended since must not keep it from asking about unsaved work.
 */
export function useFetchedAhead(): void {
  useEffect(
    () =>
      // The drawing is seen first.
      afterPaint(() => {
        // What could not be had is asked for again when it is used.
        for (const fetching of [import("./dialogs/open-dialog.tsx"), fetchCommandLines(), fetchClipboard()])
          fetching.catch(() => undefined);
      }),
    [],
  );
}

import { lazy, Suspense, useEffect } from "react";
import { DialogHost } from "./panels/dialogs/dialog-host.tsx";
import { StartPage } from "./panels/start/start-page.tsx";
import { useFileDrop } from "./panels/use-file-drop.ts";
import { useWindowKeys } from "./panels/use-window-keys.ts";
import { keepSelectionTrue, tellHeldBack } from "./state/shown-state.ts";
import { leaveStartWhenWorking, startStore } from "./state/start.ts";
import { useStore } from "./state/use-store.ts";

const Workbench = lazy(() => import("./workbench.tsx"));
const BoxPicture = lazy(() => import("./sheet/box-picture.tsx"));

/** The window: the start page, or the drawing with everything around it. */
export function App() {
  useWindowKeys();
  useFileDrop();
  useEffect(keepSelectionTrue, []);
  useEffect(tellHeldBack, []);
  useEffect(leaveStartWhenWorking, []);
  const start = useStore(startStore, (state) => state.open);
  useEffect(() => {
    // In a narrow window the page scrolls, and a sample may stand far down.
    if (!start) scrollTo(0, 0);
  }, [start]);
  return (
    <>
      {start ? (
        <StartPage picture={BoxPicture} />
      ) : (
        <Suspense fallback={<p className="opening">Opening the sheet.</p>}>
          <Workbench />
        </Suspense>
      )}
      <DialogHost />
    </>
  );
}

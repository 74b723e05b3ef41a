import { type ComponentType, lazy, Suspense, useEffect, useState } from "react";
import { DialogHost } from "./panels/dialogs/dialog-host.tsx";
import { StartPage } from "./panels/start/start-page.tsx";
import { useFileDrop } from "./panels/use-file-drop.ts";
import { useWindowKeys } from "./panels/use-window-keys.ts";
import { startStore } from "./state/start.ts";
import { useStore } from "./state/use-store.ts";

const BoxPicture = lazy(() => import("./sheet/box-picture.tsx"));

let workbench: ComponentType | undefined;

/** Fetches the workbench before it is needed. Where that fails, it is fetched again when it is shown. */
export async function fetchWorkbench(): Promise<void> {
  try {
    workbench = (await import("./workbench.tsx")).default;
  } catch {
    workbench = undefined;
  }
}

const LazyWorkbench = lazy(() => import("./workbench.tsx"));

/** The window: the start page, or the drawing with everything around it. */
export function App() {
  useWindowKeys();
  useFileDrop();
  const shown = useStore(startStore, shownOf);
  const ahead = useStore(startStore, (state) => state.ahead);
  useEffect(() => {
    // In a narrow window the page scrolls, and a sample may stand far down.
    if (shown === "drawing") scrollTo(0, 0);
  }, [shown]);
  return (
    <>
      {shown === "opening" && <Opening />}
      {shown === "start" && <StartPage picture={BoxPicture} />}
      {(shown === "drawing" || (shown === "opening" && ahead)) && (
        <div className="workbench" inert={shown !== "drawing"}>
          <Drawing />
        </div>
      )}
      <DialogHost />
    </>
  );
}

const shownOf = ({ open, awaiting }: ReturnType<typeof startStore.get>): "opening" | "start" | "drawing" => {
  if (!open) return "drawing";
  return awaiting ? "opening" : "start";
};

function Drawing() {
  // Once it is there, nothing is waited for: a page that is shown in the meantime would stand for a while.
  const [Workbench] = useState(() => workbench ?? LazyWorkbench);
  return (
    <Suspense fallback={<Opening />}>
      <Workbench />
    </Suspense>
  );
}

/** Comes into sight when it takes long. */
function Opening() {
  return (
    <main className="opening" aria-label="Opening">
      <p role="status">Opening the drawing.</p>
    </main>
  );
}

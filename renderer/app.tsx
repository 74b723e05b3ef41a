import { type ComponentType, lazy, useEffect, useState } from "react";
import { DialogHost } from "./panels/dialogs/dialog-host.tsx";
import { StartPage } from "./panels/start/start-page.tsx";
import { useFileDrop } from "./panels/use-file-drop.ts";
import { useWindowKeys } from "./panels/use-window-keys.ts";
import { startStore } from "./state/start.ts";
import { useStore } from "./state/use-store.ts";
import { wording } from "./words/words.ts";

const BoxPicture = lazy(() => import("./sheet/box-picture.tsx"));
const ExamplePictures = lazy(() => import("./sheet/example-pictures.tsx"));

let workbench: ComponentType | undefined;

/** Fetches the workbench before it is needed. Where that fails, it is fetched again when it is shown. */
export async function fetchWorkbench(): Promise<void> {
  try {
    workbench = (await import("./workbench.tsx")).default;
  } catch {
    workbench = undefined;
  }
}

/** Whoever left it by a key stands on nothing then, since what was pressed is gone with it. */
let startWasShown = false;

/** The window: the start page, or the drawing with everything around it. */
export function App() {
  useWindowKeys();
  useFileDrop();
  const shown = useStore(startStore, shownOf);
  useEffect(() => {
    if (shown === "start") startWasShown = true;
    // In a narrow window the page scrolls, and a sample may stand far down.
    if (shown === "drawing") scrollTo(0, 0);
  }, [shown]);
  return (
    <>
      {shown === "opening" && <Opening />}
      {shown === "start" && <StartPage picture={BoxPicture} />}
      {shown === "drawing" && <Drawing />}
      <DialogHost examples={ExamplePictures} />
    </>
  );
}

const shownOf = ({ open, awaiting }: ReturnType<typeof startStore.get>): "opening" | "start" | "drawing" => {
  if (!open) return "drawing";
  return awaiting ? "opening" : "start";
};

/**
 * Not by `lazy` and `Suspense`: what once stood in the place of something is kept there for a third of a second, and a
 * drawing that has been read would wait for that.
 */
function Drawing() {
  const [fetched, setFetched] = useState<ComponentType | "failed" | undefined>(() => workbench);
  useEffect(() => {
    if (fetched === undefined) fetchWorkbench().then(() => setFetched(() => workbench ?? "failed"));
  }, [fetched]);
  useEffect(() => {
    if (fetched === undefined || fetched === "failed" || !startWasShown) return;
    if (document.activeElement === document.body)
      document.querySelector<HTMLElement>("main.sheet-region")?.focus({ preventScroll: true });
  }, [fetched]);
  if (fetched === "failed") throw new Error("A part of the window could not be fetched. Load the window again.");
  if (fetched === undefined) return <Opening />;
  const Workbench = fetched;
  return <Workbench />;
}

/** Comes into sight when it takes long. */
function Opening() {
  return (
    <main className="opening" aria-label={wording.opening}>
      <p role="status">{wording.openingTheDrawing}</p>
    </main>
  );
}

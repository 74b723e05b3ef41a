import { lazy, useEffect } from "react";
import { Fetched, fetchedPart } from "./fetched-part.tsx";
import { DialogHost } from "./panels/dialogs/dialog-host.tsx";
import { StartPage } from "./panels/start/start-page.tsx";
import { useFileDrop } from "./panels/use-file-drop.ts";
import { useWindowKeys } from "./panels/use-window-keys.ts";
import { startStore } from "./state/start.ts";
import { useStore } from "./state/use-store.ts";
import { wording } from "./words/words.ts";

const BoxPicture = lazy(() => import("./sheet/box-picture.tsx"));
const ExamplePictures = lazy(() => import("./sheet/example-pictures.tsx"));

export const workbench = fetchedPart(() => import("./workbench.tsx"));

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
      {shown === "drawing" && <Fetched part={workbench} meanwhile={<Opening />} onShown={drawingShown} />}
      <DialogHost examples={ExamplePictures} />
    </>
  );
}

const shownOf = ({ open, awaiting }: ReturnType<typeof startStore.get>): "opening" | "start" | "drawing" => {
  if (!open) return "drawing";
  return awaiting ? "opening" : "start";
};

function drawingShown(): void {
  if (startWasShown && document.activeElement === document.body)
    document.querySelector<HTMLElement>("main.sheet-region")?.focus({ preventScroll: true });
}

/** Comes into sight when it takes long. */
function Opening() {
  return (
    <main className="opening" aria-label={wording.opening}>
      <p role="status">{wording.openingTheDrawing}</p>
    </main>
  );
}

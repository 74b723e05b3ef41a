import { useCallback, useEffect, useState } from "react";
import { documentStore, installationOf } from "../state/document-store.ts";
import { useStore } from "../state/use-store.ts";
import { laterWording } from "./later-words.ts";
import { keepView } from "./remember-view.ts";
import { currentView, fitAll, sheetArea } from "./sheet-view.ts";
import { shownOf } from "./view-fit.ts";
import { whenViewRests } from "./view-rest.ts";
import { areasOfAll } from "./whole-of.ts";

/** The way back where nothing of the drawing is in view; looked at whenever the view comes to rest. */
export function BackToDrawing() {
  const installation = useStore(documentStore, installationOf);
  const [away, setAway] = useState(false);
  const look = useCallback(() => {
    const [view, host] = [currentView(), sheetArea()];
    if (view === undefined || host === undefined) return;
    const shown = shownOf(areasOfAll(documentStore.get()), host, view);
    setAway(shown === "none");
    if (shown !== "none") keepView(view, host, shown);
  }, []);
  useEffect(() => whenViewRests(look), [look]);
  useEffect(() => {
    if (Object.keys(installation.enclosures).length > 0) look();
    else setAway(false);
  }, [installation, look]);
  if (!away) return null;
  return (
    <div className="sheet-away">
      <p role="status">{laterWording.nothingOfTheDrawingIsHere}</p>
      <button type="button" className="button" onClick={goBack}>
        {laterWording.backToTheDrawing}
      </button>
    </div>
  );
}

/** The button goes: the keys go on in the drawing. */
function goBack(): void {
  document.querySelector<HTMLElement>("[data-sheet-stop]")?.focus({ preventScroll: true });
  fitAll();
}

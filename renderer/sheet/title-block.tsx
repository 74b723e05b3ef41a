import { useStore as useFlowStore } from "@xyflow/react";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { STATE_WORDS } from "../state/shown-state.ts";
import { useStore } from "../state/use-store.ts";
import { DetailSwitch } from "./detail-switch.tsx";
import { useDifferenceWords } from "./difference.ts";
import { fitAll, fitBoxes, zoomBy, zoomToFull } from "./sheet-view.ts";
import { boxesOf } from "./use-go-to.ts";

const percentOf = ({ transform }: { readonly transform: readonly [number, number, number] }): number =>
  Math.round(transform[2] * 100);

/** Lower right on the sheet, as on a drawing: which account of the wiring it shows, whether it is checked, at what size. */
export function TitleBlock() {
  const state = useStore(documentStore, (document) => STATE_WORDS[document.state].toUpperCase());
  const title = useStore(documentStore, (document) => document.project.title);
  const difference = useDifferenceWords();
  const revision = useStore(documentStore, (document) => document.revision);
  const checked = useStore(findingsStore, (found) => found.revision);
  return (
    <section className="sheet-title-block" aria-label="Title block">
      <div className="sheet-title-cell sheet-title-sheet">
        <span className="sheet-title-caption">sheet</span>
        <span className="sheet-title-value">{title}</span>
      </div>
      <div className="sheet-title-cell">
        <span className="sheet-title-caption">state</span>
        <span className="sheet-title-value sheet-title-state">{state}</span>
      </div>
      {difference !== undefined && (
        <div className="sheet-title-cell">
          <span className="sheet-title-caption">boxes, against as found</span>
          <span className="sheet-title-value">{difference}</span>
        </div>
      )}
      <div className="sheet-title-cell sheet-title-checks">
        <span className="sheet-title-caption">checks</span>
        <span className="sheet-title-value">{checked < revision ? "checking" : "up to date"}</span>
      </div>
      <DetailSwitch />
      <Zoom />
    </section>
  );
}

/** The boxes that are selected, or that what is selected is in. */
function boxesOfSelection({ selection }: ReturnType<typeof sessionStore.get>): string {
  const installation = shownInstallation();
  return [...new Set(selection.flatMap((each) => boxesOf(installation, each)))].join(" ");
}

function Zoom() {
  const percent = useFlowStore(percentOf);
  const boxes = useStore(sessionStore, boxesOfSelection);
  return (
    <fieldset className="sheet-zoom" aria-label="Size of the drawing">
      <button type="button" aria-label="Smaller" onClick={() => zoomBy(1 / 1.25)}>
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6h9" />
        </svg>
      </button>
      <button type="button" className="fig" aria-label={`${percent} %, go to full size`} onClick={zoomToFull}>
        {percent} %
      </button>
      <button type="button" aria-label="Larger" onClick={() => zoomBy(1.25)}>
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6h9M6 1.5v9" />
        </svg>
      </button>
      <button type="button" onClick={fitAll}>
        Fit
      </button>
      <button type="button" disabled={boxes === ""} onClick={() => fitBoxes(boxes.split(" "))}>
        Selection
      </button>
    </fieldset>
  );
}

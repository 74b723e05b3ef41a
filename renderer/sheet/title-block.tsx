import { useStore as useFlowStore } from "@xyflow/react";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { useKeys, withKeys } from "../state/keys/keys.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { STATE_WORDS } from "../state/shown-state.ts";
import { useStore } from "../state/use-store.ts";
import { DetailSwitch } from "./detail-switch.tsx";
import { useDifferenceWords } from "./difference.ts";
import { LegendButton } from "./legend-button.tsx";
import { fitAll, fitBoxes, zoomBy, zoomToFull } from "./sheet-view.ts";
import { boxesOf } from "./use-go-to.ts";
import { wording } from "./words.ts";

const percentOf = ({ transform }: { readonly transform: readonly [number, number, number] }): number =>
  Math.round(transform[2] * 100);

/** Lower right on the sheet, as on a drawing: which account of the wiring it shows, whether it is checked, at what size. */
export function TitleBlock() {
  const scoped = useStore(scopeStore, isScopeShown);
  const shown = useStore(documentStore, (document) => STATE_WORDS[document.state].toUpperCase());
  const state = scoped ? wording.scope.toUpperCase() : shown;
  const title = useStore(documentStore, (document) => document.project.title);
  const difference = useDifferenceWords();
  const revision = useStore(documentStore, (document) => document.revision);
  const checked = useStore(findingsStore, (found) => found.revision);
  return (
    <section className="sheet-title-block" aria-label={wording.titleBlock}>
      <div className="sheet-title-cell sheet-title-sheet">
        <span className="sheet-title-caption">{wording.sheet}</span>
        <span className="sheet-title-value">{title}</span>
      </div>
      <div className="sheet-title-cell">
        <span className="sheet-title-caption">{wording.state}</span>
        <span className="sheet-title-value sheet-title-state">{state}</span>
      </div>
      {difference !== undefined && (
        <div className="sheet-title-cell">
          <span className="sheet-title-caption">{wording.boxesAgainstAsFound}</span>
          <span className="sheet-title-value">{difference}</span>
        </div>
      )}
      <div className="sheet-title-cell sheet-title-checks">
        <span className="sheet-title-caption">{wording.checks}</span>
        <span className="sheet-title-value">{checked < revision ? wording.checking : wording.upToDate}</span>
      </div>
      <LegendButton />
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
    <fieldset className="sheet-zoom" aria-label={wording.sizeOfTheDrawing}>
      <button
        type="button"
        aria-label={wording.smaller}
        title={withKeys(wording.smaller, useKeys("zoom-out"))}
        onClick={() => zoomBy(1 / 1.25)}
      >
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6h9" />
        </svg>
      </button>
      <button
        type="button"
        className="fig"
        aria-label={wording.goToFullSize(percent)}
        title={withKeys(wording.fullSize, useKeys("zoom-full"))}
        onClick={zoomToFull}
      >
        {percent} %
      </button>
      <button
        type="button"
        aria-label={wording.larger}
        title={withKeys(wording.larger, useKeys("zoom-in"))}
        onClick={() => zoomBy(1.25)}
      >
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6h9M6 1.5v9" />
        </svg>
      </button>
      <button type="button" title={withKeys(wording.fitEverything, useKeys("zoom-all"))} onClick={fitAll}>
        {wording.fit}
      </button>
      <button type="button" disabled={boxes === ""} onClick={() => fitBoxes(boxes.split(" "))}>
        {wording.selection}
      </button>
    </fieldset>
  );
}

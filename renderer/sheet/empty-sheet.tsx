import { openDialog } from "../state/dialog-store.ts";
import { wording } from "./words.ts";

/** What to do first, on a sheet with nothing on it. */
export function EmptySheet() {
  return (
    <div className="sheet-empty">
      <h2>{wording.nothingIsDrawnYet}</h2>
      <p>{wording.dragABoxFromTheStock}</p>
      <button type="button" className="link" onClick={() => openDialog({ kind: "samples" })}>
        {wording.lookAtASample}
      </button>
    </div>
  );
}

import { openDialog } from "../state/dialog-store.ts";

/** What to do first, on a sheet with nothing on it. */
export function EmptySheet() {
  return (
    <div className="sheet-empty">
      <h2>Nothing is drawn yet</h2>
      <p>
        Drag a box from the stock onto the sheet, or press it there and then press the sheet. Run cables from box to
        box, put devices in, then land each conductor end.
      </p>
      <button type="button" className="link" onClick={() => openDialog({ kind: "samples" })}>
        Look at a sample
      </button>
    </div>
  );
}

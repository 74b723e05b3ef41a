import { useEffect } from "react";
import { closeDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { printAll, savePdf, saveWorkbook } from "../../state/print/copies.ts";
import { type PrintState, printStore } from "../../state/print/print-store.ts";
import { beginPrinting, endPrinting } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { Choices } from "./choices.tsx";
import { PageList } from "./page-list.tsx";
import { Preview } from "./preview.tsx";
import "./print.css";
import { wording } from "./words.ts";

/** Sheets of the drawing on paper: chosen at the left, seen at the right, printed and saved from the foot. */
export default function PrintDialog() {
  const isDrawn = useStore(documentStore, (document) => Object.keys(installationOf(document).enclosures).length > 0);
  useEffect(() => {
    if (!isDrawn) return undefined;
    void beginPrinting();
    return endPrinting;
  }, [isDrawn]);
  if (!isDrawn)
    return (
      <Modal title={wording.printAndExport} onClose={closeDialog}>
        <p>{wording.nothingIsDrawn}</p>
      </Modal>
    );
  return (
    <Modal title={wording.printAndExport} onClose={closeDialog} foot={<Foot />} page>
      <div className="print">
        <Choices />
        <PageList />
        <Preview />
      </div>
      <Said />
    </Modal>
  );
}

/** For people who hear it: pages, what was saved, what went wrong. */
function Said() {
  const said = useStore(printStore, (state) => state.said);
  return (
    <p role="status" className="unseen">
      {said}
    </p>
  );
}

const canSave = ({ laid, work }: PrintState): boolean => laid !== undefined && laid.pages.length > 0 && !work;

function Foot() {
  const can = useStore(printStore, canSave);
  const hasLists = useStore(printStore, ({ laid }) => laid?.sheets.some(({ hasList }) => hasList) === true);
  const note = useStore(printStore, (state) => state.note);
  const act = (does: () => unknown) => () => void (can && does());
  return (
    <>
      <button type="button" className="button main" aria-disabled={!can} onClick={act(() => savePdf())}>
        {wording.savePdf}
      </button>
      <button type="button" className="button" aria-disabled={!can} onClick={act(printAll)}>
        {wording.print}
      </button>
      {hasLists && (
        <button type="button" className="button" aria-disabled={!can} onClick={act(() => saveWorkbook())}>
          {wording.listsAsWorkbook}
        </button>
      )}
      <span className="print-note">{note}</span>
      <button type="button" className="button" onClick={() => closeDialog()}>
        {wording.close}
      </button>
    </>
  );
}

import { useEffect, useId, useRef, useState } from "react";
import { closeDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { nextEnclosureName } from "../../state/naming.ts";
import { cableNames, FIRST_SEEN, readyBox } from "../../state/new-box-form.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { Fill } from "./fill.tsx";
import { MakeButton, MakeNote } from "./make-button.tsx";
import { SeenForm } from "./seen-form.tsx";
import { useTriedBox } from "./use-tried-box.ts";
import { wording } from "./words.ts";

/** A box as somebody sees it, into the drawing that is open. */
export default function NewBoxDialog() {
  const id = useId();
  const [seen, setSeen] = useState(FIRST_SEEN);
  const { box, why, fill, panel } = useTriedBox(seen, "this-drawing");
  const project = useStore(documentStore, (document) => document.project);
  const name = useStore(documentStore, (document) => nextEnclosureName(installationOf(document), "box"));
  const [making, setMaking] = useState(false);
  const isThere = useRef(true);
  useEffect(() => {
    isThere.current = true;
    return () => {
      isThere.current = false;
    };
  }, []);
  const make = async (): Promise<void> => {
    setMaking(true);
    const makeIt = await readyBox(seen);
    // Closed meanwhile: it is not wanted any more.
    if (!isThere.current) return;
    closeDialog();
    makeIt();
  };
  const foot = (
    <>
      <MakeButton words={wording.addTheBox} making={making} disabled={box === undefined} form={id} />
      <button type="button" className="button" onClick={() => closeDialog()}>
        {wording.cancel}
      </button>
    </>
  );
  return (
    <Modal title={wording.newFromWhatISee} onClose={closeDialog} foot={foot} wide>
      <form
        id={id}
        className="new-box"
        onSubmit={(event) => {
          event.preventDefault();
          if (!making) make();
        }}
      >
        <SeenForm
          seen={seen}
          onChange={setSeen}
          into="this-drawing"
          cables={cableNames(project, box)}
          name={name}
          panel={panel}
        />
        <p>
          <MakeNote making={making} />
        </p>
        {why !== undefined && <p className="refused">{why}</p>}
        <Fill fill={fill} />
      </form>
    </Modal>
  );
}

import { closeDialog } from "../../state/dialog-store.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { wording } from "./words.ts";

const CAUTIONS = [
  wording.thisIsAPlanningAndTeaching,
  wording.onlyTheAdoptedCodeItsLocal,
  wording.workOnWiringMayBeRestricted,
  wording.noFindingShownDoesNotMean,
];

/** What holds for every drawing; shown once, and again whenever it is asked for. */
export function CautionsDialog() {
  const close = (): void => {
    preferencesStore.merge({ cautionsRead: true });
    closeDialog();
  };
  const foot = (
    <button type="button" className="button main" onClick={close}>
      {wording.iHaveReadThis}
    </button>
  );
  return (
    <Modal title={wording.beforeYouDraw} onClose={close} foot={foot}>
      <ul className="cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Modal>
  );
}

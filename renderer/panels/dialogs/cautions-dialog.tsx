import { closeDialog } from "../../state/dialog-store.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { Modal } from "../../ui/modal.tsx";

const CAUTIONS = [
  "This is a planning and teaching aid. It checks a drawing, not a building. It cannot see the wires in your wall.",
  "Only the adopted code, its local amendments and the authority having jurisdiction decide. Section numbers are pointers for looking up; read the text.",
  "Work on wiring may be restricted to licensed people and need a permit. If you are not qualified, stop and hire someone who is.",
  "No finding shown does not mean safe or compliant. Some rules need facts this drawing does not hold.",
];

/** What holds for every drawing; shown once, and again whenever it is asked for. */
export function CautionsDialog() {
  const close = (): void => {
    preferencesStore.merge({ cautionsRead: true });
    closeDialog();
  };
  const foot = (
    <button type="button" className="button main" onClick={close}>
      I have read this
    </button>
  );
  return (
    <Modal title="Before you draw" onClose={close} foot={foot}>
      <ul className="cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Modal>
  );
}

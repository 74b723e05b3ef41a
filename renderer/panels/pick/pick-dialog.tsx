import { Dialog } from "@base-ui/react/dialog";
import { useCallback, useEffect, useMemo, useRef } from "react";
import { cancelPick, type PickState, pickStore } from "../../state/pick-store.ts";
import { useStore } from "../../state/use-store.ts";
import { PickList } from "./pick-list.tsx";
import { wording } from "./words.ts";

/** The choice that a command waits for, if one does. Gives the focus back to where it was. */
export function PickDialog() {
  const { pick, serial } = useStore(pickStore, ofDialog, sameChoice);
  const input = useRef<HTMLInputElement>(null);
  const backTo = useFocusGivenBack(pick !== undefined);
  // What is placed is shown on the sheet, so that the list leaves it in sight.
  const beside = useMemo(() => pick?.lines().some(({ aim }) => aim !== undefined) === true, [pick]);
  if (pick === undefined) return null;
  return (
    <Dialog.Root open onOpenChange={(open) => !open && cancelPick()}>
      <Dialog.Portal>
        <Dialog.Backdrop className={beside ? "backdrop clear" : "backdrop"} />
        <Dialog.Popup
          className={beside ? "modal pick-dialog pick-beside" : "modal pick-dialog"}
          initialFocus={input}
          finalFocus={backTo}
        >
          <Dialog.Title className="modal-title">{pick.title}</Dialog.Title>
          <PickList key={serial} pick={pick} input={input} />
          <div className="modal-foot">
            <Dialog.Close className="button">{wording.cancel}</Dialog.Close>
          </div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

/** What the command field asks for is no matter of the dialog. */
const ofDialog = ({ pick, serial, inField }: PickState) => ({ pick: inField ? undefined : pick, serial });
const sameChoice = (a: ReturnType<typeof ofDialog>, b: ReturnType<typeof ofDialog>): boolean =>
  a.pick === b.pick && a.serial === b.serial;

/**
 * When the last choice of a command is made, the focus goes back to where it was before the first, or to the details where
 * that is gone.
 * @returns What gets the focus.
 */
function useFocusGivenBack(isOpen: boolean): () => HTMLElement | null {
  const from = useRef<Element>(null);
  useEffect(
    () =>
      pickStore.subscribe(() => {
        const { activeElement } = document;
        const isInside = activeElement?.closest("[role='dialog']") != null;
        const { pick, inField } = pickStore.get();
        if (pick !== undefined && !inField && !isInside) from.current = activeElement;
      }),
    [],
  );
  const backTo = useCallback((): HTMLElement | null => {
    const before = from.current;
    const isThere = before?.isConnected === true && before !== document.body;
    // What is drawn can have the focus too.
    return (isThere ? before : document.querySelector(".details")) as HTMLElement | null;
  }, []);
  useEffect(() => {
    if (isOpen || from.current === null) return undefined;
    const timer = setTimeout(() => {
      const { activeElement, body } = document;
      if (activeElement === null || activeElement === body) backTo()?.focus({ preventScroll: true });
    });
    return () => clearTimeout(timer);
  }, [isOpen, backTo]);
  return backTo;
}

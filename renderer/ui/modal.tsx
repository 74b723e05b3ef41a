import { Dialog } from "@base-ui/react/dialog";
import type { ReactNode } from "react";
import { wording } from "./words.ts";

interface Props {
  readonly title: ReactNode;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Buttons at the foot; a Close button when there are none. */
  readonly foot?: ReactNode;
  readonly wide?: boolean;
  /** As wide as a page with drawings side by side needs it. */
  readonly page?: boolean;
}

/** A dialog over the window: holds the focus, closes with Escape, gives the focus back. */
export function Modal({ title, onClose, children, foot, wide = false, page = false }: Props) {
  const width = page ? "modal page" : wide ? "modal wide" : "modal";
  return (
    <Dialog.Root open onOpenChange={(open) => !open && onClose()}>
      <Dialog.Portal>
        <Dialog.Backdrop className="backdrop" />
        <Dialog.Popup className={width}>
          <Dialog.Title className="modal-title">{title}</Dialog.Title>
          <div className="modal-body">{children}</div>
          <div className="modal-foot">
            {foot ?? <Dialog.Close className="button main">{wording.close}</Dialog.Close>}
          </div>
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

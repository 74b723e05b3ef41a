import type { AttachmentId } from "../../../shared-model/model/ids.ts";
import type { Attachment } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { closeDialog, openDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { PHOTO_WORDS, photoOf } from "../../state/photos/photo-words.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { PhotoPicture } from "../details/photo-picture.tsx";
import "../details/photos.css";
import { wording } from "./words.ts";

/** One photo as large as the window, with a way through those of the same box. */
export default function PhotoDialog({ id }: { readonly id: AttachmentId }) {
  const attachments = useStore(documentStore, ({ project }) => project.attachments);
  const { enclosures } = useStore(documentStore, installationOf);
  const photo = attachments[id];
  if (photo === undefined) return null;
  const beside = inOrder<Attachment>(attachments).filter((one) => one.enclosure === photo.enclosure);
  const place = beside.indexOf(photo);
  const box = photo.enclosure && enclosures[photo.enclosure]?.name;
  const { caption = "", takenAt = "", by = "", name } = photo;
  const foot = (
    <>
      {beside.length > 1 && <Beside word={PHOTO_WORDS.before} photo={beside[place - 1]} />}
      {beside.length > 1 && <Beside word={PHOTO_WORDS.next} photo={beside[place + 1]} />}
      <button type="button" className="button main" onClick={() => closeDialog()}>
        {wording.close}
      </button>
    </>
  );
  return (
    <Modal title={photoOf(box, caption || name)} onClose={closeDialog} foot={foot} page>
      <figure className="photo-large">
        <PhotoPicture photo={photo} words={photoOf(box, caption || name)} />
        <figcaption className="dim">
          {[takenAt, by, beside.length > 1 ? wording.ofWord(place + 1, beside.length) : ""].filter(Boolean).join(", ")}
        </figcaption>
      </figure>
    </Modal>
  );
}

function Beside({ word, photo }: { readonly word: string; readonly photo: Attachment | undefined }) {
  return (
    <button
      type="button"
      className="button"
      disabled={photo === undefined}
      onClick={() => photo !== undefined && openDialog({ kind: "photo", id: photo.id })}
    >
      {word}
    </button>
  );
}

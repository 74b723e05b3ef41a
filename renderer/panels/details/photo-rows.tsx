import { useRef, useState } from "react";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Attachment } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { PHOTO_WORDS, photoOf } from "../../state/photos/photo-words.ts";
import { attachPhotos } from "../../state/photos/photos.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { Refused } from "../refused.tsx";
import { PhotoPicture } from "./photo-picture.tsx";
import "./photos.css";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Photos of a box, as evidence of what was seen there, and a way to add more. */
export function PhotoRows({ enclosure, name }: { readonly enclosure: EnclosureId; readonly name: string }) {
  const attachments = useStore(documentStore, ({ project }) => project.attachments);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const mine = inOrder<Attachment>(attachments).filter((photo) => photo.enclosure === enclosure);
  return (
    <Section title={PHOTO_WORDS.section} note={mine.length}>
      <div className="part-body photos">
        {mine.map((photo) => (
          <PhotoRow key={photo.id} photo={photo} box={name} />
        ))}
        {mine.length === 0 && <p className="dim">{PHOTO_WORDS.none}</p>}
        {!readOnly && <AddPhotos enclosure={enclosure} name={name} />}
      </div>
    </Section>
  );
}

/** Photos whose box was removed, with the drawing as a whole; nothing where there are none. */
export function UnattachedPhotos() {
  const attachments = useStore(documentStore, ({ project }) => project.attachments);
  const left = inOrder<Attachment>(attachments).filter((photo) => photo.enclosure === undefined);
  if (left.length === 0) return null;
  return (
    <Section title={PHOTO_WORDS.unattached} note={left.length}>
      <div className="part-body photos">
        {left.map((photo) => (
          <PhotoRow key={photo.id} photo={photo} box={undefined} />
        ))}
      </div>
    </Section>
  );
}

function AddPhotos({ enclosure, name }: { readonly enclosure: EnclosureId; readonly name: string }) {
  const input = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState(false);
  const add = async (files: readonly File[]): Promise<void> => {
    setBusy(true);
    await attachPhotos(enclosure, files).finally(() => setBusy(false));
  };
  return (
    <p className="row photo-add">
      <button type="button" className="button" disabled={busy} onClick={() => input.current?.click()}>
        {PHOTO_WORDS.add}
        <span className="unseen">{wording.ofWord2(name)}</span>
      </button>
      <span className="dim" role="status">
        {busy ? PHOTO_WORDS.reading : PHOTO_WORDS.hint}
      </span>
      <input
        ref={input}
        type="file"
        accept="image/jpeg,image/png"
        multiple
        hidden
        aria-label={photoOf(name, PHOTO_WORDS.add)}
        onChange={({ target }) => {
          const chosen = [...(target.files ?? [])];
          // The same file can be chosen again after it was removed.
          target.value = "";
          if (chosen.length > 0) void add(chosen);
        }}
      />
    </p>
  );
}

const DAY = /^\d{4}-\d{2}-\d{2}$/;

function PhotoRow({ photo, box }: { readonly photo: Attachment; readonly box: string | undefined }) {
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const [refusal, setRefusal] = useState<string>();
  const { id, name, caption = "", takenAt = "", by = "" } = photo;
  const words = photoOf(box, caption || name);
  const say = (change: { readonly caption?: string; readonly takenAt?: string; readonly by?: string }): void => {
    const done = dispatch({ command: "describe-photo", args: { id, ...change } });
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <figure className="photo">
      <button
        type="button"
        className="photo-small"
        title={PHOTO_WORDS.large}
        onClick={() => openDialog({ kind: "photo", id })}
      >
        <PhotoPicture photo={photo} words={words} />
        <span className="unseen">. {PHOTO_WORDS.large}</span>
      </button>
      <figcaption className="photo-facts">
        <fieldset disabled={readOnly} className="photo-fields">
          <legend className="unseen">{words}</legend>
          <CommitField
            value={caption}
            invalid={false}
            label={PHOTO_WORDS.caption}
            placeholder={PHOTO_WORDS.caption}
            onCommit={(text) => say({ caption: text })}
          />
          <input
            type="date"
            className="field small"
            aria-label={PHOTO_WORDS.takenAt}
            value={DAY.test(takenAt) ? takenAt : ""}
            onChange={({ target }) => say({ takenAt: target.value })}
          />
          <CommitField
            value={by}
            invalid={false}
            label={PHOTO_WORDS.by}
            placeholder={PHOTO_WORDS.by}
            onCommit={(text) => say({ by: text })}
          />
          <button
            type="button"
            className="button small"
            onClick={() => dispatch({ command: "remove-photo", args: { id } })}
          >
            {PHOTO_WORDS.remove}
            <span className="unseen"> {words}</span>
          </button>
        </fieldset>
        <Refused message={refusal} />
      </figcaption>
    </figure>
  );
}

import { useEffect } from "react";
import type { RecentFile } from "../../platform/file-host.ts";
import type { DrawingPicture } from "../../state/drawing-picture.ts";
import { files } from "../../state/files.ts";
import { picturesStore } from "../../state/pictures.ts";
import { forgetRecent, recentStore, refreshRecent } from "../../state/recent.ts";
import { useStore } from "../../state/use-store.ts";
import { whenWords } from "../../state/when-words.ts";
import { DrawingPictureOf, sizeWords } from "./drawing-picture.tsx";
import { wording } from "./words.ts";

/** Drawings that were opened or saved lately. */
export function RecentList() {
  const recent = useStore(recentStore, (state) => state.files);
  const pictures = useStore(picturesStore, ({ of }) => of);
  useEffect(() => {
    refreshRecent();
  }, []);
  return (
    <section className="start-part" aria-labelledby="start-recent">
      <header className="start-head">
        <h2 id="start-recent">{wording.recent}</h2>
        <span className="dim">{wording.orDropAFileOnThis}</span>
      </header>
      {recent.length === 0 && <p className="start-none">{wording.drawingsThatYouOpenOrSave}</p>}
      <ul className="start-recent">
        {recent.map((file) => (
          <li key={file.id}>
            <Line file={file} picture={pictures.get(file.id)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Line({ file, picture }: { readonly file: RecentFile; readonly picture: DrawingPicture | undefined }) {
  const { id, name, folder, usedAt, isThere } = file;
  const open = async (): Promise<void> => {
    await files.openRecent(id);
    await refreshRecent();
  };
  return (
    <>
      <span className="start-small">{picture !== undefined && <DrawingPictureOf picture={picture} small />}</span>
      <div className="start-about">
        {isThere ? (
          <button type="button" className="start-file" title={name} onClick={open}>
            <span className="start-name">{name}</span>
            {folder !== undefined && <span className="dim start-folder">{folder}</span>}
          </button>
        ) : (
          <p className="start-file gone" title={name}>
            <span className="start-name">{name}</span>
            <span className="dim">{wording.movedOrDeletedSinceOpenIt}</span>
          </p>
        )}
        <span className="dim fig start-when">{[whenWords(Date.parse(usedAt)), ...sizeWords(picture)].join(", ")}</span>
      </div>
      <button type="button" className="button small square" onClick={() => forgetRecent(id)}>
        <span className="unseen">{wording.takeOffTheList(name)}</span>
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M2 2L10 10M10 2L2 10" stroke="currentColor" strokeWidth="1.5" />
        </svg>
      </button>
    </>
  );
}

import { useEffect } from "react";
import { ask } from "../../state/dialog-store.ts";
import { files } from "../../state/files.ts";
import { recovery } from "../../state/journal-here.ts";
import { unsavedStore } from "../../state/journal-recovery.ts";
import { picturesStore, workPicture } from "../../state/pictures.ts";
import { recentStore } from "../../state/recent.ts";
import { leaveWork, startStore } from "../../state/start.ts";
import { useStore } from "../../state/use-store.ts";
import { whenWords } from "../../state/when-words.ts";
import { DrawingPictureOf, sizeWords } from "./drawing-picture.tsx";
import { wording } from "./words.ts";

/** Unsaved work of a window that was closed or died: continue with it, leave it, or give it up on purpose. */
export function Continue() {
  const works = useStore(unsavedStore, (state) => state.works);
  const left = useStore(startStore, (state) => state.left);
  useEffect(() => {
    recovery.refresh();
  }, []);
  if (works.length === 0) return <LastDrawing />;
  const open = works.filter(({ id }) => !left.has(id));
  const aside = works.filter(({ id }) => left.has(id));
  return (
    <section className="start-part" aria-labelledby="start-continue">
      <h2 id="start-continue" className="start-first">
        {wording.continueWord}
      </h2>
      <ul className="start-works">
        {open.map(({ id, name, at }) => (
          <li key={id} className="start-work">
            <Seen id={workPicture(id)} />
            <p>
              <strong>{wording.unsavedChangesOf(name)}</strong>
              <span className="dim fig">{wording.lastChange(whenWords(at))}</span>
            </p>
            <div className="start-row">
              <button type="button" className="button main" onClick={() => recovery.continueWith(id)}>
                {wording.continueWord}
                <span className="unseen">{wording.withWord(name)}</span>
              </button>
              <button type="button" className="button" onClick={() => leaveWork(id)}>
                {wording.leaveIt}
                <span className="unseen">{wording.forLater(name)}</span>
              </button>
              <button type="button" className="button" onClick={() => discard(id, name)}>
                {wording.discard}
                <span className="unseen"> {name}</span>
              </button>
            </div>
          </li>
        ))}
        {aside.map(({ id, name }) => (
          <li key={id} className="start-left">
            <span>{wording.unsavedChangesLeftForLater(name)}</span>
            <button type="button" className="link" onClick={() => leaveWork(id, false)}>
              {wording.show}
              <span className="unseen"> {name}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was worked at last, one press away. */
function LastDrawing() {
  const last = useStore(recentStore, (state) => state.files.find(({ isThere }) => isThere));
  const picture = useStore(picturesStore, ({ of }) => of.get(last?.id ?? ""));
  if (last === undefined) return null;
  return (
    <section className="start-part" aria-labelledby="start-continue">
      <h2 id="start-continue" className="start-first">
        {wording.continueWord}
      </h2>
      <button type="button" className="start-again" onClick={() => files.openRecent(last.id)}>
        <Seen id={last.id} />
        <strong>{last.name}</strong>
        <span className="dim fig">
          {[wording.lastUsed(whenWords(Date.parse(last.usedAt))), ...sizeWords(picture)].join(", ")}
        </span>
      </button>
    </section>
  );
}

/** What the drawing looked like; nothing where no picture was kept. */
function Seen({ id }: { readonly id: string }) {
  const picture = useStore(picturesStore, ({ of }) => of.get(id));
  return picture === undefined ? null : <DrawingPictureOf picture={picture} />;
}

async function discard(id: string, name: string): Promise<void> {
  const yes = wording.discard;
  const lines = [wording.theyCannotBeBroughtBackA];
  if ((await ask(wording.discardTheUnsavedChangesOf(name), lines, [yes])) === yes) await recovery.discard(id);
}

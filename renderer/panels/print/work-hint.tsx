import { useEffect, useState } from "react";
import { saveReady } from "../../state/print/copies.ts";
import { type PrintWork, printStore } from "../../state/print/print-store.ts";
import { cancelWork, layOut } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { wording } from "./words.ts";

/** What takes less is not told of, and what takes less is not worth a way out. */
const UNNOTICED_MS = 300;
const SHORT_MS = 1000;

/** What a person waits for, what went wrong, or what waits for the person; nothing else. */
export function WorkHint() {
  const kind = useStore(printStore, ({ work }) => work?.kind);
  const title = useStore(printStore, ({ work }) => work?.title);
  const problem = useStore(printStore, (state) => state.problem);
  const ready = useStore(printStore, (state) => state.ready);
  // Progress renews the work, and does not begin it anew.
  if (kind !== undefined) return <Waiting key={title} />;
  if (problem !== undefined)
    return (
      <div className="print-hint" role="alert">
        <span>{problem}</span>
        <button type="button" className="button small" onClick={() => layOut()}>
          {wording.layOutAgain}
        </button>
      </div>
    );
  if (ready === undefined) return null;
  return (
    <div className="print-hint" role="alert">
      <span>{wording.theFileIsReady}</span>
      <button type="button" className="button small main" onClick={() => saveReady()}>
        {wording.saveIt(`${ready.name}.${ready.kind}`)}
      </button>
    </div>
  );
}

function Waiting() {
  const work = useStore(printStore, (state) => state.work);
  const isNoticed = useAfter(UNNOTICED_MS);
  const isLong = useAfter(SHORT_MS);
  if (work === undefined || !isNoticed) return null;
  const { title, progress } = work;
  return (
    <fieldset className="print-hint" aria-label={title}>
      <span role="status">{title}</span>
      {isLong && progress !== undefined && progress.of > 0 && (
        <progress aria-label={title} value={progress.done} max={progress.of} />
      )}
      {isLong && <span className="fig dim">{progressWords(work)}</span>}
      {isLong && (
        <button type="button" className="button small" onClick={cancelWork}>
          {wording.cancel}
        </button>
      )}
    </fieldset>
  );
}

function progressWords({ kind, progress }: PrintWork): string {
  if (progress === undefined) return "";
  if (kind === "lay-out" && progress.at === undefined) return wording.checkingTheDrawing;
  const count = wording.of(progress.done, progress.of);
  return progress.at === undefined ? count : `${count}: ${progress.at}`;
}

/** Whether so many milliseconds have passed since it was first shown. */
function useAfter(ms: number): boolean {
  const [hasPassed, setPassed] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setPassed(true), ms);
    return () => clearTimeout(timer);
  }, [ms]);
  return hasPassed;
}

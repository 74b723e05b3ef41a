import { useEffect, useState } from "react";
import { documentStore } from "../../state/document-store.ts";
import { type FindingsState, findingsStore } from "../../state/findings-store.ts";
import { type HeardFindings, spokenFindings, spokenStep } from "../../state/spoken.ts";
import { paced } from "./pace.ts";

/** Read aloud after an edit: what was done, and what the checks say of it. One sentence for a run of edits. */
export function LiveRegion() {
  const [words, setWords] = useState("");
  useEffect(() => speakAfterEdits(setWords), []);
  return (
    <p className="unseen" role="status" data-live>
      {words}
    </p>
  );
}

const heard = ({ findings, couldNotTell }: FindingsState): HeardFindings => ({
  findings,
  couldNotTell: couldNotTell.length,
});

/** Calls `say` after edits that the checks have answered, until the returned function is called. */
function speakAfterEdits(say: (words: string) => void): () => void {
  let { history, revision } = documentStore.get();
  let before = heard(findingsStore.get());
  const tell = (): boolean => {
    const document = documentStore.get();
    const found = findingsStore.get();
    if (document.revision === revision || found.revision < document.revision) return false;
    const step = spokenStep(history, document.history);
    const now = heard(found);
    say([step, spokenFindings(before, now)].filter(Boolean).join(" "));
    ({ history, revision } = document);
    before = now;
    return true;
  };
  const { changed, stop } = paced(tell);
  const stops = [documentStore.subscribe(changed), findingsStore.subscribe(changed), stop];
  return () => {
    for (const end of stops) end();
  };
}

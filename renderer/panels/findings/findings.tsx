import { useState } from "react";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore, hasProposed, installationOf, undo } from "../../state/document-store.ts";
import { editionWords } from "../../state/edition-words.ts";
import { findingsStore, summaryOf } from "../../state/findings-store.ts";
import { fixStore } from "../../state/fixes.ts";
import type { Selected } from "../../state/selection.ts";
import { showState } from "../../state/shown-state.ts";
import { isAbout } from "../../state/subject-target.ts";
import { useStore } from "../../state/use-store.ts";
import { useKeptFocus } from "../details/use-kept-focus.ts";
import { CannotTellList } from "./cannot-tell-list.tsx";
import { EVERYTHING, type Filter, FindingFilter } from "./finding-filter.tsx";
import { FindingGroups } from "./finding-groups.tsx";
import { legendOf } from "./finding-words.ts";
import { HeldBackList } from "./held-back-list.tsx";
import { wording } from "./words.ts";

/** Everything the checks said about the wiring that is shown, and how it stands to the other account of it. */
export function Findings() {
  const [filter, setFilter] = useState<Filter>(EVERYTHING);
  const checked = useStore(findingsStore, (state) => state.revision);
  const state = useStore(documentStore, (document) => document.state);
  const root = useKeptFocus(`${state} ${checked}`);
  return (
    <div ref={root} tabIndex={-1} className="findings">
      <Summary />
      <ByWhat />
      <Legend />
      <WhereFixesAre />
      <FindingFilter filter={filter} onChange={setFilter} />
      <HeldBackList />
      <FindingGroups filter={filter} />
      <CannotTellList filter={filter} />
      <FixDone />
    </div>
  );
}

function Summary() {
  const stale = useStore(documentStore, (state) => state.revision) > useStore(findingsStore, (state) => state.revision);
  const words = useStore(findingsStore, summaryOf);
  return (
    <p className={stale ? "findings-summary stale" : "findings-summary"}>
      {words}
      {stale && <span className="findings-stale">{wording.checkingTheLastChange}</span>}
    </p>
  );
}

/** By which rules it was judged, where that is not a dated edition as it is printed. */
function ByWhat() {
  const edition = useStore(documentStore, ({ project }) => project.edition);
  const amendments = useStore(documentStore, ({ project }) => project.amendments.length);
  const words = editionWords(edition);
  const isPlain = words === String(edition);
  if (isPlain && amendments === 0) return null;
  return (
    <p className="findings-note">
      {wording.judgedByEdition(words)}
      {amendments > 0 && (
        <>
          {wording.withWord}
          <button type="button" className="link" onClick={() => openDialog({ kind: "amendments" })}>
            {amendments === 1 ? wording.n1LocalAmendment : wording.localAmendments(amendments)}
          </button>
        </>
      )}
      .
    </p>
  );
}

/** What the marks in the small print of findings mean, once. */
function Legend() {
  const words = useStore(findingsStore, ({ findings }) => legendOf(findings));
  return words === undefined ? null : <p className="findings-note findings-legend">{words}</p>;
}

/** Which fix the last change was, said once and with the way back; with `item`, only where it was about that thing. */
export function FixDone({ item }: { readonly item?: Selected }) {
  const installation = useStore(documentStore, installationOf);
  const done = useStore(fixStore, (state) => {
    const isMine = item === undefined || state.doneAbout.some((subject) => isAbout(installation, item, subject));
    return isMine ? state.done : undefined;
  });
  return (
    <div role="status" className="fix-done-place">
      {done !== undefined && (
        <p className="fix-done">
          <span>
            <strong>{wording.done}</strong>: {done}.
          </span>
          <button type="button" className="button small" onClick={undo}>
            {wording.undo}
            <span className="unseen">: {done}</span>
          </button>
        </p>
      )}
    </div>
  );
}

/** As found is a record: nothing in it is mended by a press. */
function WhereFixesAre() {
  const found = useStore(documentStore, ({ state }) => state === "as-found");
  const started = useStore(documentStore, hasProposed);
  const readOnly = useStore(documentStore, (state) => state.readOnly);
  const some = useStore(findingsStore, ({ findings }) => findings.length > 0);
  if (!found || !some || (readOnly && !started)) return null;
  return (
    <p className="findings-note">
      {wording.asFoundIsARecordOf}
      <button type="button" className="link" onClick={() => showState("proposed")}>
        {started ? wording.showProposed : wording.startProposed}
      </button>
    </p>
  );
}

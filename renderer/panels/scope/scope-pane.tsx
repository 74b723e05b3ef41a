import "../../ui/flag.css";
import "./scope.css";
import { documentStore } from "../../state/document-store.ts";
import { type ScopeList, scopeStore } from "../../state/scope/scope-store.ts";
import { ask } from "../../state/scope/scoping.ts";
import { useStore } from "../../state/use-store.ts";
import { ByBox } from "./by-box.tsx";
import { BySteps } from "./by-steps.tsx";
import { Materials } from "./materials.tsx";
import { wording } from "./words.ts";

const LISTS: readonly { readonly id: ScopeList; readonly word: string }[] = [
  { id: "by-box", word: wording.byBox },
  { id: "by-step", word: wording.byStep },
  { id: "material", word: wording.material },
];

/** The difference of as found and proposed as lists: what changes, the work step by step, and what it takes. */
export function ScopePane() {
  const list = useStore(scopeStore, (state) => state.list);
  const answer = useStore(scopeStore, (state) => state.answer);
  return (
    <div className="scope-pane">
      <fieldset className="scope-chips">
        <legend className="unseen">{wording.list}</legend>
        {LISTS.map(({ id, word }) => (
          <button
            key={id}
            type="button"
            className="scope-chip"
            aria-pressed={id === list}
            onClick={() => scopeStore.merge({ list: id })}
          >
            {word}
          </button>
        ))}
      </fieldset>
      <Standing />
      {answer && (
        <>
          {list === "by-box" && <ByBox answer={answer} />}
          {list === "by-step" && <BySteps answer={answer} />}
          {list === "material" && <Materials answer={answer} />}
        </>
      )}
    </div>
  );
}

/** Whether what is listed is about the drawing as it is now. */
function Standing() {
  const about = useStore(scopeStore, (state) => state.about);
  const trouble = useStore(scopeStore, (state) => state.trouble);
  const revision = useStore(documentStore, (document) => document.revision);
  if (trouble !== undefined)
    return (
      <div className="scope-note" role="alert">
        <p>{trouble}</p>
        <button type="button" className="button small" onClick={ask}>
          {wording.askAgain}
        </button>
      </div>
    );
  if (about === revision) return null;
  return <p className="scope-note">{about === undefined ? wording.workingItOut : wording.stale}</p>;
}

import type { StateName } from "../../shared-model/model/project.ts";
import { documentStore, hasProposed } from "../state/document-store.ts";
import { useKeys, useKeysForReaders, withKeys } from "../state/keys/keys.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { leaveScope, showScope } from "../state/scope/scoping.ts";
import { STATE_WORDS, showState } from "../state/shown-state.ts";
import { useStore } from "../state/use-store.ts";
import { useFocusBack } from "./use-focus-back.ts";
import { wording } from "./words.ts";

/** Which account of the wiring is shown and edited: as found or proposed, one press apart. */
export function StateSwitch() {
  const started = useStore(documentStore, hasProposed);
  return (
    <fieldset className="state-switch">
      <legend className="unseen">{wording.wiringShownAndEdited}</legend>
      <StateButton state="as-found" />
      <StateButton state="proposed" {...(!started && { note: wording.notStarted })} />
      <ScopeButton started={started} />
    </fieldset>
  );
}

function StateButton({ state, note }: { readonly state: StateName; readonly note?: string }) {
  const scoped = useStore(scopeStore, isScopeShown);
  const shown = useStore(documentStore, (document) => document.state === state);
  const on = shown && !scoped;
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const keys = useKeys("other-state");
  const forReaders = useKeysForReaders("other-state");
  return (
    <button
      type="button"
      className="button"
      aria-pressed={on}
      aria-keyshortcuts={on ? undefined : forReaders}
      title={on || note !== undefined ? undefined : withKeys(STATE_WORDS[state], keys)}
      disabled={readOnly && note !== undefined}
      onClick={() => {
        leaveScope();
        showState(state);
      }}
    >
      {STATE_WORDS[state]}
      {note !== undefined && <small>{note}</small>}
    </button>
  );
}

/** Both over each other, to be looked at. Until there are both it can be come to, and says why it does nothing. */
function ScopeButton({ started }: { readonly started: boolean }) {
  const on = useStore(scopeStore, isScopeShown);
  const keys = useKeys("show-scope");
  const forReaders = useKeysForReaders("show-scope");
  const own = useFocusBack(on);
  return (
    <button
      ref={own}
      type="button"
      className="button"
      aria-pressed={on}
      aria-disabled={!started}
      aria-keyshortcuts={forReaders}
      aria-description={started ? undefined : wording.startProposedFirst}
      title={started ? withKeys(wording.scopeShows, keys) : wording.startProposedFirst}
      onClick={showScope}
    >
      {wording.scope}
    </button>
  );
}

/** Says in words which account of the wiring a pane is about. */
export function StateTag() {
  const state = useStore(documentStore, (document) => document.state);
  return <strong className={`state-tag ${state}`}>{STATE_WORDS[state]}</strong>;
}

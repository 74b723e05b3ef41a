import type { ScopeKind } from "../../../shared-model/answers/scope.ts";
import { SCOPE_LETTERS, signOf } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { goToScope, type ScopePress } from "../../state/scope/go-to-scope.ts";
import { scopeStore } from "../../state/scope/scope-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Flag } from "../../ui/flag.tsx";
import { wording } from "./words.ts";

const KIND_WORDS: Readonly<Record<ScopeKind, string>> = {
  kept: wording.kindKept,
  moved: wording.kindMoved,
  removed: wording.kindRemoved,
  new: wording.kindNew,
  replaced: wording.kindReplaced,
  relabelled: wording.kindRelabelled,
  changed: wording.kindChanged,
};

/** What a row says; a line of the answer is one. */
export interface Row extends Omit<ScopePress, "box"> {
  readonly kind: ScopeKind;
  readonly title: string;
  readonly was?: string;
  readonly will: string;
  /** A second line: why. */
  readonly note?: string;
}

/** One line: flag, what it is, where it was and where it goes. Pressing it goes there and selects it. */
export function ScopeRow({ row, box }: { readonly row: Row; readonly box?: EnclosureId | undefined }) {
  const { key, kind, title, was, will, note, items } = row;
  const isPressed = useStore(scopeStore, (state) => state.pressed.key === key);
  const sign = signOf(kind);
  return (
    <li>
      <button
        type="button"
        className="scope-row"
        aria-current={isPressed || undefined}
        title={wording.goTo(title)}
        onClick={() => goToScope({ key, items, box })}
      >
        <Flag tone={sign} letter={SCOPE_LETTERS[sign]} />
        <span className="unseen">{KIND_WORDS[kind]}: </span>
        <span className="scope-title">{title}</span>
        <span className="scope-places">
          {was !== undefined && (
            <>
              <s aria-hidden="true">{was}</s>
              <span className="unseen">{wording.was(was)}, </span>
            </>
          )}{" "}
          <strong>{will}</strong>
        </span>
        {note !== undefined && <span className="scope-because">{note}</span>}
      </button>
    </li>
  );
}

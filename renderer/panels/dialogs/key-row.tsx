import { useEffect, useRef, useState } from "react";
import { titleOfKey, whyNotChordWords } from "../../../shared-model/commands/catalog/key-words.ts";
import {
  type ChosenKeys,
  chordsOf,
  entryOfChord,
  type KeyEntry,
  whyNotChord,
  withChord,
} from "../../../shared-model/commands/catalog/keys.ts";
import { chordOf, chordWords, isComposing } from "../../platform/key-chord.ts";
import { setKeys } from "../../state/keys/keys.ts";
import { belongsTo, KEYS_WORDS } from "./keys-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly entry: KeyEntry;
  readonly chosen: ChosenKeys;
  readonly onSaid: (entry: KeyEntry, chord: string | null) => void;
}

/** What is asked while the keys of an entry are changed. */
type Asking =
  | { readonly kind: "no" }
  | { readonly kind: "press"; readonly why?: string }
  | { readonly kind: "conflict"; readonly chord: string; readonly other: KeyEntry };

/** One thing that has keys, or can have some, with a way to give it others. */
export function KeyRow({ entry, chosen, onSaid }: Props) {
  const [asking, setAsking] = useState<Asking>({ kind: "no" });
  const button = useRef<HTMLButtonElement>(null);
  const chords = chordsOf(entry, chosen);
  const done = (): void => setAsking({ kind: "no" });
  const wasAsking = useRef(false);
  useEffect(() => {
    // The button comes back when all is said, and has the focus again.
    if (wasAsking.current && asking.kind === "no") button.current?.focus();
    wasAsking.current = asking.kind !== "no";
  }, [asking]);
  const give = (chord: string | null): void => {
    setKeys(withChord(chosen, entry, chord));
    onSaid(entry, chord);
    done();
  };
  const press = (chord: string): void => {
    const why = whyNotChord(entry, chord);
    const other = entryOfChord(chord, chosen);
    if (why !== undefined) setAsking({ kind: "press", why: whyNotChordWords[why] });
    else if (other !== undefined && other.id !== entry.id) setAsking({ kind: "conflict", chord, other });
    else give(chord);
  };
  return (
    <tr>
      <th scope="row">{titleOfKey(entry.id)}</th>
      <td className="keys-now">
        {chords.length === 0 && <span className="dim">{KEYS_WORDS.none}</span>}
        {chords.map((chord) => (
          <kbd key={chord} className="key">
            {chordWords(chord)}
          </kbd>
        ))}
      </td>
      <td className="keys-change">
        {!entry.fixed && asking.kind === "no" && (
          <>
            <button ref={button} type="button" className="button small" onClick={() => setAsking({ kind: "press" })}>
              {KEYS_WORDS.change}
              <span className="unseen">{wording.theKeysOf(titleOfKey(entry.id))}</span>
            </button>
            {entry.id in chosen && (
              <button type="button" className="button small" onClick={() => give(entry.chords[0] ?? null)}>
                {KEYS_WORDS.reset}
                <span className="unseen">{wording.theKeysOf(titleOfKey(entry.id))}</span>
              </button>
            )}
          </>
        )}
        {asking.kind === "press" && (
          <Press why={asking.why} onPress={press} onClear={() => give(null)} onLeave={done} />
        )}
        {asking.kind === "conflict" && (
          <div className="keys-asked" role="alert">
            <span>{belongsTo(chordWords(asking.chord), titleOfKey(asking.other.id))}</span>
            <TakeButton onTake={() => give(asking.chord)} />
            <button type="button" className="button small" onClick={done}>
              {KEYS_WORDS.leave}
            </button>
          </div>
        )}
      </td>
    </tr>
  );
}

function TakeButton({ onTake }: { readonly onTake: () => void }) {
  const own = useRef<HTMLButtonElement>(null);
  useEffect(() => own.current?.focus(), []);
  return (
    <button ref={own} type="button" className="button small" onClick={onTake}>
      {KEYS_WORDS.take}
    </button>
  );
}

interface PressProps {
  readonly why: string | undefined;
  readonly onPress: (chord: string) => void;
  readonly onClear: () => void;
  readonly onLeave: () => void;
}

/** Listens to the keys while its field has the focus. Escape and Tab leave it, so that nobody is caught in it. */
function Press({ why, onPress, onClear, onLeave }: PressProps) {
  const field = useRef<HTMLInputElement>(null);
  const act = useRef({ onPress, onLeave });
  act.current = { onPress, onLeave };
  useEffect(() => {
    const element = field.current;
    element?.focus();
    // Ahead of the dialog, which Escape would close, and of whatever the keys do now.
    const listen = (event: KeyboardEvent): void => {
      if (event.target !== element || isComposing(event) || event.key === "Tab") return;
      const chord = chordOf(event);
      event.stopImmediatePropagation();
      event.preventDefault();
      if (event.key === "Escape") act.current.onLeave();
      else if (chord !== undefined) act.current.onPress(chord);
    };
    addEventListener("keydown", listen, { capture: true });
    return () => removeEventListener("keydown", listen, { capture: true });
  }, []);
  return (
    <div className="keys-asked">
      <input
        ref={field}
        className="field small"
        readOnly
        aria-label={KEYS_WORDS.press}
        placeholder={KEYS_WORDS.press}
        title={KEYS_WORDS.press}
      />
      <button type="button" className="button small" onClick={onClear}>
        {KEYS_WORDS.clear}
      </button>
      {why !== undefined && (
        <span className="refused" role="alert">
          {why}
        </span>
      )}
    </div>
  );
}

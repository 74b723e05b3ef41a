import { cableKindStore, kindsFor, settledKind } from "../state/cable-kind.ts";
import { useStore } from "../state/use-store.ts";
import { laterWording } from "./later-words.ts";

const WORDS = {
  label: laterWording.kindOfCable,
  example: laterWording.size,
  none: laterWording.noSuchCableInStock,
  later: laterWording.askedWhenItEnds,
} as const;

/** Where the kind of the cable in the hand is typed; keys typed on the sheet arrive here too. */
export function KindField() {
  const typed = useStore(cableKindStore, (kind) => kind.typed);
  const settled = useStore(cableKindStore, settledKind);
  return (
    <label className="sheet-hint-kind">
      <span className="sheet-hint-title">{laterWording.kindInHand}</span>
      <input
        className="field small"
        aria-label={WORDS.label}
        placeholder={WORDS.example}
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onChange={({ target }) => cableKindStore.merge({ typed: target.value })}
        onKeyDown={(event) => {
          // Done with the kind: the hand goes on where it was.
          if (event.key === "Enter") event.currentTarget.blur();
        }}
      />
      <span role="status">
        {settled?.title ?? (kindsFor(typed, undefined).length === 0 ? WORDS.none : WORDS.later)}
      </span>
    </label>
  );
}

import { useId, useState } from "react";
import { titleOfKey } from "../../../shared-model/commands/catalog/key-words.ts";
import { type ChosenKeys, chordsOf, type KeyEntry, keyEntries } from "../../../shared-model/commands/catalog/keys.ts";
import { chordWords } from "../../platform/key-chord.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { setKeys, setSingleKeys } from "../../state/keys/keys.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { KeyRow } from "./key-row.tsx";
import { isNow, KEYS_WORDS } from "./keys-words.ts";
import "./keys.css";
import { wording } from "./words.ts";

type Keys = readonly (readonly [keys: string, does: string])[];

const IN_OUTLINE: Keys = [
  [wording.upDownHomeEnd, wording.toAnotherRowLettersFindIt],
  [wording.rightLeft, wording.openAndGoInCloseAnd],
  ["*", wording.openAllRowsBesideThisOne],
  ["Enter", wording.selectItAloneAndShowIt],
  [wording.spaceShiftUpShiftDown, wording.selectItAsWell],
  [wording.shiftF10, wording.everythingThatCanBeDoneWith],
];

const ON_SHEET: Keys = [
  ["Tab", wording.intoTheSheetWhereYouWere],
  [wording.arrows, wording.toTheNearestBoxThatWay],
  [wording.homeEnd, wording.toTheFirstBoxToThe],
  ["Enter", wording.intoABoxOnAConductor],
  ["Escape", wording.outOfABox],
  [wording.shiftArrows, wording.toTheNearestBoxThatWay2],
  [wording.altArrows, wording.moveTheBoxWithShiftFive],
  [wording.shiftF10, wording.everythingThatCanBeDoneWith],
];

/** Which keys do what, and a way to have them otherwise. */
export default function KeysDialog() {
  const id = useId();
  const chosen = useStore(preferencesStore, ({ keys }) => keys);
  const singleKeys = useStore(preferencesStore, (preferences) => preferences.singleKeys);
  const [typed, setTyped] = useState("");
  const [said, setSaid] = useState("");
  const found = keyEntries.filter((entry) =>
    saysAll(typed, titleOfKey(entry.id), ...chordsOf(entry, chosen).map(chordWords)),
  );
  const outline = IN_OUTLINE.filter((line) => saysAll(typed, ...line));
  const sheet = ON_SHEET.filter((line) => saysAll(typed, ...line));
  const foot = (
    <>
      <button
        type="button"
        className="button"
        disabled={Object.keys(chosen).length === 0}
        onClick={() => {
          setKeys({});
          setSaid(KEYS_WORDS.resetAll);
        }}
      >
        {KEYS_WORDS.resetAll}
      </button>
      <button type="button" className="button main" onClick={() => closeDialog()}>
        {wording.close}
      </button>
    </>
  );
  return (
    <Modal title={KEYS_WORDS.title} onClose={closeDialog} foot={foot} wide>
      <div className="keys-top">
        <input
          type="search"
          className="field"
          aria-label={KEYS_WORDS.search}
          placeholder={KEYS_WORDS.searchHint}
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
        />
        <label htmlFor={id} className="keys-single">
          <input
            id={id}
            type="checkbox"
            checked={singleKeys}
            onChange={({ target }) => setSingleKeys(target.checked)}
          />
          {KEYS_WORDS.single}
        </label>
      </div>
      <p className="unseen" role="status">
        {said}
      </p>
      {(["window", "sheet"] as const).map((where) => (
        <EntryTable
          key={where}
          caption={KEYS_WORDS[where]}
          entries={found.filter((entry) => entry.where === where)}
          chosen={chosen}
          onSaid={(entry, chord) =>
            setSaid(isNow(titleOfKey(entry.id), chord === null ? undefined : chordWords(chord)))
          }
        />
      ))}
      <KeyTable caption={KEYS_WORDS.inOutline} keys={outline} />
      <KeyTable caption={KEYS_WORDS.onSheet} keys={sheet} />
      {found.length + outline.length + sheet.length === 0 && <p className="empty">{KEYS_WORDS.nothing}</p>}
    </Modal>
  );
}

/** Every word that was typed, anywhere in what a line says. */
function saysAll(typed: string, ...texts: readonly string[]): boolean {
  const all = texts.join(" ").toLowerCase();
  return typed
    .toLowerCase()
    .split(/[\s+]+/)
    .every((word) => all.includes(word));
}

interface EntriesProps {
  readonly caption: string;
  readonly entries: readonly KeyEntry[];
  readonly chosen: ChosenKeys;
  readonly onSaid: (entry: KeyEntry, chord: string | null) => void;
}

function EntryTable({ caption, entries, chosen, onSaid }: EntriesProps) {
  if (entries.length === 0) return null;
  return (
    <table className="keys keys-own">
      <caption className="keys-caption">{caption}</caption>
      <tbody>
        {entries.map((entry) => (
          <KeyRow key={entry.id} entry={entry} chosen={chosen} onSaid={onSaid} />
        ))}
      </tbody>
    </table>
  );
}

function KeyTable({ caption, keys }: { readonly caption: string; readonly keys: Keys }) {
  if (keys.length === 0) return null;
  return (
    <table className="keys">
      <caption className="keys-caption">{caption}</caption>
      <tbody>
        {keys.map(([key, does]) => (
          <tr key={key}>
            <th scope="row">
              <kbd className="key">{key}</kbd>
            </th>
            <td>{does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

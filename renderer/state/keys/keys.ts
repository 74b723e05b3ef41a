import {
  type ChosenKeys,
  chordsOf,
  entryOfChord,
  findKeyEntry,
  isSingleKey,
  type KeyEntry,
  type KeyId,
} from "../../../shared-model/commands/catalog/keys.ts";
import { chordForReaders, chordOf, chordWords, isComposing } from "../../platform/key-chord.ts";
import { type Preferences, preferencesStore } from "../preferences-store.ts";
import { useStore } from "../use-store.ts";

/** The chord of an entry that is in force and shown; undefined where it has none. */
export function chordInForce(
  id: KeyId,
  { keys, singleKeys }: Pick<Preferences, "keys" | "singleKeys">,
): string | undefined {
  const entry = findKeyEntry(id);
  const [first] = entry === undefined ? [] : chordsOf(entry, keys);
  return first !== undefined && (singleKeys || !isSingleKey(first)) ? first : undefined;
}

/** Keys of an entry as they are shown now: "Ctrl S"; undefined where it has none. */
export function keysNow(id: KeyId): string | undefined {
  const chord = chordInForce(id, preferencesStore.get());
  return chord && chordWords(chord);
}

/** The same for components, which follow a change. */
export function useKeys(id: KeyId): string | undefined {
  return useStore(preferencesStore, (preferences) => {
    const chord = chordInForce(id, preferences);
    return chord && chordWords(chord);
  });
}

/** The same for `aria-keyshortcuts`. */
export function useKeysForReaders(id: KeyId): string | undefined {
  return useStore(preferencesStore, (preferences) => {
    const chord = chordInForce(id, preferences);
    return chord && chordForReaders(chord);
  });
}

/** "Save (Ctrl S)": words of a tip with its keys, where it has some. */
export const withKeys = (words: string, keys: string | undefined): string =>
  keys === undefined ? words : `${words} (${keys})`;

/** What a key event asks for, of what has keys there; undefined while text is composed. */
export function entryOfEvent(event: KeyboardEvent, where: KeyEntry["where"]): KeyEntry | undefined {
  const { keys, singleKeys } = preferencesStore.get();
  const chord = isComposing(event) ? undefined : chordOf(event);
  if (chord === undefined || (!singleKeys && isSingleKey(chord))) return undefined;
  return entryOfChord(chord, keys, where);
}

export const setKeys = (keys: ChosenKeys): void => preferencesStore.merge({ keys });
export const setSingleKeys = (singleKeys: boolean): void => preferencesStore.merge({ singleKeys });

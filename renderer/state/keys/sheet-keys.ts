import { entryOfChord, isSingleKey, keyEntries } from "../../../shared-model/commands/catalog/keys.ts";
import { chordOf, isComposing } from "../../platform/key-chord.ts";
import { ANY_CABLE } from "../cable-kind.ts";
import { preferencesStore } from "../preferences-store.ts";
import { sessionStore } from "../session-store.ts";

/** What the sheet does by each key is said there by the keys of the catalogue; chosen keys become these on their way. */
const BY_CATALOGUE: ReadonlySet<string> = new Set(
  keyEntries.flatMap(({ where, chords }) => (where === "sheet" ? chords : [])),
);

/**
 * Makes the sheet follow chosen keys: one that was chosen reaches it as the catalogue's own, and one that was given up, or
 * that is single while those are switched off, does not reach it. Until the returned function is called.
 */
export function translateSheetKeys(): () => void {
  addEventListener("keydown", translate, { capture: true });
  return () => removeEventListener("keydown", translate, { capture: true });
}

function translate(event: KeyboardEvent): void {
  const on = event.target;
  if (!event.isTrusted || !isOnSheet(on) || isComposing(event) || isSayingKind()) return;
  const chord = chordOf(event);
  if (chord === undefined) return;
  const { keys, singleKeys } = preferencesStore.get();
  const entry = singleKeys || !isSingleKey(chord) ? entryOfChord(chord, keys, "sheet") : undefined;
  if (entry === undefined ? !BY_CATALOGUE.has(chord) : entry.chords.includes(chord)) return;
  event.stopImmediatePropagation();
  const [asWritten] = entry?.chords ?? [];
  if (asWritten === undefined) return;
  event.preventDefault();
  const shiftKey = asWritten.startsWith("Shift+");
  const name = shiftKey ? asWritten.slice("Shift+".length) : asWritten;
  const key = /^[A-Z]$/.test(name) ? (shiftKey ? name : name.toLowerCase()) : name;
  on.dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey, bubbles: true, cancelable: true }));
}

const isOnSheet = (on: EventTarget | null): on is Element =>
  on instanceof Element && on.closest(".sheet") !== null && on.closest("input, select, textarea, [role=menu]") === null;

/** The kind of a cable in the hand is being typed: its figures are no keys. */
function isSayingKind(): boolean {
  const { tool } = sessionStore.get();
  return tool?.kind === "cable" && tool.id === ANY_CABLE;
}

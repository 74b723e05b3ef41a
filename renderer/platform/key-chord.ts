import { isMac } from "./mod-key.ts";

/** What a key event says, as far as chords go. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/**
 * The chord of a key event as the catalogue writes it; undefined for a modifier alone, for text that is being composed,
 * and for a modifier that has no word in chords. A sign that is typed with Shift is that sign.
 */
export function chordOf({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyPress, mac = isMac): string | undefined {
  if (key === "" || NO_CHORD.has(key)) return undefined;
  const [mod, other] = mac ? [metaKey, ctrlKey] : [ctrlKey, metaKey];
  // Control and Alt together are the way to a third sign on many keyboards.
  if (other || (mod && altKey)) return undefined;
  const isLetter = /^\p{L}$/u.test(key);
  const isSign = key.length === 1 && !isLetter;
  const name = isLetter ? key.toUpperCase() : key;
  return `${mod ? "Mod+" : ""}${altKey ? "Alt+" : ""}${shiftKey && !isSign ? "Shift+" : ""}${name}`;
}

const NO_CHORD: ReadonlySet<string> = new Set([
  ...["Control", "Meta", "Alt", "AltGraph", "Shift", "CapsLock", "NumLock", "Fn"],
  ...["Dead", "Process", "Unidentified", "Compose"],
]);

/** Whether a text is being composed, as for Japanese: the keys are for that alone. */
export const isComposing = ({ isComposing: composing, keyCode }: KeyboardEvent): boolean =>
  composing || keyCode === 229;

const SHOWN: Readonly<Record<string, string>> = { Mod: isMac ? "Cmd" : "Ctrl", ArrowUp: "Up", ArrowDown: "Down" };

/** A chord as menus and buttons show it: "Ctrl Shift Z". */
export function chordWords(chord: string): string {
  const parts =
    chord === "+" ? ["+"] : chord.endsWith("++") ? [...chord.slice(0, -2).split("+"), "+"] : chord.split("+");
  return parts.map((part) => SHOWN[part] ?? part).join(" ");
}

/** A chord as `aria-keyshortcuts` has it: "Control+Shift+Z". */
export const chordForReaders = (chord: string): string =>
  chord
    .replace(/^Mod(?=[+])/, isMac ? "Meta" : "Control")
    .replace(/[+][+]$/, "+Plus")
    .replace(/^[+]$/, "Plus");

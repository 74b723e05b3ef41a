import { type WindowCommandId, windowCommands } from "./commands.ts";

/** What else has keys: done by the window without a command of its own, or only while the sheet has the focus. */
export type KeyId =
  | WindowCommandId
  | "rename"
  | "next-region"
  | "region-before"
  | "remove-selected"
  | "zoom-in"
  | "zoom-out"
  | "zoom-full"
  | "zoom-all"
  | "follow"
  | "follow-back"
  | "start-cable";

export interface KeyEntry {
  readonly id: KeyId;
  /** Keys of the sheet work only while it has the focus, so that they may be single letters (WCAG 2.1.4). */
  readonly where: "window" | "sheet";
  /**
   * Chords, the first of which is shown: keys joined by "+", "Mod" for Command on a Mac and Control elsewhere, letters
   * as capitals, other keys by the names of UI Events.
   */
  readonly chords: readonly string[];
  /** The platform answers them, with the clipboard along: they stay as they are. */
  readonly fixed?: true;
}

/** Second keys for what people reach for in two ways. */
const SECOND: Readonly<Partial<Record<WindowCommandId, string>>> = { redo: "Mod+Y", "find-anything": "F1" };

const ofCommand = (entry: (typeof windowCommands)[number]): KeyEntry => ({
  id: entry.id,
  where: "window",
  chords: [entry.shortcut, SECOND[entry.id]].filter((chord) => chord !== undefined),
  ...(entry.byPlatform && { fixed: true }),
});

const own = (id: KeyId, where: KeyEntry["where"], ...chords: readonly string[]): KeyEntry => ({
  id,
  where,
  chords,
});

/** Everything that has keys, or can be given some. */
export const keyEntries: readonly KeyEntry[] = [
  ...windowCommands.map(ofCommand),
  own("rename", "window", "F2"),
  own("next-region", "window", "F6"),
  own("region-before", "window", "Shift+F6"),
  own("remove-selected", "sheet", "Delete", "Backspace"),
  own("zoom-in", "sheet", "+", "="),
  own("zoom-out", "sheet", "-"),
  own("zoom-full", "sheet", "0"),
  own("zoom-all", "sheet", "1"),
  own("follow", "sheet", "F"),
  own("follow-back", "sheet", "Shift+F"),
  own("start-cable", "sheet", "C"),
];

/** Keys that a person has chosen in the place of those of the catalogue; null for none. */
export type ChosenKeys = Readonly<Partial<Record<KeyId, string | null>>>;

/** Chords of an entry as they are in force. */
export function chordsOf({ id, chords }: KeyEntry, chosen: ChosenKeys): readonly string[] {
  const own = chosen[id];
  if (own === undefined) return chords;
  return own === null ? [] : [own];
}

export const findKeyEntry = (id: string): KeyEntry | undefined => keyEntries.find((entry) => entry.id === id);

/** The entry that answers a chord; an entry that a person gave it comes before one that has it by the catalogue. */
export const entryOfChord = (chord: string, chosen: ChosenKeys, where?: KeyEntry["where"]): KeyEntry | undefined => {
  const all = keyEntries.filter((entry) => where === undefined || entry.where === where);
  return all.find(({ id }) => chosen[id] === chord) ?? all.find((entry) => chordsOf(entry, chosen).includes(chord));
};

const CHORD = /^(Mod[+])?(Alt[+])?(Shift[+])?([A-Z0-9]|F([1-9]|1[0-9]|2[0-4])|Delete|Backspace|Insert|[!-/:-@[-`{-~])$/;

/** Whether a text is a chord of the kind that can be chosen. */
export const isChord = (text: string): boolean => CHORD.test(text);

/** One character without Control, Command or Alt. */
export const isSingleKey = (chord: string): boolean => /^(Shift[+])?.$/u.test(chord);

/** What edits text in every field of every platform, or walks in it. */
export const TEXT_CHORDS: ReadonlySet<string> = new Set([
  ...["Mod+A", "Mod+C", "Mod+V", "Mod+X", "Mod+Z", "Mod+Shift+Z", "Mod+Y"],
  ...["Mod+Backspace", "Mod+Delete", "Shift+Insert", "Mod+Insert", "Shift+Delete"],
]);
/** What browsers and operating systems keep for themselves, and what the menus of the desktop program hold. */
const OF_PLATFORM: ReadonlySet<string> = new Set([
  ...["Mod+Q", "Mod+W", "Mod+T", "Mod+R", "Mod+H", "Mod+M", "Mod+L", "Mod+Shift+N", "Mod+Shift+T", "Mod+Shift+W"],
  ...[
    "Mod+Shift+I",
    "Mod+Shift+J",
    "Mod+Shift+R",
    "Mod+0",
    "Mod++",
    "Mod+-",
    "Mod+=",
    "F5",
    "F10",
    "F11",
    "F12",
    "Shift+F10",
  ],
]);

/** Why an entry cannot have a chord; `key-words.ts` says it in words. */
export type WhyNotChord = "altLetter" | "fixed" | "ofSystem" | "ofText" | "singleKey" | "writes";

/** Why an entry cannot have a chord, whoever has it now; undefined when it can. */
export function whyNotChord(entry: KeyEntry, chord: string): WhyNotChord | undefined {
  if (entry.fixed) return "fixed";
  if (!isChord(chord)) return "writes";
  if (entry.chords.includes(chord)) return undefined;
  if (TEXT_CHORDS.has(chord)) return "ofText";
  if (OF_PLATFORM.has(chord)) return "ofSystem";
  if (entry.where === "sheet") return undefined;
  if (isSingleKey(chord) || /^(Shift[+])?(Delete|Backspace|Insert)$/.test(chord)) return "singleKey";
  return /^Alt[+](Shift[+])?[A-Z]$/.test(chord) ? "altLetter" : undefined;
}

/**
 * Gives an entry a chord, or with null none. Whoever had the chord loses it: ask first where `entryOfChord` names one.
 * The entry's own first chord means as in the catalogue.
 */
export function withChord(chosen: ChosenKeys, entry: KeyEntry, chord: string | null): ChosenKeys {
  const next: Partial<Record<KeyId, string | null>> = { ...chosen };
  for (const other of keyEntries) {
    if (other.id === entry.id || chord === null) continue;
    const left = chordsOf(other, chosen).filter((one) => one !== chord);
    if (left.length < chordsOf(other, chosen).length) next[other.id] = left[0] ?? null;
  }
  const asInCatalogue = chord === (entry.chords[0] ?? null);
  // Its second keys come back with it, unless they went elsewhere.
  const seconds = entry.chords.slice(1);
  const wentElsewhere = keyEntries.some(
    (other) => other.id !== entry.id && chordsOf(other, next).some((one) => seconds.includes(one)),
  );
  if (asInCatalogue && !wentElsewhere) delete next[entry.id];
  else next[entry.id] = chord;
  return next;
}

/** What is kept of chosen keys that come from outside: entries that exist, with chords that they may have. */
export function soundKeys(kept: unknown): ChosenKeys {
  if (typeof kept !== "object" || kept === null || Array.isArray(kept)) return {};
  let sound: ChosenKeys = {};
  for (const entry of keyEntries) {
    const chord: unknown = Object.hasOwn(kept, entry.id) ? Reflect.get(kept, entry.id) : undefined;
    if (entry.fixed || (chord !== null && typeof chord !== "string")) continue;
    if (chord === null || whyNotChord(entry, chord) === undefined) sound = withChord(sound, entry, chord);
  }
  return sound;
}

import { inPseudo } from "./pseudo.ts";

/** What stands inside a sentence: a name, a number, or words that were made elsewhere. */
export type Part = string | number;

/** Words, or a sentence around what it is about. */
export type Entry = string | ((...parts: never[]) => string);

/** What a translation of a catalogue has to bring: every key, with the same parts. */
export type WordsOf<T extends Readonly<Record<string, Entry>>> = {
  readonly [K in keyof T]: T[K] extends (...parts: infer P) => string ? (...parts: P) => string : string;
};

const KEY = "loadside.language";

/**
 * What a part of the window says, by key. The English words are the catalogue: a key that is missing or given other
 * parts does not compile. The language of a window is chosen before it starts, so words may be kept as constants.
 */
export function catalogue<T extends Readonly<Record<string, Entry>>>(english: T): WordsOf<T> {
  return (language() === "pseudo" ? inPseudo(english) : english) as WordsOf<T>;
}

/** "pseudo" shows what is not in a catalogue, and what is cut off where words are longer; it is for those who test. */
function language(): "en" | "pseudo" {
  try {
    return localStorage.getItem(KEY) === "pseudo" ? "pseudo" : "en";
  } catch {
    return "en";
  }
}

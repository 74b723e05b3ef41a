import { language } from "./language.ts";
import { inPseudo, pseudo } from "./pseudo.ts";

/** What stands inside a sentence: a name, a number, or words that were made elsewhere. */
export type Part = string | number;

/** Words, or a sentence around what it is about. */
export type Entry = string | ((...parts: never[]) => string);

/** What a translation of a catalogue has to bring: every key, with the same parts. */
export type WordsOf<T extends Readonly<Record<string, Entry>>> = {
  readonly [K in keyof T]: T[K] extends (...parts: infer P) => string ? (...parts: P) => string : string;
};

/**
 * What a folder says, by key. The English words are the catalogue: a key that is missing or given other parts does not
 * compile.
 */
export function catalogue<T extends Readonly<Record<string, Entry>>>(english: T): WordsOf<T> {
  return (language() === "pseudo" ? inPseudo(english) : english) as WordsOf<T>;
}

const IN_BRACES = /\{\w+\}/g;

/** A catalogue of sentences in which `{name}` stands for what is put there later. */
export function templates<K extends string>(english: Readonly<Record<K, string>>): Readonly<Record<K, string>> {
  if (language() === "en") return english;
  return Object.fromEntries(
    Object.entries<string>(english).map(([key, text]) => [key, pseudo(text, text.match(IN_BRACES) ?? [])]),
  ) as Record<K, string>;
}

import { catalogue, type Part } from "../lib/catalogue.ts";

const wording = catalogue({
  within: (words: string) => words.charAt(0).toLowerCase() + words.slice(1),
});

/** "read volts" for "Read volts": words that begin a sentence, to stand within one. */
export const midSentence = (words: Part): string => wording.within(String(words));

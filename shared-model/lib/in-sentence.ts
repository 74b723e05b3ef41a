import { catalogue, type Part } from "./catalogue.ts";

/** A word with a capital at its head and small letters after it, or a single letter: "GFCI" and "LED" are none. */
const CAPITAL = /^\p{Lu}(?!\p{Lu})/u;

const wording = catalogue({
  /** Some languages write it there as it is. */
  within: (title: Part) => String(title).replace(CAPITAL, (letter) => letter.toLowerCase()),
});

/** A title as it stands inside a sentence: "rated LED load" for "Rated LED load", "GFCI receptacle" for itself. */
export const inSentence = (title: Part): string => wording.within(title);

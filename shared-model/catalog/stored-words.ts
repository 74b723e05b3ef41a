import { catalogue } from "../lib/catalogue.ts";

/** Words that a document gets when something is made in it, in the language of whoever makes it; no code compares them with English ones. */
export const STORED_WORDS = catalogue({
  groundBar: "Ground bar",
  neutralBar: "Neutral bar",
  /** Where a cable goes that is thought to bring the supply: the words after "to". */
  theSupply: "the supply",
});

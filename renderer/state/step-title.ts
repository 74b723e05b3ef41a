import { LONGEST_TITLE, shorten } from "../../shared-model/lib/shorten.ts";

/** Words of a person's or a rule's that may be any length, as the name of a step. */
export const stepTitle = (words: string): string => shorten(words, LONGEST_TITLE);

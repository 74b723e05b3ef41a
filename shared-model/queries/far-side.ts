import { catalogue } from "../lib/catalogue.ts";

const wording = catalogue({
  notDrawn: "not drawn",
});

/** What is stored for a far side that nobody has named: no word, so that it says so in every language. */
export const UNNAMED_SIDE = "";

/** The same, or what stands for it in drawings that were made with a word. */
const UNNAMED = /^(not drawn|somewhere)?$/;

/** Whether a document says where a cable goes that leaves the drawing. */
export const saysWhere = (outside: string): boolean => !UNNAMED.test(outside);

/** "the panel" as somebody wrote it, or that the far side is not drawn. */
export const outsideWords = (outside: string): string => (saysWhere(outside) ? outside : wording.notDrawn);

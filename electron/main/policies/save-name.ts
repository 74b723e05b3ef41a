/** Names that go into a save dialog. */
import { extname } from "node:path";

const ENDING = ".loadside";
/** Separators, and what some systems keep for themselves. */
const NOT_IN_NAMES = /[\\/:*?"<>|]/g;
/** Control characters, and marks that turn the reading direction: a name could look like another one. */
const UNSEEN = /[\p{Cc}\p{Bidi_Control}]/gu;
const LONGEST = 120;

/**
 * A plain file name out of what the window suggests: no folder, no hidden file, and the ending.
 * @param ending With its dot; that of a document where it is left out.
 */
export function safeName(suggested: string, ending: string = ENDING): string {
  const stem = suggested.endsWith(ending) ? suggested.slice(0, -ending.length) : suggested;
  const plain = [
    ...stem
      .replace(NOT_IN_NAMES, "")
      .replace(UNSEEN, "")
      .replace(/^[. ]+|[. ]+$/g, ""),
  ]
    .slice(0, LONGEST)
    .join("");
  return `${plain === "" ? "drawing" : plain}${ending}`;
}

/** The path to save to, and whether the person has seen that name: an ending added now was not in the dialog. */
export const withEnding = (
  path: string,
  ending: string = ENDING,
): { readonly path: string; readonly asChosen: boolean } =>
  extname(path) === ending ? { path, asChosen: true } : { path: `${path}${ending}`, asChosen: false };

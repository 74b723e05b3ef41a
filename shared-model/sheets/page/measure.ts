import type { Weight } from "../display-list.ts";
import { EXTENDED_CHARACTERS, FACE_CHARACTERS, FACE_WIDTHS, TABULAR_FIGURE } from "./face-widths.ts";

const INDEX: ReadonlyMap<string, number> = new Map([...FACE_CHARACTERS].map((character, i) => [character, i]));

/** Whether the face that goes with the program has a character. */
export const isInFace = (character: string): boolean => INDEX.has(character);

const EXTENDED: ReadonlySet<string> = new Set(EXTENDED_CHARACTERS);

/** Parts of a text by the file of the face that has their letters: most text is one part. */
export function partsByFile(text: string): readonly { readonly file: "latin" | "extended"; readonly text: string }[] {
  const parts: { file: "latin" | "extended"; text: string }[] = [];
  for (const character of text) {
    const last = parts[parts.length - 1];
    const file = EXTENDED.has(character) ? "extended" : "latin";
    if (last?.file === file) last.text += character;
    else parts.push({ file, text: character });
  }
  return parts;
}

/** What stands for a character that the face does not have. */
const SUBSTITUTE = "?";

/** Signs that people type and the face has not, in signs that it has. */
const SAID_OTHERWISE: Readonly<Record<string, string>> = {
  "′": "'",
  "″": '"',
  "‐": "-",
  "‑": "-",
  "→": "to",
  Ω: "ohm",
  "≤": "at most",
  "≥": "at least",
};

/**
 * A text as it can be printed on one line: one kind of space, nothing that cannot be seen (controls, marks that turn the
 * direction of writing), and a question mark for every character that the face does not have.
 */
export function printable(text: string): string {
  let clean = "";
  for (const character of text.normalize("NFC").replace(/[\p{Cf}\p{Cs}]/gu, "")) {
    if (/[\s\p{Cc}]/u.test(character)) clean += character === "\u00a0" ? character : " ";
    else if (isInFace(character)) clean += character;
    else clean += SAID_OTHERWISE[character] ?? SUBSTITUTE;
  }
  return clean;
}

/** Whether something of a text cannot be printed and is a question mark on paper. */
export const losesLetters = (text: string): boolean =>
  [...text.normalize("NFC").replace(/[\p{Cf}\p{Cs}]/gu, "")].some(
    (character) => !/[\s\p{Cc}]/u.test(character) && !isInFace(character) && SAID_OTHERWISE[character] === undefined,
  );

export interface Lettering {
  /** Height of the em, mm. */
  readonly size: number;
  readonly weight?: Weight;
  readonly track?: number;
  readonly tabular?: boolean;
}

/** Width of a printable text, in the unit of `size`. Kerning is left out: it makes text a little narrower. */
export function measure(text: string, size: number, weight: Weight = 400, track = 0, tabular = false): number {
  const widths = FACE_WIDTHS[weight];
  let em = 0;
  let count = 0;
  for (const character of text) {
    const isFigure = tabular && character >= "0" && character <= "9";
    em += isFigure ? TABULAR_FIGURE : (widths[INDEX.get(character) ?? -1] ?? 0);
    count += 1;
  }
  return (em / 1000) * size + track * count;
}

const widthOf = (text: string, { size, weight = 400, track = 0, tabular = false }: Lettering): number =>
  measure(text, size, weight, track, tabular);

/**
 * A text in lines that are at most `width` wide: broken between words, and inside a word only where it alone is wider.
 * Line feeds of the text are kept. At least one line.
 */
export function wrap(text: string, width: number, lettering: Lettering): readonly string[] {
  return text.split(/\r?\n/).flatMap((part) => wrapPart(printable(part), width, lettering));
}

function wrapPart(text: string, width: number, lettering: Lettering): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").filter((each) => each !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (widthOf(longer, lettering) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const pieces = cutWord(word, width, lettering);
    lines.push(...pieces.slice(0, -1));
    line = pieces[pieces.length - 1] ?? "";
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}

function cutWord(word: string, width: number, lettering: Lettering): readonly string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const character of word) {
    if (piece !== "" && widthOf(piece + character, lettering) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** As much of a text as fits on one line, ending in an ellipsis when something was cut off. */
export function cutToFit(text: string, width: number, lettering: Lettering): string {
  const clean = printable(text);
  if (widthOf(clean, lettering) <= width) return clean;
  const characters = [...clean];
  while (characters.length > 1 && widthOf(`${characters.join("")}…`, lettering) > width) characters.pop();
  return `${characters.join("").trimEnd()}…`;
}

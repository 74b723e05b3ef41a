import { catalogue } from "../../lib/catalogue.ts";
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
const SUBSTITUTED = INDEX.get(SUBSTITUTE) ?? -1;

/** What is said for signs that the face has not. */
const SAID = catalogue({
  about: "about",
  atLeast: "at least",
  atMost: "at most",
  diameter: "dia.",
  not: "not",
  ohm: "ohm",
  to: "to",
});

/** Signs that people type and the face has not, in signs that it has. */
const SAID_OTHERWISE: Readonly<Record<string, string>> = {
  "′": "'",
  "″": '"',
  "‐": "-",
  "‑": "-",
  "→": SAID.to,
  Ω: SAID.ohm,
  // As the trade types it, "uF": the face has neither the sign nor the letter.
  µ: "u",
  μ: "u",
  "≤": SAID.atMost,
  "≥": SAID.atLeast,
  "≠": SAID.not,
  "≈": SAID.about,
  "∼": "~",
  "⌀": SAID.diameter,
  "●": "•",
  "■": "•",
};

/**
 * What is printed for a character: itself, the sign that is said for it, or the plain letters in it, as "e" for one whose
 * accents the face lacks, "fi" for a ligature, "1" for a figure in a circle.
 * @returns Undefined where nothing of it can be printed.
 */
function printed(character: string): string | undefined {
  if (isInFace(character)) return character;
  const said = SAID_OTHERWISE[character];
  if (said !== undefined) return said;
  const plain = [...character.normalize("NFKD").replace(/\p{M}/gu, "")].map((part) =>
    isInFace(part) ? part : SAID_OTHERWISE[part],
  );
  // An accent by itself belongs to a letter that is printed without it.
  return plain.includes(undefined) ? undefined : plain.join("");
}

/** Without what cannot be seen: marks that turn the direction of writing, and those that choose how a sign looks. */
const seen = (text: string): string => text.normalize("NFC").replace(/[\p{Cf}\p{Cs}\p{Variation_Selector}]/gu, "");

/** Most text is, and need not be looked at letter by letter: the face has all of ASCII. */
const isPlain = (text: string): boolean => /^[ -~]*$/.test(text);

const isSpace = (character: string): boolean => /[\s\p{Cc}]/u.test(character);

/**
 * A text on one line, of which a person sees everything: one kind of space, no controls, no marks that turn the direction of
 * writing, and signs that the face lacks said by others where there are any. A character of which the face has nothing
 * stays, so that it can be told; `printable` puts a question mark for it.
 */
export function legible(text: string): string {
  if (isPlain(text)) return text;
  let clean = "";
  for (const character of seen(text)) {
    if (isSpace(character)) clean += character === "\u00a0" ? character : " ";
    else clean += printed(character) ?? character;
  }
  return clean;
}

/** A text as it is printed on one line, with a question mark for every character of which the face has nothing. */
export function printable(text: string): string {
  const clean = legible(text);
  if (isPlain(clean)) return clean;
  return [...clean].map((character) => (isInFace(character) ? character : SUBSTITUTE)).join("");
}

/** Whether something of a text cannot be printed and is a question mark on paper. */
export const losesLetters = (text: string): boolean =>
  !isPlain(text) && [...seen(text)].some((character) => !isSpace(character) && printed(character) === undefined);

export interface Lettering {
  /** Height of the em, mm. */
  readonly size: number;
  readonly weight?: Weight;
  readonly track?: number;
  readonly tabular?: boolean;
}

/** Width of a legible text, in the unit of `size`. Kerning is left out: it makes text a little narrower. */
export function measure(text: string, size: number, weight: Weight = 400, track = 0, tabular = false): number {
  const widths = FACE_WIDTHS[weight];
  let em = 0;
  let count = 0;
  for (const character of text) {
    const isFigure = tabular && character >= "0" && character <= "9";
    em += isFigure ? TABULAR_FIGURE : (widths[INDEX.get(character) ?? SUBSTITUTED] ?? 0);
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
  return text.split(/\r?\n/).flatMap((part) => wrapPart(legible(part), width, lettering));
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
      // After a hyphen where the word has one, as in the name of a rule.
      const at = piece.lastIndexOf("-") + 1 || piece.length;
      pieces.push(piece.slice(0, at));
      piece = piece.slice(at);
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** As much of a text as fits on one line, ending after a word and in an ellipsis when something was cut off. */
export function cutToFit(text: string, width: number, lettering: Lettering): string {
  const clean = legible(text);
  if (widthOf(clean, lettering) <= width) return clean;
  const characters = [...clean];
  while (characters.length > 1 && widthOf(`${characters.join("")}…`, lettering) > width) characters.pop();
  const kept = characters.join("").trimEnd();
  const atWord = kept.lastIndexOf(" ");
  return `${atWord * 2 > kept.length ? kept.slice(0, atWord).replace(/[\s,;:(–-]+$/, "") : kept}…`;
}

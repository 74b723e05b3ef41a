type Entry = string | ((...parts: never[]) => string);

const ACCENTED: Readonly<Record<string, string>> = {
  A: "Á",
  B: "Ɓ",
  C: "Ç",
  D: "Ð",
  E: "É",
  F: "Ƒ",
  G: "Ĝ",
  H: "Ĥ",
  I: "Í",
  J: "Ĵ",
  K: "Ķ",
  L: "Ļ",
  M: "Ṁ",
  N: "Ñ",
  O: "Ó",
  P: "Þ",
  Q: "Ǫ",
  R: "Ŕ",
  S: "Š",
  T: "Ţ",
  U: "Ú",
  V: "Ṽ",
  W: "Ŵ",
  X: "Ẋ",
  Y: "Ý",
  Z: "Ž",
  a: "á",
  b: "ƀ",
  c: "ç",
  d: "ð",
  e: "é",
  f: "ƒ",
  g: "ĝ",
  h: "ĥ",
  i: "í",
  j: "ĵ",
  k: "ķ",
  l: "ļ",
  m: "ṁ",
  n: "ñ",
  o: "ó",
  p: "þ",
  q: "ǫ",
  r: "ŕ",
  s: "š",
  t: "ţ",
  u: "ú",
  v: "ṽ",
  w: "ŵ",
  x: "ẋ",
  y: "ý",
  z: "ž",
};

/** Languages that are longer than English are so by a third to a half. */
const LONGER = 0.4;

/** A catalogue in a language that nobody speaks: accents, each word two fifths longer, in brackets; what stands in a sentence stays. */
export const inPseudo = (english: Readonly<Record<string, Entry>>): Readonly<Record<string, Entry>> =>
  Object.fromEntries(
    Object.entries(english).map(([key, entry]) => [
      key,
      typeof entry === "string"
        ? pseudo(entry)
        : (...parts: readonly unknown[]) => pseudo(entry(...(parts as never[])), parts.map(String)),
    ]),
  );

/** @param kept What of the text is no word of the catalogue. */
export function pseudo(text: string, kept: readonly string[] = []): string {
  let letters = 0;
  let added = 0;
  const longer = (word: string): string => {
    letters += word.length;
    const more = Math.ceil(letters * LONGER) - added;
    added += more;
    return [...word].map((letter) => ACCENTED[letter] ?? letter).join("") + "~".repeat(more);
  };
  const said = apart(text, kept).map(({ piece, isKept }) => (isKept ? piece : piece.replace(/[A-Za-z]+/g, longer)));
  return `[${said.join("")}]`;
}

/** A text in pieces: those that are kept, and those between them. */
function apart(text: string, kept: readonly string[]): readonly { readonly piece: string; readonly isKept: boolean }[] {
  const found = kept.filter((part) => part !== "" && text.includes(part)).sort((a, b) => b.length - a.length)[0];
  if (found === undefined) return [{ piece: text, isKept: false }];
  const rest = kept.filter((part) => part !== found);
  return text
    .split(found)
    .flatMap((piece, at) => [...(at === 0 ? [] : [{ piece: found, isKept: true }]), ...apart(piece, rest)]);
}

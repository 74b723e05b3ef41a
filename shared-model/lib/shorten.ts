/** The title of a step has at most so many characters: room for a sentence with two or three names in it. */
export const LONGEST_TITLE = 200;

const MARK = "…";

/** The least of a text that is kept when it has no space to be cut at: a share of the most. */
const LEAST_SHARE = 0.5;

/** A text of at most so many characters: a longer one ends after a word, with an ellipsis. */
export function shorten(text: string, most: number): string {
  if (text.length <= most) return text;
  const room = text.slice(0, most - MARK.length + 1);
  const atWord = room.lastIndexOf(" ");
  const kept = atWord >= most * LEAST_SHARE ? room.slice(0, atWord) : wholeCharacters(room.slice(0, -1));
  return `${kept.replace(/[\s,.;:(–-]+$/u, "")}${MARK}`;
}

/** Without the half of a pair that stands for one character. */
const wholeCharacters = (text: string): string => text.replace(/[\uD800-\uDBFF]$/, "");

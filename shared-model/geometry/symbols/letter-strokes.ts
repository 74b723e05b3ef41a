/**
 * Letters as lines, so that a symbol is the same on screen, in a picture and on paper, whatever faces are at hand. Each in
 * a cell 4 wide and 6 high, strokes apart by a bar, points as pairs of digits: x, then y from the top.
 */
const LETTERS: Readonly<Record<string, string>> = {
  A: "06 20 46|14 34",
  C: "41 30 10 01 05 16 36 45",
  D: "00 06 26 45 41 20 00",
  F: "40 00 06|03 33",
  G: "41 30 10 01 05 16 36 45 43 23",
  I: "20 26",
  J: "30 35 26 16 05",
  K: "00 06|40 03 46",
  L: "00 06 46",
  M: "06 00 23 40 46",
  N: "06 00 46 40",
  P: "06 00 30 41 42 33 03",
  R: "06 00 30 41 42 33 03|23 46",
  S: "41 30 10 01 02 13 33 44 45 36 16 05",
  T: "00 40|20 26",
  U: "00 05 16 36 45 40",
  W: "00 16 22 36 40",
  "2": "01 10 30 41 42 06 46",
  "3": "01 10 30 41 42 33 23|33 44 45 36 16 05",
  "4": "36 30 04 44",
};

/** Of the cell of a letter, and from one to the next. */
const CELL = { wide: 4, high: 6, gap: 2.5 } as const;

/** Lines of a word about a point, `high` units high; each a list of x, y. A letter without lines is an error of ours. */
export function wordStrokes(word: string, x: number, y: number, high: number): readonly (readonly number[])[] {
  const unit = high / CELL.high;
  const wide = widthOf(word) * unit;
  let left = x - wide / 2;
  const strokes: number[][] = [];
  for (const letter of word) {
    const lines = LETTERS[letter];
    if (lines === undefined) throw new Error(`No strokes for the letter ${letter}.`);
    const inset = letter === "I" ? 2 : 0;
    for (const line of lines.split("|"))
      strokes.push(
        line
          .split(" ")
          .flatMap((pair) => [left + (Number(pair[0]) - inset) * unit, y - high / 2 + Number(pair[1]) * unit]),
      );
    left += (wideOf(letter) + CELL.gap) * unit;
  }
  return strokes;
}

const wideOf = (letter: string): number => (letter === "I" ? 0 : CELL.wide);
const widthOf = (word: string): number => [...word].reduce((sum, letter) => sum + wideOf(letter) + CELL.gap, -CELL.gap);

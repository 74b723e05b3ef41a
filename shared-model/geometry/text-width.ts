/**
 * Widths of text without a window, so that plates fit their codes wherever they are drawn.
 *
 * Advance widths of Atkinson Hyperlegible Next, regular cut, in 1/1000 em: read from the font file of
 * `@fontsource-variable/atkinson-hyperlegible-next` 5.3.0. First the 95 printable ASCII characters in order.
 */
const ASCII: readonly number[] = [
  280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 648, 407, 548, 576, 614, 588, 598,
  510, 615, 595, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541, 824,
  693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564,
  538, 314, 558, 550, 252, 245, 492, 262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344,
  237, 344, 555,
];
const OTHERS: Readonly<Record<string, number>> = {
  "×": 532,
  "³": 383,
  "²": 382,
  "·": 240,
  "½": 820,
  "¼": 816,
  "°": 352,
  "−": 606,
  "–": 504,
  "…": 670,
  "±": 579,
};
/** An unknown character counts as an average capital. */
const UNKNOWN = 620;
/** Widening of the heavier cuts over the regular one, per 400 units of weight: measured on a few codes. */
const BOLDER = 0.075;

/** Width of a text in drawing units. `weight` 200 to 800; `track` letter spacing in em. */
export function textWidth(text: string, size: number, weight = 400, track = 0): number {
  let em = 0;
  let count = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    em += ASCII[code - 32] ?? OTHERS[character] ?? UNKNOWN;
    count += 1;
  }
  const bolder = 1 + (Math.max(0, weight - 400) / 400) * BOLDER;
  return (em / 1000) * size * bolder + track * size * count;
}

/** As much of a text as fits, ending in an ellipsis when something was cut off. */
export function fitText(text: string, width: number, size: number, weight = 400): string {
  if (textWidth(text, size, weight) <= width) return text;
  const characters = [...text];
  while (characters.length > 1 && textWidth(`${characters.join("")}…`, size, weight) > width) characters.pop();
  return `${characters.join("").trimEnd()}…`;
}

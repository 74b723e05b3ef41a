import { textWidth } from "../../../shared-model/geometry/text-width.ts";

/** Words in lines of at most a width where they allow it; a word longer than that stands alone. */
export function inLines(text: string, width: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size, 600) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

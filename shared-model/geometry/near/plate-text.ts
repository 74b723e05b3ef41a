import { type Colour, colourCode } from "../../units/colour.ts";
import { PLATE } from "../metrics.ts";
import { fitText, textWidth } from "../text-width.ts";

/** A name of any length still leaves a readable plate. */
const LONGEST_NAME = 84;

export const plateWidth = (text: string): number =>
  Math.ceil(textWidth(text, PLATE.size, PLATE.weight)) + 2 * PLATE.pad;

/** "BK", "WH as BK". */
export const codeOf = (colour: Colour, markedAs: Colour | undefined, twin = ""): string =>
  `${colourCode(colour)}${twin}${markedAs === undefined ? "" : ` as ${colourCode(markedAs)}`}`;

/** Name of a cable or jumper as it fits on a plate. */
export const plateName = (owner: string): string => fitText(owner, LONGEST_NAME, PLATE.size, PLATE.weight);

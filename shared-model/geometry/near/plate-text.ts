import { catalogue, type Part } from "../../lib/catalogue.ts";
import { type Colour, colourCode } from "../../units/colour.ts";
import { CAP_AT, FAN, PLATE, SHEATH_PLATE } from "../metrics.ts";
import { fitText, textWidth } from "../text-width.ts";

const wording = catalogue({ markedAs: (code: Part, mark: Part) => `${code} as ${mark}` });

/** A name of any length still leaves a readable plate. */
const LONGEST_NAME = 84;

export const plateWidth = (text: string): number =>
  Math.ceil(textWidth(text, PLATE.size, PLATE.weight)) + 2 * PLATE.pad;

/** "BK", "WH as BK". */
export const codeOf = (colour: Colour, markedAs: Colour | undefined, twin = ""): string =>
  markedAs === undefined
    ? `${colourCode(colour)}${twin}`
    : wording.markedAs(`${colourCode(colour)}${twin}`, colourCode(markedAs));

/** Name of a cable or jumper as it fits on a plate. */
export const plateName = (owner: string): string => fitText(owner, LONGEST_NAME, PLATE.size, PLATE.weight);

/** Middle of the plate of a conductor that stops beside its sheath: a long one begins where the fan ends. */
export const stubPlateAt = (text: string): number => Math.max(SHEATH_PLATE, FAN.end + plateWidth(text) / 2);

/** Where that conductor has its cap: behind its plate. */
export const stubCapAt = (text: string): number => Math.max(CAP_AT, stubPlateAt(text) + plateWidth(text) / 2 + 4);

import { catalogue } from "../lib/catalogue.ts";
import type { Colour } from "./colour.ts";

/** Colours of conductors as a sentence names them; their letter codes are the same in every language. */
export const COLOUR_WORDS: Readonly<Record<Colour, string>> = catalogue({
  bare: "bare",
  black: "black",
  blue: "blue",
  brown: "brown",
  green: "green",
  grey: "grey",
  orange: "orange",
  pink: "pink",
  red: "red",
  violet: "violet",
  white: "white",
  yellow: "yellow",
});

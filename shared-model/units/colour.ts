import { catalogue } from "../lib/catalogue.ts";

/** Colours of conductors as made, with the letter codes of IEC 60757; a conductor without insulation is "bare". */
export const COLOURS = [
  "black",
  "white",
  "red",
  "blue",
  "yellow",
  "brown",
  "orange",
  "grey",
  "violet",
  "pink",
  "green",
  "bare",
] as const;

export type Colour = (typeof COLOURS)[number];

const wording = catalogue({
  bare: "bare",
});

const CODES: Readonly<Record<Colour, string>> = {
  black: "BK",
  white: "WH",
  red: "RD",
  blue: "BU",
  yellow: "YE",
  brown: "BN",
  orange: "OG",
  grey: "GY",
  violet: "VT",
  pink: "PK",
  green: "GN",
  bare: wording.bare,
};

/** Letter code of IEC 60757, or the word for a conductor without insulation. */
export const colourCode = (colour: Colour): string => CODES[colour];

/** Key of a conductor of this colour in its cable, and of the colour in style sheets: "bk", "wh"; "cu" for bare. */
export const colourKey = (colour: Colour): string => (colour === "bare" ? "cu" : CODES[colour].toLowerCase());

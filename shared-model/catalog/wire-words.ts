import { catalogue } from "../lib/catalogue.ts";
import type { Material } from "../model/cable.ts";
import type { Colour } from "../units/colour.ts";

/** Colours of conductors in a sentence. */
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

/** What conductors are made of. */
export const MATERIAL_WORDS: Readonly<Record<Material, string>> = catalogue({
  aluminium: "aluminium",
  copper: "copper",
  "copper-clad-aluminium": "copper-clad aluminium",
});

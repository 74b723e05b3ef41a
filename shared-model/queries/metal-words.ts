import { catalogue } from "../lib/catalogue.ts";
import type { Material } from "../model/cable.ts";

/** What a conductor is made of, as a sentence names it. */
export const METAL_WORDS: Readonly<Record<Material, string>> = catalogue({
  aluminium: "aluminium",
  copper: "copper",
  "copper-clad-aluminium": "copper-clad aluminium",
});

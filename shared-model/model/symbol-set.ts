/** Which conventions the drawing symbols of a plan follow: those usual in the US, or the international ones. */
export const SYMBOL_SETS = ["us", "international"] as const;
export type SymbolSet = (typeof SYMBOL_SETS)[number];

/** Of a drawing that does not say. */
export const USUAL_SET: SymbolSet = "us";

import { wording } from "./words.ts";
/** Words of the legend. */
export const LEGEND_WORDS = {
  open: wording.legend,
  region: wording.legendOfTheDrawing,
  sets: wording.drawingSymbols,
  us: "US",
  international: wording.international,
  none: wording.nothingIsDrawnYet2,
} as const;

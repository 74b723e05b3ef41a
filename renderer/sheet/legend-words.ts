import { wording } from "./words.ts";
/** Words of the legend. */
export const LEGEND_WORDS = {
  move: wording.moveLegend,
  moveTip: wording.intoTheNextCornerOfTheSheetOrDragItThere,
  close: wording.fold,
  region: wording.legendOfTheDrawing,
  sets: wording.drawingSymbols,
  us: "US",
  international: wording.international,
  none: wording.nothingIsDrawnYet2,
} as const;

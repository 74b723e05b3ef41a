import { laterWording } from "./later-words.ts";
import { wording } from "./words.ts";

/** Words of the legend. */
export const LEGEND_WORDS = {
  move: laterWording.moveLegend,
  moveTip: laterWording.intoTheNextCornerOfTheSheetOrDragItThere,
  close: laterWording.fold,
  show: laterWording.showLegend,
  noRoom: laterWording.legendWouldCoverTheDrawing,
  beside: laterWording.showLegendBeside,
  name: wording.legend,
  region: laterWording.legendOfTheDrawing,
  sets: laterWording.drawingSymbols,
  us: "US",
  international: laterWording.international,
  none: laterWording.nothingIsDrawnYet2,
} as const;

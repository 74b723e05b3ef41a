import { catalogue } from "./catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  detailsFindingsAndRooms: "Details, findings and rooms",
  opening: "Opening",
  openingTheDrawing: "Opening the drawing.",
  sheet: "Sheet",
  stockAndOutline: "Stock and outline",
  theLeftPane: "The left pane",
  thePane: "The pane",
  theProgramThatServesThisWindow:
    "The program that serves this window does not answer. The drawing is still here: save it, and start the window again.",
  theSheet: "The sheet",
  theStartPageCouldNotBeFetched: "The start page could not be fetched.",
});

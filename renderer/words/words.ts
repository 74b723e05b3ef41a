import { catalogue } from "../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  detailsFindingsAndRooms: "Details, findings and rooms",
  opening: "Opening",
  openingTheDrawing: "Opening the drawing.",
  sheet: "Sheet",
  stockAndOutline: "Stock and outline",
  theLeftPane: "The left pane",
  thePane: "The pane",
  theSheet: "The sheet",
});

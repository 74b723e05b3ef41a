import { catalogue } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  close: "Close",
  keys: "Arrow keys move the view, with Shift by less. Enter or Escape goes back to the sheet.",
  nothing: "Nothing is drawn yet.",
  overview: "Overview",
  region: "Overview of the drawing",
  view: "What is in view",
});

import { catalogue, type Part } from "../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  close: "Close",
  hasMetAFaultOfThe: (what: Part) => `${what} has met a fault of the program.`,
  oneLess: (label: Part) => `One less: ${label}`,
  oneMore: (label: Part) => `One more: ${label}`,
  open: "Open",
  showItAgain: "Show it again",
  theDrawingIsNotHarmedIt: " The drawing is not harmed: it can be saved.",
});

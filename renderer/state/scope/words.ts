import { catalogue } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  cannotBeWorkedOut: "The difference cannot be worked out now. The checks may be starting: try again in a moment.",
  couldNotBeFetched: "Scope could not be fetched",
  nothingToCompare: "There is nothing to compare yet",
  onlyLooked: "Scope is for looking at the difference. Show Proposed to change the drawing.",
  startProposedFirst:
    "Scope shows what changes from as found to proposed. Start proposed first, with the switch at the top.",
  tryAgain: "Save the drawing, load the window again and press Scope once more.",
});

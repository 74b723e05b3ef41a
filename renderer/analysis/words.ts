import { catalogue, type Part } from "../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  aSheetCouldNotBeMade: (title: Part, reason: Part) =>
    `${title} could not be made (${reason}). Take its tick away to go on with the others.`,
  checkingDidNotAnswerAndWas: "Checking did not answer and was started again.",
  checkingHasStoppedItDidNot: "Checking has stopped: it did not answer three times. Editing and saving go on.",
  leftOutBecauseItDidNot: (join: Part) => `Left out because it did not end in time: ${join}. Its findings are missing.`,
  readingThisFileTookTooLong: "Reading this file took too long and was stopped.",
  thePaperWorkBrokeOff: "Laying out the sheets broke off. The drawing is as it was: try again.",
  thePaperWorkDidNotAnswer:
    "Laying out the sheets did not come to an end. Try again, with fewer sheets or fewer boxes at once.",
  theSheetsCouldNotBeMade: (reason: Part) => `The sheets could not be made (${reason}). Try again.`,
  theWindowAndItsChecksAre: "The window and its checks are of different versions. Load the window again.",
});

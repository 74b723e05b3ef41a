import { catalogue, type Part } from "../words/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  checkingDidNotAnswerAndWas: "Checking did not answer and was started again.",
  checkingHasStoppedItDidNot: "Checking has stopped: it did not answer three times. Editing and saving go on.",
  leftOutBecauseItDidNot: (join: Part) => `Left out because it did not end in time: ${join}. Its findings are missing.`,
  readingThisFileTookTooLong: "Reading this file took too long and was stopped.",
  theWindowAndItsChecksAre: "The window and its checks are of different versions. Load the window again.",
});

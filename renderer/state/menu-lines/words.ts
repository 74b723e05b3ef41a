import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder: a drawing needs it before it needs all that the command field says. */
export const wording = catalogue({
  discardProposed: "Discard proposed",
  moveOneStep: (word: Part) => `Move one step ${word}`,
  resetAllOfProposedToAs: "Reset all of proposed to as found",
  resetInProposedToAsFound: (nameWord: Part) => `Reset ${nameWord} in proposed to as found`,
  selectAllBoxes: "Select all boxes",
  show: (toLowerCase: Part) => `Show ${toLowerCase}`,
  startProposedAsACopyOf: "Start proposed as a copy of as found",
});

import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  fitADevice: "Fit a ground-fault device…",
  fitAt: (nameWord: Part) => `Fit a ground-fault device at ${nameWord}…`,
  inBox: (box: Part) => `in ${box}`,
  makeUp: (nameWord: Part) => `Make up ${nameWord}…`,
  makeUpABox: "Make up a box…",
  nobodyAnswers: "This cannot be worked out now: the checks do not answer, or proposed does not have it.",
  notDone: "Not done",
  whichBox: "Which box is made up?",
  whichReceptacle: "In the place of which receptacle?",
});

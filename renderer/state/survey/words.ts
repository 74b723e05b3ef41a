import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  hold: (number: Part, by: Part, when: Part) => `Hold point ${number}: ${by}, ${when}`,
  jointsOpened: "joints opened",
  mapTheCircuits: "Map the circuits…",
  off: (breaker: Part) => `${breaker} off`,
  recordReadings: (count: Part) => `Record ${count} readings`,
  saidAboutTheBox: "said about the box",
  theSurveyCannotBeWorkedOut: "The survey cannot be worked out now.",
  whichBox: "Which box?",
  whichCableIsWhich: "Which cable is which…",
  whichCableOfIsWhich: (box: Part) => `Which cable of ${box} is which…`,
  writeYourNameFirst: "Write your name first: a hold point is ticked by a person.",
});

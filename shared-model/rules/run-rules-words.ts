import { catalogue, type Part } from "../lib/catalogue.ts";

export const wording = catalogue({
  tooManySwitches: (place: Part, rule: Part) =>
    `Cannot tell for every switch position: more switches bear on the circuits at ${place} than are tried, so a finding of "${rule}" may be missing. Judge these circuits by hand.`,
  allPositions: (place: Part) => `the positions of all switches on the circuits at ${place}`,
  judgeCircuits: "Judge these circuits by hand.",
  notCovered: (edition: Part, count: Part, all: Part) =>
    `Not covered by this rule set: ${edition} is held for the count of box fill only. ${count} of ${all} rules did not run, among them every one that looks for a danger, so nothing is said here of shock, fire, protection or polarity.`,
  allButBoxFill: (edition: Part) => `all of ${edition} but the count of box fill`,
  judgeElse: "Judge everything else by hand, or look at the drawing by another edition as well.",
  placesOf: (edition: Part) => `the list of protected places of edition ${edition}`,
  placesNotHeld: (edition: Part) =>
    `Cannot tell which outlets need ground-fault or arc-fault protection: edition ${edition} is held for counting box fill only. Look its lists up, or choose the edition that is adopted. What other rules find is judged by the text of 2017.`,
  judgeOrChoose: "Judge them by hand, or choose another edition.",
  failed: (rule: Part, place: Part, reason: Part) =>
    `The check "${rule}" failed at ${place} because of a fault in this program: ${reason} The other checks ran; judge ${place} by hand.`,
  notCarriedOver: (title: Part, because: Part) =>
    `“${title}” was done as found and not carried over into proposed. ${because} Look at both, make proposed agree where it should, then settle this.`,
  iHaveLooked: "I have looked",
});

import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  back: "Back",
  dangerViolationCautionOrAdviceWith:
    "Danger, violation, caution or advice: with the place, the figure and the section, and often a repair to choose. What cannot be told names the fact that is missing.",
  detailsWhatItIsAndHow: "Details: what it is, and how it is known",
  done: "Done",
  everyCommandPartRoomAndFinding:
    "Every command, part, room and finding answers here, also to half a word. Energise, beside it, shows what the circuit does with power on.",
  findAnythingByTyping: "Find anything by typing",
  findingsFollowEveryStep: "Findings follow every step",
  landEveryEndOnTheSheet: "Land every end on the sheet",
  leaveTheTour: "Leave the tour",
  byKeys: (next: Part, find: Part) => `By keys: ${next} goes to the next part of the window, ${find} finds everything.`,
  newHere: "New here?",
  next: "Next",
  noThanks: "No, thanks",
  pressABoxThenPressThe:
    "Press a box, then press the sheet; or drag it there. Cables go from box to box, devices into a box. The second tab, Outline, has the whole drawing as a list that does everything the sheet does.",
  pressAConductorEndThenThe:
    "Press a conductor end, then the place where it goes. Places that fit are marked, the others say why not. Come nearer to see every terminal, go farther to see the house.",
  stepOf: (step: Part, ofWord: Part) => `Step ${step} of ${ofWord}`,
  takeWhatIsThereFromThe: "Take what is there from the stock",
  tourInFiveSteps: "Tour in five steps",
  tourOfTheWindow: "Tour of the window",
  whateverIsSelectedShowsItsFill:
    "Whatever is selected shows its fill, its terminals and its facts here. Each fact can say whether it was seen, measured, told or assumed, and a box keeps its photos.",
});

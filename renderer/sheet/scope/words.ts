import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  kept: "kept",
  legend: "What the lines mean",
  lookingOnly: "As found beneath, proposed on top. Looking only: show Proposed to change the drawing.",
  movedNewPlace: "moved, new place",
  movedOldPlace: "moved, old place",
  newWord: "new",
  nothingChanges: "Scope: proposed opens no box.",
  removed: "removed",
  stillFromBefore: "Working out the difference. What is shown is from before the last edit.",
  sum: (boxes: Part, detach: Part, attach: Part, joints: Part, devices: Part) =>
    `Scope: boxes opened ${boxes}, ends to detach ${detach}, to attach ${attach}, new joints ${joints}, devices ${devices}.`,
  workingItOut: "Working out the difference.",
});

import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  endsHere: (nameOfEnd: Part, placeWords: Part) => `${nameOfEnd} ends here, ${placeWords}.`,
  itIsNotThereAnyMore: "It is not there any more.",
  leavesThisDrawing: (nameWord: Part) => `${nameWord} leaves this drawing.`,
  noBoxLiesThere: "No box lies there.",
  noCableComesTo: (nameWord: Part) => `No cable comes to ${nameWord}.`,
  nothingElseIsInThisSplice: "Nothing else is in this splice.",
  nothingElseIsLandedHere: "Nothing else is landed here.",
  thisIsWhereYouBegan: "This is where you began.",
});

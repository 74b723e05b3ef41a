import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  cancel: "Cancel",
  findInTheList: "Find in the list",
  more: " more",
  notPossible: (refusal: Part) => `Not possible: ${refusal}`,
  nothingInTheListIsCalled: "Nothing in the list is called that.",
  ofWord: (at: Part, count: Part) => `${at} of ${count}`,
  thereIsNothingToChooseFrom: "There is nothing to choose from here.",
});

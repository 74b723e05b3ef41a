import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  at: (item: Part) => `, at ${item}`,
  beforeMeasuredAfterOfMeasured: (before: Part, after: Part, due: Part) =>
    `Before: ${before} measured. After: ${after} of ${due} measured.`,
  cameOn: "Came on",
  item: "Item",
  nothing: (toLowerCase: Part) => `Nothing ${toLowerCase}`,
  showMoreOfBoxes: (min: Part, part: Part) => `Show ${min} more of ${part} boxes`,
  test: "Test",
  wentDark: "Went dark",
});

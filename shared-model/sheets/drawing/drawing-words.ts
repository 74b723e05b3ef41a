import { catalogue, type Part } from "../../lib/catalogue.ts";

export const DRAWING = catalogue({
  title: "Drawing",
  pageTitle: (what: Part) => `Drawing: ${what}`,
  whole: "Whole drawing",
  wholeNote: "boxes, devices and cables",
  plan: "Plan",
  planNote: "symbols; the parts follow",
  part: (part: Part, parts: Part) => `Part ${part} of ${parts}`,
  to: (box: Part) => `to ${box}`,
  nothing: "Nothing is drawn yet. Draw what was found: a box, its cables and what is in it.",
  fillCaption: "box fill",
});

export const LEGEND = catalogue({
  title: "Legend",
  cable: "cable",
  load: "cable on LOAD of a ground-fault device",
  limit: "behind a ground-fault device",
  fill: "box fill: the ink is what is in it",
});

export const DRAWING = {
  title: "Drawing",
  whole: "Whole drawing",
  wholeNote: "boxes, devices and cables",
  plan: "Plan",
  planNote: "symbols; the parts follow",
  planAlone: "symbols",
  part: (part: number, parts: number): string => `Part ${part} of ${parts}`,
  to: (box: string): string => `to ${box}`,
  nothing: "Nothing is drawn yet. Draw what was found: a box, its cables and what is in it.",
  fillCaption: "box fill",
  breaker: "breaker",
} as const;

export const pageTitleOf = (what: string): string => `${DRAWING.title}: ${what}`;

export const LEGEND = {
  title: "Legend",
  cable: "cable",
  load: "cable on LOAD of a ground-fault device",
  limit: "behind a ground-fault device",
  fill: "box fill: the ink is what is in it",
  splice: "splice: a dot for each end",
  severity: {
    danger: "danger",
    violation: "violation",
    caution: "caution",
    advice: "advice",
  },
} as const;

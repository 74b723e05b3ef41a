import type { SurveyExposure } from "../../answers/survey.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";

/** Why a test would be done, and how many arrangements it leaves. */
export const WHY_WORDS = catalogue({
  atMost: (most: Part, left: Part) => `; whatever it shows, at most ${most} of the ${left} possible wirings are left`,
  effort: (minutes: Part, power: Part) => `about ${minutes} minutes, ${power}`,
  instead: (own: Part, test: Part, narrows: Part, most: Part, effort: Part) =>
    `${own} Instead you could ${test}: that ${narrows}${most}, and takes ${effort}.`,
  likelier: "; by itself it rules nothing out, but shows what is likelier",
  oneIn: (count: Part) => `one in ${count}`,
  own: (narrows: Part, most: Part, effort: Part) => `${narrows}${most}. It takes ${effort}.`,
  powerOff: "the power off all the time",
  quarter: "a quarter",
  third: "a third",
  threeQuarters: "three quarters",
  twoThirds: "two thirds",
  worst: "; at worst it rules nothing out",
});

/** How far a test narrows things down. */
export const NARROWS = catalogue({
  down: (share: Part) => `It narrows what is possible down to about ${share} as a rule`,
  half: "It splits what is possible about in half",
  hardly: "It hardly narrows down what is possible",
});

/** The same, after what is done. */
export const THAT_NARROWS = catalogue({
  down: (share: Part) => `narrows what is possible down to about ${share} as a rule`,
  half: "splits what is possible about in half",
  hardly: "hardly narrows down what is possible",
});

/** What it takes to do it. */
export const EFFORT: Readonly<Record<SurveyExposure, string>> = catalogue({
  dead: "the power off while it is done",
  outlet: "the power off and on again, nothing read in the open box",
  "open-box-live": "with readings in the open box, the power on",
});

import { catalogue, type Part } from "../lib/catalogue.ts";

/** Steps that move the end of a conductor. */
export const endWords = catalogue({
  cap: (end: Part) => `Cap ${end}`,
  join: (end: Part, splice: Part) => `Join ${end} to ${splice}`,
  joinOne: "Join a splice",
  land: (end: Part, place: Part) => `Land ${end} on ${place}`,
  landOne: "Land an end",
  leave: (end: Part, splice: Part) => `Take ${end} out of ${splice}`,
  leaveOne: "Leave a splice",
  lift: (end: Part) => `Lift ${end}`,
  notCapped: (end: Part) => `${end} is not capped. Cap it first: a spare end is one left capped on purpose.`,
  notInSplice: (end: Part) => `${end} is in no splice. Pick an end that is, or cap this one.`,
  notSpare: (end: Part) => `Mark ${end} as not spare`,
  spare: (end: Part) => `Mark ${end} as spare`,
});

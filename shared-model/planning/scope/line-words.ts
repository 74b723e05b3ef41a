import { catalogue, type Part } from "../../lib/catalogue.ts";

/** What the lines of a box say. */
export const LINE_WORDS = catalogue({
  changed: (place: Part, fields: Part) => `${place}: ${fields}`,
  cutTo: (jumper: Part, length: Part) => `${jumper}, ${length}`,
  entries: (cables: Part) => `entries of ${cables}`,
  inItsPlace: "in its place",
  inItsPlaceLineOnly: "in its place, LINE only",
  isNow: (old: Part, name: Part) => `${old} is ${name}`,
  joint: (count: Part, connector: Part) => `joint of ${count}, ${connector}`,
  jumper: (name: Part, kind: Part) => `${name}, ${kind}`,
  jumperOf: (name: Part, kind: Part, device: Part) => `${name}, ${kind} of ${device}`,
  jumpers: (names: Part, count: Part, colour: Part) => `${names}, ${count === 1 ? "jumper" : "jumpers"} ${colour}`,
  mark: "mark it",
  new: "new",
  newLineOnly: "new, LINE only",
  out: "out",
  setOtherwise: "set otherwise",
  size: (awg: Part, colour: Part) => `${awg} AWG ${colour}`,
  stay: (count: Part) => (count === 1 ? "stays" : "stay"),
  stayAtBond: "stay on the bond",
  stayCapped: "stay capped",
  stayIn: (joint: Part) => `stay in ${joint}`,
  stayLoose: "stay loose",
  stayOn: (device: Part) => `stay on ${device}`,
});

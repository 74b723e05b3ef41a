import { catalogue, type Part } from "../../lib/catalogue.ts";

/** What a survey says of a box as a whole, and why a cable cannot be something. */
export const ACCOUNT_WORDS = catalogue({
  againstIt: (cable: Part, reading: Part) => `${cable}: ${reading}`,
  anythingElse: "anything else",
  bringsPower: (cable: Part) => `${cable} brings the power`,
  cannot: (cable: Part, cannot: Part, because: Part) => `${cable} ${cannot}: ${because}.`,
  cannotBe: (role: Part) => `cannot be ${role}`,
  cannotFeed: (items: Part) => `cannot feed ${items}`,
  cannotGo: (items: Part) => `cannot go to ${items} for the switch here`,
  does: (cable: Part) => `${cable} does`,
  drawnOtherwise: "What the cables may lead to was taken from the drawing: it may be drawn otherwise than it is.",
  fitsNone: "These readings fit no arrangement known to the tool.",
  highImpedance: "Repeat with a low-impedance meter what was read with one of high impedance.",
  lookFor:
    "Look for: a breaker that is off, a neutral that is broken, a second circuit in the box, a switch that was moved.",
  manyCables: (count: Part, box: Part, most: Part) =>
    `${count} cables enter ${box}; at most ${most} are taken apart. Survey it in parts.`,
  manyGroups: (count: Part, most: Part) =>
    `${count} outlets and lights are listed one by one; at most ${most} are taken apart. List as one group what is known to hang together.`,
  noCables: (box: Part) => `No cable enters ${box}. Draw its cables first, their far ends open.`,
  noReference: "The reference of readings to ground is not proved.",
  noneFits: "with it no arrangement fits all the readings",
  repeat: "Repeat the readings that speak against these, the power off and proved dead in between.",
  role: (cable: Part, role: Part) => `${cable} ${role}`,
});

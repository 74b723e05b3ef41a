import { catalogue, type Part } from "../../lib/catalogue.ts";

/** Before anything is parted: people told, values written down, breakers open, proved dead. */
export const BEFORE_WORDS = catalogue({
  anotherWay: "Live: another circuit or another way in. Stop and find it.",
  breaker: (name: Part, panel: Part) => `breaker ${name} in ${panel}`,
  breakerRated: (name: Part, amps: Part, panel: Part) => `breaker ${name}, ${amps} A, in ${panel}`,
  fuse: (name: Part, panel: Part) => `fuse ${name} in ${panel}`,
  fuseRated: (name: Part, amps: Part, panel: Part) => `fuse ${name}, ${amps} A, in ${panel}`,
  circuits: (count: Part, breakers: Part) =>
    `${count} circuits come to this box: ${breakers}. Each is proved dead by itself.`,
  clamp: (box: Part) => `${box}: clamp meter on every white before it is parted: no current.`,
  currentFound:
    "Current in a dead circuit: the return of another circuit comes through here. Find that breaker and open it.",
  findBreaker: (breaker: Part) =>
    `Breaker not identified: ${breaker} was drawn and not read, neither its number nor its rating. Find the one that feeds this circuit, see it go dead with that one open, and write it down.`,
  everyConductor: "Every insulated conductor to every other, to ground and to the box.",
  measure: (outlet: Part) => `Before the work, measure ${outlet} and write it down.`,
  notForgotten: (names: Part) => `Must not be forgotten: ${names}.`,
  off: (breakers: Part) => `Off: ${breakers}.`,
  offAll: (panels: Part) => `Off, while it is open: everything behind ${panels}.`,
  open: (breaker: Part) => `Open ${breaker}; lock and tag.`,
  openTogether: (breaker: Part, others: Part) => `Open ${breaker} together with ${others}; lock and tag.`,
  otherPosition: (switches: Part) => `Once more with ${switches} in the other position.`,
  panelLive:
    "With its breakers open the buses of a panel are live, and with the main open the lugs ahead of the main are: stay away from them.",
  passes: (cable: Part, ends: Part) =>
    `${cable} passes through without an end, so its metal cannot be reached here: prove it dead in ${ends}, and do not nick it.`,
  sharedNeutral: "Its circuit shares a neutral: all poles are opened before anything is parted.",
  takeOut: (fuse: Part) => `Take out ${fuse}; keep it with you and tag its place.`,
  takeOutTogether: (fuse: Part, others: Part) =>
    `Take out ${fuse} together with ${others}; keep it with you and tag its place.`,
  tell: "Tell the occupants what will be off and for how long.",
  tester: "Tester proved on a live source, then here, then on the live source again.",
  verify: (box: Part, breaker: Part) => `${box}: verify dead with ${breaker} open.`,
  verifyPanel: (panel: Part) => `${panel}: verify dead with its main, or what feeds it, open.`,
  verifyUnknown: (box: Part) => `${box}: verify dead. No breaker of it is drawn: find what feeds it first.`,
  works: (outlet: Part) => `Before the work, see that ${outlet} works and write it down.`,
  writeDown: "Write down what is found: a fault that was there before is not ours.",
});

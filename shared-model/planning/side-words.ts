import { catalogue, type Part } from "../lib/catalogue.ts";

/** Why what hangs on a joint goes to LINE or to LOAD of a ground-fault device. */
export const SIDE_WORDS = catalogue({
  asDecided: "as it was decided",
  behindNow: (guard: Part) => `it is behind ${guard} now`,
  /** What asks for protection, after what it is asked for. */
  by: (outlet: Part, by: Part) => `${outlet} (${by})`,
  decided: "decided",
  feeds: (outlets: Part) => `it feeds ${outlets}`,
  goesOff: (what: Part) => `${what} would go off with the rest on a trip`,
  goesOffOwn: (what: Part) => `${what} would go off with the rest on a trip: give it a ground-fault device of its own`,
  noNeed: "nothing behind it needs protection",
  noWish: "nothing beyond it asks for protection",
  notFromHere: (outlet: Part) => `the hot of ${outlet} does not come from this joint: it is another leg or circuit`,
  notReturning: (outlet: Part) => `the neutral of ${outlet} does not return by this box`,
  priority: (what: Part, outlet: Part) => `the ${what} at ${outlet}`,
  roomUnknown: (outlets: Part) => `whether ${outlets} must be protected cannot be told: no room is entered there`,
  supply: "it is the supply",
  unknownBehind: "nothing is known behind it",
  unknownBeyond: "nothing is known beyond it",
  wish: "a wish",
});

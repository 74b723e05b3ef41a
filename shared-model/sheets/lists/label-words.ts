export const LABELS = "Labels";
export const NO_LABELS = "There is no label to fix.";
export const HOW_LABELS =
  "Cut out along the dashes. Fix each to the receptacle or its plate so that it can be read when the work is done.";
export const SLIPS = "Reset slips";
export const NO_SLIPS = "No outlet is reset anywhere but at itself.";
export const HOW_SLIPS =
  "One for each outlet that is protected from another place. Leave it at the outlet, or with the customer.";
export const COUNT = "count";
export const WORDS = "words";
export const WHERE = "where";

export const ifDead = (outlet: string, place: string): string =>
  `If ${outlet}${place === "" ? "" : ` (${place})`} goes dead`;
export const pressReset = (devices: readonly string[]): string => `Press RESET on ${devices.join(" or ")}.`;
export const MONTHLY =
  "Once a month press TEST there: this outlet must go dead. Press RESET. If it will not reset, or the outlet stays live, call an electrician.";

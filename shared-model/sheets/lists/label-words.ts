import { catalogue, type Part } from "../../lib/catalogue.ts";

export const LABELS = catalogue({
  title: "Labels",
  none: "There is no label to fix.",
  how: "Cut out along the dashes. Fix each to the receptacle or its plate so that it can be read when the work is done.",
  count: "count",
  words: "words",
  where: "where",
  onIn: (device: Part, box: Part) => `${device} in ${box}`,
});

export const SLIPS = catalogue({
  title: "Reset slips",
  none: "No outlet is reset anywhere but at itself.",
  how: "One for each outlet that is protected from another place. Leave it at the outlet, or with the customer.",
  monthly:
    "Once a month press TEST there: this outlet must go dead. Press RESET. If it will not reset, or the outlet stays live, call an electrician.",
  monthlyByHandle:
    "Once a month press TEST there: this outlet must go dead. Set it again as above. If it cannot be set again, or the outlet stays live, call an electrician.",
  outletIn: (outlet: Part, box: Part) => `${outlet} in ${box}`,
  deviceIn: (device: Part, box: Part) => `${device} in ${box}`,
  deviceAt: (device: Part, box: Part, place: Part) => `${device} in ${box} (${place})`,
});

/** Of the lists for writers of tables. */
export const LABEL_TABLES = catalogue({
  counts: "Label counts",
  words: "Words",
  count: "Count",
  labels: "Labels",
  on: "On",
  box: "Box",
  requiredBy: "Required by",
  because: "Because",
  slips: "Reset slips",
  outlet: "Outlet",
  place: "Place",
  resetAt: "Reset at",
});

const wording = catalogue({
  ifDead: (outlet: Part) => `If ${outlet} goes dead`,
  ifDeadAt: (outlet: Part, place: Part) => `If ${outlet} (${place}) goes dead`,
  or: (one: Part, other: Part) => `${one} or ${other}`,
  press: (devices: Part) => `Press RESET on ${devices}.`,
  switchOn: (breakers: Part) => `Switch ${breakers} fully off, then on.`,
  either: (devices: Part, breakers: Part) => `Press RESET on ${devices}, or switch ${breakers} fully off, then on.`,
});

export const ifDead = (outlet: string, place: string): string =>
  place === "" ? wording.ifDead(outlet) : wording.ifDeadAt(outlet, place);

/** "R1 or R2 or R3". */
export const orWords = (devices: readonly string[]): string =>
  devices.length === 0 ? "" : devices.reduce((one, other) => wording.or(one, other));

/** How an outlet is set again: a receptacle has RESET, a breaker its handle. */
export function setAgain(devices: readonly string[], breakers: readonly string[]): string {
  if (breakers.length === 0) return wording.press(orWords(devices));
  if (devices.length === 0) return wording.switchOn(orWords(breakers));
  return wording.either(orWords(devices), orWords(breakers));
}

import type { HoldPoint } from "../../answers/scope.ts";
import type { SurveyCaution, SurveyRoleKind } from "../../answers/survey.ts";
import { CAUTIONS as CAUTION_TEXTS } from "../../catalog/cautions.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { SurveyInstrument, SurveyItem } from "../../model/survey.ts";
import type { Lead } from "./lead.ts";

const wording = catalogue({
  and: (names: Part, last: Part) => `${names} and ${last}`,
  deadNow: (role: Part) => `${role}, dead now`,
  feeds: (items: Part) => `feeds ${items}`,
  leg: (items: Part) => `goes to ${items} for the switch here`,
  nothing: "nothing",
  openNeutral: (role: Part) => `${role} with its neutral broken upstream`,
  reversed: (role: Part) => `${role} with hot on white and neutral on black`,
  travels: "feed by travellers: hot on one wire or the other, as a three-way switch elsewhere stands",
  twoHots: "two hots in a cable of two wires, white as the second",
});

/** "R2", "R2 and R3", "R2, R3 and L1". */
export function listWords(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? wording.nothing;
  return wording.and(names.slice(0, -1).join(", "), names.at(-1) ?? "");
}

export const itemWords = (items: readonly SurveyItem[]): string => listWords(items.map(({ name }) => name));

const KIND_WORDS: Readonly<Record<SurveyRoleKind, string>> = catalogue({
  supply: "supply",
  "multiwire-supply": "supply with two hots",
  "switched-supply": "supply through a switch elsewhere",
  feeds: "feeds something that is not listed",
  leg: "goes to a light for the switch here",
  loop: "loop to a switch elsewhere",
  "loop-fed": "switch end of a loop: white brings the hot, black returns to the light",
  travellers: "travellers to another three-way switch",
  dead: "abandoned",
  "other-neutral": "neutral of another circuit",
});

/** What a cable is, after its name: "supply, hot on white", "feeds R2 and R3". */
export function leadWords({
  kind,
  items,
  reversed,
  openNeutral,
  off,
  travels,
}: Pick<Lead, "kind" | "items" | "reversed" | "openNeutral" | "off" | "travels">): string {
  if (travels) return wording.travels;
  if (kind === "feeds" && items.length > 0) return wording.feeds(itemWords(items));
  if (kind === "leg" && items.length > 0) return wording.leg(itemWords(items));
  const own = KIND_WORDS[kind];
  if (kind === "multiwire-supply" && reversed) return wording.twoHots;
  if (reversed) return wording.reversed(own);
  if (openNeutral) return wording.openNeutral(own);
  return off ? wording.deadNow(own) : own;
}

export const INSTRUMENT_WORDS: Readonly<Record<SurveyInstrument, string>> = catalogue({
  "low-impedance-meter": "by low-impedance meter",
  meter: "by high-impedance meter",
  "plug-in-tester": "by plug-in tester",
  noncontact: "by noncontact indicator",
  continuity: "by ohmmeter",
  "clamp-meter": "by clamp meter",
  "test-lamp": "across a test lamp",
  "by-eye": "seen",
});

const hold = (id: string, words: string): SurveyCaution => ({ id, words });

const point = <Id extends HoldPoint>(id: Id, words: string) => ({ id, words });

const HOLD_WORDS = catalogue({
  clear: "Nobody in contact, everyone told, nothing loose.",
  current: "No current in any white by clamp meter before any neutral is parted.",
  dead: "Breaker off and locked or tagged. Each insulated conductor proved dead to each other, to the grounds and to the box, and where no ground comes to a known earth by a lead; the tester proved on a known live source before and after.",
  deadAgain:
    "Breaker off and locked or tagged, every wire of the box proved dead again before any joint is touched; the supply marked on its jacket once it is known.",
  noShort:
    "Dead tests before the power: each hot of the joint to its white and to ground, by ohmmeter. About 0 is a short, or the loop of a switch that is on: stop and part it.",
});

/** Points at which work stops until each is ticked on its own; numbered as those of the work steps. */
export const HOLDS = {
  dead: point("HP1", HOLD_WORDS.dead),
  current: point("HP2", HOLD_WORDS.current),
  deadAgain: point("HP3", HOLD_WORDS.deadAgain),
  noShort: point("HP5", HOLD_WORDS.noShort),
  clear: point("HP6", HOLD_WORDS.clear),
} as const;

/** Standing words before work on wiring. */
export const CAUTIONS = {
  off: hold("WRK1", CAUTION_TEXTS.WRK1),
  circuits: hold("WRK2", CAUTION_TEXTS.WRK2),
  white: hold("WRK3", CAUTION_TEXTS.WRK3),
  neutral: hold("WRK4", CAUTION_TEXTS.WRK4),
  open: hold("WRK5", CAUTION_TEXTS.WRK5),
  join: hold("WRK6", CAUTION_TEXTS.WRK6),
  proof: hold("WRK7", CAUTION_TEXTS.WRK7),
  condition: hold("WRK8", CAUTION_TEXTS.WRK8),
} as const;

/** Steps by which every change of arrangement goes. */
export const STEPS = catalogue({
  apart:
    "Part all cables, cap every insulated wire singly and spread them. Leave the grounds joined to each other and to the box.",
  unplugged: "Unplug everything behind these cables and set the switches away from the box to on.",
  switchesOn:
    "Set the switches away from the box to on: a feed through one that is off reads dead. Leave them so until the power is off again.",
  powerOn: "Breaker on.",
});

import type { StateName } from "../../model/project.ts";

export const CARD = {
  title: "Make-up card",
  titleLines: ["make-up", "card"],
  job: "job",
  breaker: (panel: string): string => `breaker, panel ${panel}`,
  breakersIn: (panel: string): string => `breakers, panel ${panel}`,
  breakers: "breakers",
  inPanel: (breaker: string, panel: string): string => `${breaker} in ${panel}`,
  noBreaker: "not told",
  lock: "lock and tag",
  edition: "edition",
  state: "state",
  grounds: "Grounds, at the back",
  neutrals: "Neutrals",
  hots: "Hots, in front",
  tug: "tug",
  direct: "direct",
  directNote: "on its terminals",
  capped: "capped",
  cappedNote: "alone under a connector",
  loose: "loose",
  looseNote: "bare, unattached",
  through: "through",
  throughNote: "unbroken",
  bond: "box bond",
  none: "None in this box.",
  upper: "upper",
  lower: "lower",
  nameDate: "name, date",
  noFindings: "No finding at this box.",
  moreFindings: (count: number): string => `${count} more: see the findings list`,
  nothing: "No box is drawn that a card could be made of.",
  nothingOpened: "The work opens no box: nothing is proposed that a card could be made of.",
} as const;

export const pageTitle = (box: string): string => `${CARD.title} ${box}`;

export const linkWords = (splice: string): string => `link to ${splice}`;
export const toWords = (place: string): string => `to ${place}`;

export const jumperNote = (names: readonly string[], awgs: readonly string[]): string => {
  const [first = "", last = ""] = [names[0], names[names.length - 1]];
  const run = names.length > 2 ? `${first} to ${last}` : names.join(", ");
  return `Jumper${names.length === 1 ? "" : "s"} ${run}: 6 to 8 in., ${awgs.join(", ")} AWG.`;
};

export const apartNote = (cables: readonly string[], splices: readonly string[]): string =>
  `No white from ${orList(cables)} may touch ${orList(splices)}.`;

export const foldNote = (isGuarded: boolean): string =>
  `Torque as marked. Fold grounds, whites, blacks${isGuarded ? "; LINE and LOAD bundles apart" : ""}.`;

const listWith = (words: readonly string[], last: "and" | "or"): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;
const orList = (words: readonly string[]): string => listWith(words, "or");
const andList = (words: readonly string[]): string => listWith(words, "and");

export interface HoldPointLine {
  readonly name: string;
  readonly text: string;
}

/**
 * What stops the work until it is done, short enough for the card; the list of steps says it in full.
 * @param guards Ground-fault devices of the box. @param toReset Those and all others of its circuits.
 */
export function holdPoints(
  supply: string | undefined,
  guards: readonly string[],
  toReset: readonly string[],
): readonly HoldPointLine[] {
  const [first] = guards;
  return [
    { name: "HP1", text: "Dead: every conductor to every other, to ground, to box. Tester proved live, dead, live." },
    { name: "HP2", text: "Clamp meter on each white: no current, before parting." },
    {
      name: "HP3",
      text: `${supply === undefined ? "Supply" : `Supply ${supply}`} proved and marked on its jacket; dead again.`,
    },
    {
      name: "HP4",
      text:
        first === undefined
          ? "Every connection read a second time against this card."
          : "LINE and LOAD on the device face read a second time against this card.",
    },
    {
      name: "HP5",
      text:
        first === undefined
          ? "Dead tests, loads unplugged: hot to neutral no short; hot to ground open; neutral to ground open."
          : `Dead tests, ${andList(guards)} tripped: LOAD N to LINE N open; LOAD N to ground open; LINE H to LINE N no short.`,
    },
    {
      name: "HP6",
      text: `Covers on, people clear and told. Breaker on${toReset.length === 0 ? "" : `, RESET ${andList(toReset)}`}.`,
    },
  ];
}

export const fillWords = (total: string, available: string | undefined): string =>
  available === undefined ? `Fill ${total} in³, volume of the box unknown` : `Fill ${total} of ${available} in³`;

export const fillParts = (parts: readonly string[], left: string | undefined, over: boolean): string =>
  `${parts.join(" + ")}${left === undefined ? "" : over ? `, ${left} too much` : `, left ${left}`}`;

export const clampsOut = (tooMuch: string): string => `Take the internal clamps out: with them ${tooMuch} too much`;

export const OVERFULL: Readonly<Record<StateName, string>> = {
  "as-found": "Overfull as found",
  proposed: "Overfull: give it room first",
};

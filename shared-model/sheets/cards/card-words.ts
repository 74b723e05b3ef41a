import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";

export const CARD = catalogue({
  title: "Make-up card",
  titleUpper: "make-up",
  titleLower: "card",
  pageTitle: (box: Part) => `Make-up card ${box}`,
  job: "job",
  breaker: (panel: Part) => `breaker, panel ${panel}`,
  breakersIn: (panel: Part) => `breakers, panel ${panel}`,
  breakers: "breakers",
  breakerNotFound: "not identified: find it",
  ampere: (figure: Part) => `${figure} A`,
  inPanel: (breaker: Part, panel: Part) => `${breaker} in ${panel}`,
  noBreaker: "not told",
  lock: "lock and tag",
  edition: "edition",
  state: "state",
  allConductors: (awg: Part) => `all conductors ${awg} AWG`,
  conductors: (awgs: Part) => `conductors ${awgs} AWG`,
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
  bond: "box ground screw",
  none: "None in this box.",
  nameDate: "name, date",
  linkTo: (splice: Part) => `link to ${splice}`,
  to: (place: Part) => `to ${place}`,
  noFindings: "No finding at this box.",
  moreFindings: (count: Part) => `${count} more: see the findings list`,
  nothing: "No box is drawn that a card could be made of.",
  nothingOpened: "The work opens no box: nothing is proposed that a card could be made of.",
  clampsOut: (tooMuch: Part) => `Take the internal clamps out: with them ${tooMuch} too much`,
});

const wording = catalogue({
  and: (rest: Part, last: Part) => `${rest} and ${last}`,
  apart: (cables: Part, splices: Part) => `No white from ${cables} may touch ${splices}.`,
  fill: (total: Part, available: Part) => `Fill ${total} of ${available} in³`,
  fillUnknown: (total: Part) => `Fill ${total} in³, volume of the box unknown`,
  fold: "Torque as marked. Fold grounds, whites, blacks.",
  foldApart: "Torque as marked. Fold grounds, whites, blacks; LINE and LOAD bundles apart.",
  jumper: (name: Part, awg: Part) => `Jumper ${name}: 6 to 8 in., ${awg} AWG.`,
  jumpers: (names: Part, awgs: Part) => `Jumpers ${names}: 6 to 8 in., ${awgs} AWG.`,
  left: (sum: Part, left: Part) => `${sum}, left ${left}`,
  or: (rest: Part, last: Part) => `${rest} or ${last}`,
  run: (first: Part, last: Part) => `${first} to ${last}`,
  tooMuch: (sum: Part, tooMuch: Part) => `${sum}, ${tooMuch} too much`,
});

/** The title over two lines. */
export const TITLE_LINES = [CARD.titleUpper, CARD.titleLower] as const;

export const jumperNote = (jumpers: readonly string[], awgs: readonly string[]): string => {
  const names = [...jumpers].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
  const [first = "", last = ""] = [names[0], names[names.length - 1]];
  const run = names.length > 2 && followEachOther(names) ? wording.run(first, last) : names.join(", ");
  return (names.length === 1 ? wording.jumper : wording.jumpers)(run, awgs.join(", "));
};

/** Names that count up by their last letter or figure alone, as "a" to "g": only of such is the first and the last enough. */
const followEachOther = (names: readonly string[]): boolean =>
  names.every((name, i) => {
    const before = names[i - 1];
    return (
      before === undefined ||
      (name.slice(0, -1) === before.slice(0, -1) &&
        name.charCodeAt(name.length - 1) === before.charCodeAt(before.length - 1) + 1)
    );
  });

export const apartNote = (cables: readonly string[], splices: readonly string[]): string =>
  wording.apart(listWith(cables, wording.or), listWith(splices, wording.or));

export const foldNote = (isGuarded: boolean): string => (isGuarded ? wording.foldApart : wording.fold);

const listWith = (words: readonly string[], joined: (rest: Part, last: Part) => string): string =>
  words.length < 2 ? words.join("") : joined(words.slice(0, -1).join(", "), words[words.length - 1] ?? "");

export interface HoldPointLine {
  readonly name: string;
  readonly text: string;
}

const HOLDS = catalogue({
  dead: "Dead: every conductor to every other, to ground (none here: a known one), to box. Tester proved live, dead, live.",
  clamp: "Clamp meter on each white: no current, before parting.",
  supply: (cable: Part) => `Supply ${cable} proved and marked on its jacket; dead again.`,
  supplyUntold: "Supply proved and marked on its jacket; dead again.",
  reread: "Every connection read a second time against this card.",
  rereadGuard: "LINE and LOAD on the device face read a second time against this card.",
  deadTests: "Dead tests, loads unplugged: hot to neutral no short; hot to ground open.",
  deadTestsGuards: (guards: Part) =>
    `Dead tests, ${guards} tripped: LOAD N to LINE N open; LOAD N to ground open; LINE H to LINE N no short.`,
  energise: "Covers on, people clear and told. Breaker on.",
  energiseReset: (guards: Part) => `Covers on, people clear and told. Breaker on, RESET ${guards}.`,
});

/**
 * What stops the work until it is done, short enough for the card; the list of steps says it in full.
 * @param guards Ground-fault devices of the box. @param toReset Those and all others of its circuits.
 */
export function holdPoints(
  supply: string | undefined,
  guards: readonly string[],
  toReset: readonly string[],
): readonly HoldPointLine[] {
  const and = (words: readonly string[]): string => listWith(words, wording.and);
  const isGuarded = guards.length > 0;
  return [
    { name: "HP1", text: HOLDS.dead },
    { name: "HP2", text: HOLDS.clamp },
    { name: "HP3", text: supply === undefined ? HOLDS.supplyUntold : HOLDS.supply(supply) },
    { name: "HP4", text: isGuarded ? HOLDS.rereadGuard : HOLDS.reread },
    { name: "HP5", text: isGuarded ? HOLDS.deadTestsGuards(and(guards)) : HOLDS.deadTests },
    { name: "HP6", text: toReset.length === 0 ? HOLDS.energise : HOLDS.energiseReset(and(toReset)) },
  ];
}

export const fillWords = (total: string, available: string | undefined): string =>
  available === undefined ? wording.fillUnknown(total) : wording.fill(total, available);

export function fillParts(parts: readonly string[], left: string | undefined, over: boolean): string {
  const sum = parts.join(" + ");
  return left === undefined ? sum : (over ? wording.tooMuch : wording.left)(sum, left);
}

export const OVERFULL: Readonly<Record<StateName, string>> = catalogue({
  "as-found": "Overfull as found",
  proposed: "Overfull: give it room first",
});

/** What a box is made of, where that is known. */
export const MATERIALS = catalogue({ metal: "metal", nonmetallic: "nonmetallic" });

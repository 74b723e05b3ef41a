/**
 * What the trade calls the same thing. A single word that is typed finds every other of its group; several together are
 * taken for the first, which is what the stock says. Common practice of North American electricians, from memory; generic
 * words only, and no list of them is ever complete.
 */
const ALIKE: readonly (readonly string[])[] = [
  ["1", "one", "single"],
  ["2", "two", "double"],
  ["3", "three"],
  ["4", "four"],
  ["nonmetallic", "plastic", "pvc"],
  ["gfci", "gfi", "ground fault"],
  ["afci", "arc fault"],
  ["a", "amp", "amps", "ampere", "amperes"],
  ["w", "watt", "watts"],
  ["v", "volt", "volts"],
  ["tamper resistant", "tr"],
  ["weather resistant", "wr"],
  ["luminaire", "fixture", "light"],
  ["receptacle", "outlet", "duplex"],
  ["combination", "combo"],
  ["new work", "new construction"],
  ["old work", "remodel"],
  ["weatherproof", "outdoor"],
  ["armoured", "armored"],
  ["aluminium", "aluminum"],
  ["washer", "washing machine"],
  ["panel", "load center", "load centre", "breaker box"],
  ["sensor", "occupancy"],
  ["connector", "wire nut", "wirenut", "wire connector"],
  ["splice", "joint"],
  ["receptacle", "plug", "socket"],
  ["cable", "wire"],
  ["ground screw", "bond", "ground clip"],
  ["box", "back box", "wall box"],
  ["room", "area"],
  ["breaker", "circuit"],
  ["save", "store"],
  ["photo", "picture", "image"],
  ["land", "connect", "terminate"],
  ["remove", "delete"],
  ["energise", "energize", "power"],
  ["keys", "shortcuts"],
  ["scope", "difference", "compare"],
];

/** Two words that say what one does. */
const PHRASES: readonly (readonly [said: string, meant: string])[] = ALIKE.flatMap(([meant = "", ...others]) =>
  others.filter((said) => said.includes(" ")).map((said) => [said, meant] as const),
);

const BY_WORD = new Map<string, readonly string[]>();
for (const group of ALIKE)
  for (const word of group) BY_WORD.set(word, [...new Set([...(BY_WORD.get(word) ?? []), ...group])]);

/** "14-2" is a cable size; hyphens part all other words, not "2-1/8"; "20a" is "20 a". */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(
      /(^|\s)(\d+)-(\d+(?:-\d+)?)(?=$|[\s,])/g,
      (_all, gap, first, rest) => `${gap}${first}/${rest.replace("-", "/")}`,
    )
    .replace(/(\d)(a|amps?|w|watts?|v|volts?)(?=$|[\s,])/g, "$1 $2")
    .replace(/(?<!\d)-|-(?!\d)/g, " ")
    .replace(/[–,×()"“”…:]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();

/** A text in small letters and with its sizes and signs as `wantedWords` has them. Most texts have none of these. */
export function plainWords(text: string): string {
  const small = text.toLowerCase();
  return UNEVEN.test(small) ? plain(small) : small.trim();
}

const UNEVEN = /[-–,×()"“”…:]|\s\s|\d[awv]/;

/** The words that were typed, where several together are one word of the trade. */
export function wantedWords(typed: string): readonly string[] {
  let wanted = plainWords(typed);
  for (const [said, meant] of PHRASES) wanted = ` ${wanted} `.replace(` ${said} `, ` ${meant} `).trim();
  return wanted.split(" ").filter(Boolean);
}

/** The other words of the trade for one. */
export const alternativesOf = (word: string): readonly string[] => BY_WORD.get(word) ?? [];

/** A figure is meant whole, "12" also as the first of "12/2"; a word may have been typed only so far. */
const isIn = (text: string, word: string): boolean =>
  /^\d+$/.test(word) ? text.includes(` ${word} `) || text.includes(` ${word}/`) : text.includes(` ${word}`);

/** Whether a text holds every word that was typed, in any of the trade's words for it. */
export function saysInTradeWords(text: string, typed: string): boolean {
  const within = ` ${plain(text)} `;
  return wantedWords(typed).every((word) => [word, ...alternativesOf(word)].some((one) => isIn(within, one)));
}

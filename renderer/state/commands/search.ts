import { alternativesOf, plainWords, wantedWords } from "../trade-words.ts";
import { isOneSlip } from "./one-slip.ts";

/** What can be looked for by words. */
export interface Searched {
  readonly title: string;
  readonly note: string;
  readonly fullName?: string;
  readonly also?: string;
  readonly whyNot?: string;
  /** It takes away what a person has drawn, of more than what is selected. */
  readonly takesAll?: true;
}

/** Lines made ready to be looked through. Making them ready costs more than one search, so what stays the same is kept. */
export interface Shelf<T extends Searched> {
  readonly lines: readonly T[];
  /** Full name, name, and all words, each between spaces, as trade words write them. */
  readonly titles: readonly string[];
  readonly names: readonly string[];
  readonly texts: readonly string[];
  /** Every word of the shelf; made when a word is looked for that is nowhere. */
  words(): ReadonlySet<string>;
}

export function shelve<T extends Searched>(lines: readonly T[]): Shelf<T> {
  const titles = lines.map(({ title, fullName }) => ` ${plainWords(fullName ?? title)} `);
  const names = lines.map(({ title, fullName }, at) =>
    fullName === undefined ? (titles[at] ?? "") : ` ${plainWords(title)} `,
  );
  const texts = lines.map(({ note, also, fullName }, at) => {
    const named = fullName === undefined ? titles[at] : `${titles[at]}${names[at]}`;
    const beside = plainWords(note);
    return also === undefined ? `${named}${beside} ` : `${named}${beside} ${plainWords(also)} `;
  });
  let words: Set<string> | undefined;
  return {
    lines,
    titles,
    names,
    texts,
    words() {
      words ??= new Set(texts.flatMap((text) => text.split(" ").filter((word) => word.length >= LEAST_FOR_SLIP)));
      return words;
    },
  };
}

/** A shorter word with a slip in it could be any other. */
const LEAST_FOR_SLIP = 4;
/** So many right words are tried in the place of one that is nowhere. */
const MOST_SLIPS = 6;

/** How well a word is said; less is better. */
const EXACT = 0;
const BEGINS = 1;
const ALIKE = 2;
const INSIDE = 4;
const SLIP = 6;
/** The word stands not in the name, only beside it. */
const BESIDE = 2;

/** One of the ways in which a typed word may be said. */
interface Way {
  readonly word: string;
  readonly cost: number;
}

/**
 * Lines that say every word typed, in any order: a whole word, its beginning, another word of the trade for it, a part of
 * a word, or a word that differs in one letter. Best first, then as they stand; no more than `most`.
 */
export function findOn<T extends Searched>(shelves: readonly Shelf<T>[], typed: string, most: number): readonly T[] {
  const wanted = wantedWords(typed);
  if (wanted.length === 0) return shelves.flatMap(({ lines }) => lines).slice(0, most);
  const whole = ` ${plainWords(typed)} `;
  const ways = wanted.map((word) => waysOf(word, shelves));
  // By rank, in the order of the lines: more than are wanted of one rank are never wanted.
  const found = new Map<number, T[]>();
  for (const { lines, titles, names, texts } of shelves) {
    for (let at = 0; at < lines.length; at++) {
      const line = lines[at];
      const title = titles[at];
      const text = texts[at];
      if (line === undefined || title === undefined || text === undefined) continue;
      const said = rankOf(title, text, ways);
      if (said === undefined) continue;
      const rank =
        said +
        ofWhole(title, names[at] ?? title, whole, line.title.endsWith("…")) +
        (line.whyNot === undefined ? 0 : LATER) +
        (line.takesAll === true && title !== whole ? AFTER_HARMLESS : 0);
      const alike = found.get(rank);
      if (alike === undefined) found.set(rank, [line]);
      else if (alike.length < most) alike.push(line);
    }
  }
  if (found.size === 0 && wanted.length > 1) return calledOneOf(shelves, wanted, most);
  return [...found.keys()]
    .sort((a, b) => a - b)
    .flatMap((rank) => found.get(rank) ?? [])
    .slice(0, most);
}

/** A question that no line says as a whole leads at least to the parts it names: "what resets R3" to R3. */
function calledOneOf<T extends Searched>(
  shelves: readonly Shelf<T>[],
  wanted: readonly string[],
  most: number,
): readonly T[] {
  const names = new Set(wanted.filter((word) => /\d/.test(word)).map((word) => ` ${word} `));
  return shelves
    .flatMap(({ lines, names: called }) => lines.filter((_, at) => names.has(called[at] ?? "")))
    .slice(0, most);
}

const LATER = 40;
/** What takes much away never comes first for a part of its name while anything else says the same. */
const AFTER_HARMLESS = 38;

/**
 * What is called just what was typed comes first, then what begins with it. What asks for more stands among these: with
 * something selected, what is done with that comes before it.
 */
function ofWhole(title: string, name: string, whole: string, asks: boolean): number {
  if (!asks && (title === whole || name === whole)) return -60;
  return title.startsWith(whole.slice(0, -1)) ? -30 : 0;
}

/** Undefined where one of the words is not said. */
function rankOf(title: string, text: string, ways: readonly (readonly Way[])[]): number | undefined {
  let rank = 0;
  for (const ofWord of ways) {
    let best = Number.POSITIVE_INFINITY;
    for (const { word, cost } of ofWord) {
      if (cost >= best) break;
      const inText = saidIn(text, word);
      if (inText === undefined) continue;
      const inTitle = saidIn(title, word);
      best = Math.min(best, cost + (inTitle === undefined ? inText + BESIDE : inTitle));
    }
    if (best === Number.POSITIVE_INFINITY) return undefined;
    rank += best;
  }
  return rank;
}

function saidIn(text: string, word: string): number | undefined {
  const begins = text.indexOf(` ${word}`);
  if (begins < 0) return text.includes(word) ? INSIDE : undefined;
  // Any of its places may be the whole word.
  return text.includes(` ${word} `) ? EXACT : BEGINS;
}

function waysOf(word: string, shelves: readonly Shelf<Searched>[]): readonly Way[] {
  const ways: Way[] = [{ word, cost: EXACT }];
  for (const other of alternativesOf(word)) if (other !== word) ways.push({ word: other, cost: ALIKE });
  const isSaid = shelves.some(({ texts }) => texts.some((text) => ways.some((way) => text.includes(way.word))));
  if (isSaid || word.length < LEAST_FOR_SLIP || /\d/.test(word)) return ways;
  const right = new Set<string>();
  for (const shelf of shelves) {
    for (const each of shelf.words()) {
      if (isOneSlip(word, each)) right.add(each);
      if (right.size >= MOST_SLIPS) break;
    }
  }
  for (const each of right) {
    ways.push({ word: each, cost: SLIP });
    for (const other of alternativesOf(each)) if (other !== each) ways.push({ word: other, cost: SLIP + ALIKE });
  }
  return ways;
}

import type { PickAim } from "../pick-store.ts";
import { laterWording } from "./later-words.ts";
import { findOn, type Shelf, shelve } from "./search.ts";

/** One line of the command field. */
export interface CommandLine {
  readonly key: string;
  readonly title: string;
  /** What it is, or what is selected. */
  readonly note: string;
  /** What it is called in full, where the title is only its name: "Splice Z". */
  readonly fullName?: string;
  /** Other words it is looked for by. */
  readonly also?: string;
  readonly shortcut?: string;
  /** Why it cannot be done now, and what would change that. */
  readonly whyNot?: string;
  /** What it would place where. */
  readonly aim?: PickAim;
  /** It takes away what was drawn of a whole account: what is harmless comes before it. */
  readonly takesAll?: true;
  /** Goes on to what the field asks for; where nothing more is to be asked, it has done what was meant. */
  readonly ask?: () => Asked | undefined;
  readonly run: () => void;
}

/** What the field asks for before it can run a line. */
export interface Asked {
  /** What is being done: "Cap a conductor: which end?" */
  readonly title: string;
  readonly lines: (typed: string) => readonly CommandLine[];
}

/** No more than a person can look through. */
export const SHOWN = 40;

/** Lines that say every word typed, those that begin with it first; without a word, the first of each group. */
export const findLines = (lines: readonly CommandLine[], typed: string): readonly CommandLine[] =>
  findOnShelves([shelve(lines)], typed);

export const findOnShelves = (shelves: readonly Shelf<CommandLine>[], typed: string): readonly CommandLine[] =>
  findOn(shelves, typed, SHOWN).map((line) => (line.takesAll === true ? moreSaid(line, typed) : line));

/** By one word of its name, and Enter, nobody loses what is proposed. */
const moreSaid = (line: CommandLine, typed: string): CommandLine =>
  /^\s*\S+\s*$/.test(typed) && line.whyNot === undefined ? { ...line, whyNot: laterWording.sayMore } : line;

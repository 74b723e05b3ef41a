import { commandShelves, typedLines } from "../../state/commands/command-lines.ts";
import type { Asked, CommandLine } from "../../state/commands/entry.ts";
import { findOnShelves } from "../../state/commands/entry.ts";
import { shelve } from "../../state/commands/search.ts";
import { choosePicked, type Pick } from "../../state/pick-store.ts";
import { findPicked } from "../pick/find-picked.ts";
import { withRefusal } from "../pick/pick-refusal.ts";

/** Everything the field finds, as it stands now. @returns Finds what is typed. */
export function offerAll(): (typed: string) => readonly CommandLine[] {
  const shelves = commandShelves();
  return (typed) => findOnShelves(typed.trim() === "" ? shelves : [...shelves, shelve(typedLines(typed))], typed);
}

/** No more than a person can look through. */
const SHOWN = 60;

const asSentence = (words: string): string => (/[.?!…]$/u.test(words) ? words : `${words}.`);

/** A choice that a command waits for, as the field asks for it. */
export const askedOf = (pick: Pick): Asked => ({
  title: pick.hint === undefined ? pick.title : `${asSentence(pick.title)} ${pick.hint}`,
  lines: (typed) =>
    findPicked(pick, typed)
      .slice(0, SHOWN)
      .map(withRefusal)
      .map((line): CommandLine => {
        const { key, title, note = "", severity, refusal } = line;
        return {
          key,
          title,
          note: severity === undefined ? note : [severity, note].filter(Boolean).join(", "),
          ...(refusal !== undefined && { whyNot: refusal }),
          ...(line.aim !== undefined && { aim: line.aim }),
          run: () => choosePicked(line),
        };
      }),
});

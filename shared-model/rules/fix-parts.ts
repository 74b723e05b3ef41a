import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { LONGEST_TITLE, shorten } from "../lib/shorten.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { StateName } from "../model/project.ts";

/** A thing has a name of at most so many characters. */
const LONGEST_NAME = 80;

/** A fix of one command. */
export const fixBy = (title: string, command: string, args: object): Fix => ({ title, call: { command, args } });

/** A fix of several commands, run as one step, each on what the one before made of the document. */
export const fixTogether = (title: string, calls: readonly CommandCall[]): Fix =>
  fixBy(title, "run-together", { title: shorten(title, LONGEST_TITLE), calls });

/** The fix of a report, ready to be spread into it; looked for where it is shown alone. */
export function fixIn(state: StateName, find: () => Fix | undefined): { readonly fix?: Fix } {
  const fix = state === "proposed" ? find() : undefined;
  return fix === undefined ? {} : { fix };
}

/**
 * Ids and names for what a fix makes inside one enclosure. They are read off the enclosure alone, because a box rule may
 * see nothing else, and carry its id and name, so that they clash with nothing elsewhere.
 */
export function makeFresh(enclosure: Enclosure): (letter: string) => { readonly id: string; readonly name: string } {
  const { devices, splices, jumpers, id, name } = enclosure;
  const items = [devices, splices, jumpers].flatMap((table) => Object.values<{ id: string; name: string }>(table));
  const taken = new Set(items.flatMap((item) => [item.id, item.name]));
  if (enclosure.kind === "box") for (const ring of Object.keys(enclosure.rings)) taken.add(ring);
  return (letter) => {
    for (let number = 1; ; number += 1) {
      const fresh = {
        id: `${id.slice(0, 30)}-${letter}${number}`,
        name: `${name.slice(0, LONGEST_NAME - 10)}-${letter}${number}`,
      };
      if (taken.has(fresh.id) || taken.has(fresh.name)) continue;
      taken.add(fresh.id).add(fresh.name);
      return fresh;
    }
  };
}

import type { CommandGroup } from "../../../shared-model/commands/catalog/commands.ts";
import { wording } from "./words.ts";

/** What an enclosure is where it has no note of its own. */
export const KIND_WORDS = { box: wording.box, panel: wording.panel } as const;

/** What a line of the field belongs to, beside its title. */
export const GROUP_WORDS: Readonly<Record<CommandGroup | "window", string>> = {
  draw: wording.draw,
  conductors: wording.conductors,
  facts: wording.facts,
  rooms: wording.rooms,
  proposed: wording.proposed,
  document: wording.document,
  edit: wording.edit,
  file: wording.file,
  help: wording.help,
  window: wording.window,
};

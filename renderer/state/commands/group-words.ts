import type { CommandGroup } from "../../../shared-model/commands/catalog/commands.ts";
import { laterWording } from "./later-words.ts";

/** What an enclosure is where it has no note of its own. */
export const KIND_WORDS = { box: laterWording.box, panel: laterWording.panel } as const;

/** What a line of the field belongs to, beside its title. */
export const GROUP_WORDS: Readonly<Record<CommandGroup, string>> = {
  draw: laterWording.draw,
  conductors: laterWording.conductors,
  facts: laterWording.facts,
  rooms: laterWording.rooms,
  proposed: laterWording.proposed,
  document: laterWording.document,
  edit: laterWording.edit,
  file: laterWording.file,
  help: laterWording.help,
  window: laterWording.window,
};

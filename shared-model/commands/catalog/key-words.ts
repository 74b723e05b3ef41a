import { catalogue } from "../../lib/catalogue.ts";
import { type WindowCommandId, windowCommands } from "./commands.ts";
import type { KeyId, WhyNotChord } from "./keys.ts";

/** What has keys and is no command of the window. */
const titles: Readonly<Record<Exclude<KeyId, WindowCommandId>, string>> = catalogue({
  rename: "Change the name of what is selected",
  "next-region": "To the next region of the window",
  "region-before": "To the region of the window before",
  "remove-selected": "Remove what is selected",
  "zoom-in": "Nearer",
  "zoom-out": "Farther",
  "zoom-full": "Full size",
  "zoom-all": "Everything in view",
  follow: "On along what is connected",
  "follow-back": "Back along what was followed",
  "start-cable": "Run a cable from the box that has the focus",
});

/** Why an entry cannot have a chord, and what to do about it. */
export const whyNotChordWords: Readonly<Record<WhyNotChord, string>> = catalogue({
  altLetter: "Alt with a letter opens menus. Choose others.",
  fixed: "The system answers these keys itself: they stay.",
  ofSystem: "The system keeps these keys. Choose others.",
  ofText: "Text fields need these keys. Choose others.",
  singleKey: "A single key would be taken from text. Hold Control or Command with it, or choose F2 to F9.",
  writes: "These keys move the focus or write text. Choose others.",
});

/** What keys are for, in the words of the list of keys. */
export function titleOfKey(id: KeyId): string {
  const command = windowCommands.find((one) => one.id === id);
  return command === undefined ? titles[id as keyof typeof titles] : command.title.replace("…", "");
}

import { boxWords } from "./boxes-words.ts";
import { circuitWords } from "./circuits-words.ts";
import { conductorWords } from "./conductors-words.ts";
import { groundWords } from "./grounds-words.ts";
import type { AllHelpWords } from "./help-words.ts";
import { protectionWords } from "./protection-words.ts";

/** The words of every rule that has them. */
export const helpWords: AllHelpWords = {
  ...boxWords,
  ...conductorWords,
  ...circuitWords,
  ...protectionWords,
  ...groundWords,
};

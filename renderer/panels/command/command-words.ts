import { wording } from "./words.ts";
/** What the command field says. */
export const COMMAND_WORDS = {
  label: wording.commandPartTagOrFinding,
  placeholder: wording.commandShort,
  list: wording.whatWasFound,
  none: wording.nothingIsCalledThatTryA,
  noneAsked: wording.nothingOfThatIsCalledSo,
  notNow: wording.notNow,
} as const;

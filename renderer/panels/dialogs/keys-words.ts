import { wording } from "./words.ts";
/** What the list of keys says. */
export const KEYS_WORDS = {
  title: wording.keys,
  search: wording.findKeys,
  searchHint: wording.whatItDoesOrKeysSave,
  window: wording.anywhere,
  sheet: wording.whileTheSheetHasTheFocus,
  inOutline: wording.inTheOutlineAlways,
  onSheet: wording.onTheSheetAlways,
  none: wording.noKeys,
  change: wording.change,
  press: wording.pressTheNewKeysEscapeLeaves,
  clear: wording.noKeys2,
  reset: wording.reset,
  resetAll: wording.resetAll,
  take: wording.takeThem,
  leave: wording.leaveThemThere,
  single: wording.singleKeysOfTheSheetLetters,
  nothing: wording.noKeysAreCalledThat,
} as const;

export const belongsTo = (keys: string, title: string): string => wording.belongsTo(keys, title);
export const isNow = (title: string, keys: string | undefined): string => `${title}: ${keys ?? KEYS_WORDS.none}.`;

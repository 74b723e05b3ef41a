import { type LengthUnit, lengthWords } from "../../shared-model/units/length-words.ts";
import { preferencesStore } from "./preferences-store.ts";

/** A stored length in the words that the person of this window has chosen. */
export const lengthHere = (length: number, unit: LengthUnit): string =>
  lengthWords(length, unit, preferencesStore.get().lengths);

import { catalogue, type Part } from "../../lib/catalogue.ts";

/** What stands inside drawings. */
export const DRAW_WORDS = catalogue({
  groundScrew: "ground screw",
  green: "green",
  line: "LINE",
  load: "LOAD",
  test: "TEST",
  reset: "RESET",
  on: "ON",
  off: "OFF",
});

const wording = catalogue({
  behind: (device: Part) => `behind ${device}`,
  behindWith: (device: Part, outlets: Part) => `behind ${device}: ${outlets}`,
  figures: (needed: Part, available: Part) => `${needed} of ${available}`,
  figuresOfUnknown: (needed: Part) => `${needed} of unknown`,
  oneSplice: "1 splice",
  splices: (count: Part) => `${count} splices`,
  volume: (needed: Part, available: Part) => `${needed} of ${available} in³`,
  volumeOfUnknown: (needed: Part) => `${needed} in³ of unknown`,
});

export const behindWords = (device: string, outlets: readonly string[]): string =>
  outlets.length === 0 ? wording.behind(device) : wording.behindWith(device, outlets.join(", "));

export const ofVolume = (needed: string, available: string | undefined): string =>
  available === undefined ? wording.volumeOfUnknown(needed) : wording.volume(needed, available);

/** The same where there is no room for the unit. */
export const ofFigures = (needed: string, available: string | undefined): string =>
  available === undefined ? wording.figuresOfUnknown(needed) : wording.figures(needed, available);

export const spliceCount = (count: number): string => (count === 1 ? wording.oneSplice : wording.splices(count));

/** What stands inside drawings. */
export const DRAW_WORDS = {
  boxBond: "box bond",
  green: "green",
  line: "LINE",
  load: "LOAD",
  test: "TEST",
  reset: "RESET",
  on: "ON",
  off: "OFF",
} as const;

export const behindWords = (device: string, outlets: readonly string[]): string =>
  outlets.length === 0 ? `behind ${device}` : `behind ${device}: ${outlets.join(", ")}`;

export const ofVolume = (needed: string, available: string | undefined): string =>
  available === undefined ? `${needed} in³ of unknown` : `${needed} of ${available} in³`;

export const spliceCount = (count: number): string => `${count} splice${count === 1 ? "" : "s"}`;

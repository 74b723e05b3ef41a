import type { LengthSystem } from "../units/length-words.ts";
import { SIZE_WORDS, STANDARD_SIZES } from "./stock-words.ts";

/** A standard metal box and the least volume that its size is credited with. */
export interface StandardBox {
  readonly size: string;
  /** Decimal cubic inches, exact to a tenth; per gang where the size says so. */
  readonly volumeIn3: number;
  readonly source: "table-and-published" | "table-from-memory";
}

/**
 * Least volumes of standard metal boxes, NFPA 70 Table 314.16(A), all editions. "table-from-memory" rows were written
 * from memory and agree with the published conductor counts; the others were also seen in a published example.
 */
export const standardBoxes: readonly StandardBox[] = [
  { size: "4x1-1/4 round/octagonal", volumeIn3: 12.5, source: "table-from-memory" },
  { size: "4x1-1/2 round/octagonal", volumeIn3: 15.5, source: "table-and-published" },
  { size: "4x2-1/8 round/octagonal", volumeIn3: 21.5, source: "table-and-published" },
  { size: "4x1-1/4 square", volumeIn3: 18.0, source: "table-and-published" },
  { size: "4x1-1/2 square", volumeIn3: 21.0, source: "table-and-published" },
  { size: "4x2-1/8 square", volumeIn3: 30.3, source: "table-and-published" },
  { size: "4-11/16x1-1/4 square", volumeIn3: 25.5, source: "table-from-memory" },
  { size: "4-11/16x1-1/2 square", volumeIn3: 29.5, source: "table-from-memory" },
  { size: "4-11/16x2-1/8 square", volumeIn3: 42.0, source: "table-and-published" },
  { size: "3x2x1-1/2 device", volumeIn3: 7.5, source: "table-from-memory" },
  { size: "3x2x2 device", volumeIn3: 10.0, source: "table-from-memory" },
  { size: "3x2x2-1/4 device", volumeIn3: 10.5, source: "table-from-memory" },
  { size: "3x2x2-1/2 device", volumeIn3: 12.5, source: "table-from-memory" },
  { size: "3x2x2-3/4 device", volumeIn3: 14.0, source: "table-from-memory" },
  { size: "3x2x3-1/2 device", volumeIn3: 18.0, source: "table-and-published" },
  { size: "4x2-1/8x1-1/2 device", volumeIn3: 10.3, source: "table-from-memory" },
  { size: "4x2-1/8x1-7/8 device", volumeIn3: 13.0, source: "table-from-memory" },
  { size: "4x2-1/8x2-1/8 device", volumeIn3: 14.5, source: "table-from-memory" },
  { size: "3-3/4x2x2-1/2 masonry, per gang", volumeIn3: 14.0, source: "table-from-memory" },
  { size: "3-3/4x2x3-1/2 masonry, per gang", volumeIn3: 21.0, source: "table-from-memory" },
  { size: "FS single cover, 1-3/4 min depth, per gang", volumeIn3: 13.5, source: "table-from-memory" },
  { size: "FD single cover, 2-3/8 min depth, per gang", volumeIn3: 18.0, source: "table-from-memory" },
  { size: "FS multiple cover, 1-3/4 min depth, per gang", volumeIn3: 18.0, source: "table-from-memory" },
  { size: "FD multiple cover, 2-3/8 min depth, per gang", volumeIn3: 24.0, source: "table-from-memory" },
];

const BY_SIZE = new Map(standardBoxes.map((box) => [box.size, box]));

const WORDS = new Map<string, string>(Object.entries(STANDARD_SIZES));

export const findStandardBox = (size: string): StandardBox | undefined => BY_SIZE.get(size);

/**
 * A size as a person reads it; what is of no table is told as it is stored, with a sign of times. It is the name of a trade size, in inches: in
 * metres the same converted stands after it.
 */
export function sizeWords(size: string, lengths: LengthSystem = "feet-inches"): string {
  const words = WORDS.get(size) ?? size.replace(/(?<=\d)x(?=\d)/g, " × ");
  const inches = lengths === "metres" ? inchesOf(size) : [];
  return inches.length === 0 ? words : SIZE_WORDS.metric(words, inches.map(inMillimetres).join(" × "));
}

/** "4x2-1/8 square" is of 4 and 2-1/8; of a box of cast metal the least depth is known alone. */
const inchesOf = (size: string): readonly number[] =>
  (/^[\dx/-]+(?= )/.exec(size)?.[0] ?? /[\d/-]+(?= min depth)/.exec(size)?.[0])?.split("x").map(inchesIn) ?? [];

function inchesIn(text: string): number {
  const [, whole = "0", above = "0", below = "1"] = /^(\d+)(?:-(\d+)[/](\d+))?$/.exec(text) ?? [];
  return Number(whole) + Number(above) / Number(below);
}

const MM = 25.4;

const inMillimetres = (inches: number): string => String(Math.round(inches * MM));

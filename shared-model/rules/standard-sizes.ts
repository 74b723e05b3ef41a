import { standardBoxes } from "../catalog/standard-boxes.ts";
import type { Box } from "../model/enclosure.ts";
import { type CubicInches, cubicInches, exceedsVolume, toDecimal } from "../units/volume.ts";
import type { EditionValues } from "./editions/edition-data.ts";
import { listed } from "./rule-parts.ts";

const FAMILY: Readonly<Record<Box["shape"], string>> = {
  device: "device",
  square: "square",
  octagon: "round/octagonal",
  round: "round/octagonal",
  masonry: "masonry",
  cast: "cover",
};

/** Which standard boxes of its shape would hold so much: the question that a look at the box answers. */
export function sizesWords(
  { shape }: Box,
  needed: CubicInches,
  { tableBoxes }: Pick<EditionValues, "tableBoxes">,
): string {
  const boxes =
    tableBoxes === undefined
      ? standardBoxes
      : Object.entries(tableBoxes.value).map(([size, { in3 }]) => ({ size, volumeIn3: toDecimal(in3) }));
  const family = boxes.filter(({ size }) => size.includes(FAMILY[shape]));
  const volumes = [...new Set(family.map(({ volumeIn3 }) => volumeIn3))].sort((a, b) => a - b);
  const hold = volumes.filter((volume) => !exceedsVolume(needed, cubicInches(volume)));
  const small = volumes.filter((volume) => exceedsVolume(needed, cubicInches(volume)));
  if (volumes.length === 0) return "No standard box of its shape is in that table.";
  if (hold.length === 0) return "No standard box of its shape holds that much.";
  const fits = `Of the standard boxes of its shape ${listed(hold.map(String))} in³ would hold it`;
  return small.length === 0 ? `${fits}.` : `${fits}, ${listed(small.map(String))} would not.`;
}

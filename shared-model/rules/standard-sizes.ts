import { standardBoxes } from "../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Box } from "../model/enclosure.ts";
import { type CubicInches, cubicInches, exceedsVolume, toDecimal } from "../units/volume.ts";
import type { EditionValues } from "./editions/edition-data.ts";
import { listed } from "./rule-parts.ts";

const wording = catalogue({
  noneInTable: "No standard box of its shape is in that table.",
  noneHolds: "No standard box of its shape holds that much.",
  allHold: (volumes: Part) => `Of the standard boxes of its shape ${volumes} in³ would hold it.`,
  someHold: (volumes: Part, small: Part) =>
    `Of the standard boxes of its shape ${volumes} in³ would hold it, ${small} would not.`,
});

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
  if (volumes.length === 0) return wording.noneInTable;
  if (hold.length === 0) return wording.noneHolds;
  const fits = listed(hold.map(String));
  return small.length === 0 ? wording.allHold(fits) : wording.someHold(fits, listed(small.map(String)));
}

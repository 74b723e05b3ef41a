import { sizeWords } from "../../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Box } from "../../model/enclosure.ts";
import { creditedVolume } from "../../queries/box-volume.ts";
import type { CubicInches } from "../../units/volume.ts";
import type { EditionData } from "../editions/edition-data.ts";

const wording = catalogue({
  notInTable: (section: Part, size: Part) =>
    `${section} of this rule set has no box ${size}: record the volume that is marked in it.`,
});

/** Volume that a box is credited with by an edition: where that has a table of its own, only its sizes are known. */
export function roomIn(box: Box, { values }: EditionData): CubicInches | undefined {
  const { tableBoxes } = values;
  return tableBoxes === undefined ? creditedVolume(box) : creditedVolume(box, (size) => tableBoxes.value[size]?.in3);
}

/** Why a box whose standard size is recorded has no volume by an edition with a table of its own, as a sentence. */
export function whyNotInTable({ volume }: Box, { values: { tableBoxes } }: EditionData): string | undefined {
  if (volume.kind !== "table" || tableBoxes === undefined || volume.size in tableBoxes.value) return undefined;
  return wording.notInTable(tableBoxes.section, sizeWords(volume.size));
}

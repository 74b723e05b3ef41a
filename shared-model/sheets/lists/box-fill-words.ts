import type { FillItem, FillVerdict } from "../../answers/fill.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import type { Box, Ring, VolumeFact } from "../../model/enclosure.ts";
import { volumeOf } from "../../queries/box-volume.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type CubicInches, formatVolume } from "../../units/volume.ts";
import { EVIDENCE_LETTERS } from "./signs.ts";

export const BOX_FILL = "Box fill";
export const NO_BOXES = "No box is drawn, so there is nothing to count.";
export const COUNTING =
  "A conductor that ends or is spliced in the box counts once. Jumpers and pigtails count nothing: no part of them leaves the box. Clamps count while they are there, used or not. Volumes are exact to 1/10 000 in³; a box that is exactly full fits.";

export const ITEM_WORDS: Readonly<Record<FillItem, string>> = {
  conductors: "insulated conductors",
  clamps: "internal clamps",
  supports: "supports",
  devices: "devices, two for each yoke",
  grounds: "grounds",
  "terminal-blocks": "terminal blocks",
  connectors: "insulated connectors",
  "deep-devices": "devices that reach far in",
};

export const QUARTER = "a quarter each past the fourth";
export const USED = "used";
export const VOLUME = "volume of the box";
export const LEFT = "left";
export const OVER = "OVER BY";
export const NOT_KNOWN = "not known";

export const VERDICT_WORDS: Readonly<Record<FillVerdict, string>> = {
  fits: "fits",
  overfull: "overfull",
  "volume-unknown": "volume not known",
  "not-applicable": "not counted by this rule",
};

export const ALIKE = "the same as found and proposed";

const RING_WORDS: Readonly<Record<Ring["kind"], string>> = {
  "plaster-ring": "ring",
  "raised-cover": "raised cover",
  extension: "extension",
};

const MATERIALS: Readonly<Record<Box["material"], string>> = {
  metal: "metal",
  nonmetallic: "nonmetallic",
  unknown: "material not known",
};

/**
 * What the volume of a box is made of: "4 x 2-1/8 in. square, metal. 30.3 in³ by the table of standard boxes; ring adds 0."
 * @param available What the edition credits it with.
 */
export function volumeWords(box: Box, available: CubicInches | undefined): string {
  const item = findEnclosureItem(box.item)?.title ?? box.item;
  const mark = box.evidence?.volume;
  const letter = mark === undefined ? "" : ` (${EVIDENCE_LETTERS[mark]})`;
  const rings = inOrder(box.rings).map((ring) => {
    const volume = volumeOf(ring.volume);
    const name = RING_WORDS[ring.kind];
    return volume === undefined ? `${name} without a marked volume adds 0` : `${name} adds ${formatVolume(volume)} in³`;
  });
  const credited = available === undefined ? [] : [`credited with ${formatVolume(available)} in³`];
  return `${item}, ${MATERIALS[box.material]}. ${[`${factWords(box.volume)}${letter}`, ...rings, ...credited].join("; ")}.`;
}

function factWords(fact: VolumeFact): string {
  if (fact.kind === "unknown") return "Volume not known";
  return fact.kind === "marked"
    ? `Marked ${formatVolume(fact.volumeIn3)} in³`
    : `Size ${fact.size}, by the table of standard boxes`;
}

import type { FillItem, FillVerdict } from "../../answers/fill.ts";
import { findEnclosureItem } from "../../catalog/enclosure-items.ts";
import { sizeWords } from "../../catalog/standard-boxes.ts";
import { titleSaysMaterial } from "../../geometry/near/words.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Box, Ring, VolumeFact } from "../../model/enclosure.ts";
import { volumeOf } from "../../queries/box-volume.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type CubicInches, formatVolume } from "../../units/volume.ts";
import { EVIDENCE_LETTERS } from "./signs.ts";

export const BOX_FILL = catalogue({
  title: "Box fill",
  noBoxes: "No box is drawn, so there is nothing to count.",
  counting:
    "A conductor that ends or is spliced in the box counts once. Jumpers and pigtails count nothing: no part of them leaves the box. Clamps count while they are there, used or not. Volumes are exact to 1/10 000 in³; a box that is exactly full fits.",
  quarter: "a quarter each past the fourth",
  used: "used",
  volume: "volume of the box",
  left: "left",
  over: "OVER BY",
  notKnown: "not known",
  alike: "the same as found and proposed",
  item: "item",
  awg: "AWG",
  count: "count",
  countIn: (state: Part) => `${state}: count`,
  each: "each, in³",
  in3: "in³",
  section: "section",
  ml: (millilitres: Part) => `${millilitres} mL`,
});

export const ITEM_WORDS: Readonly<Record<FillItem, string>> = catalogue({
  conductors: "insulated conductors",
  clamps: "internal clamps",
  supports: "supports",
  devices: "devices, two for each yoke",
  grounds: "grounds",
  "terminal-blocks": "terminal blocks",
  connectors: "insulated connectors",
  "deep-devices": "devices that reach far in",
});

export const VERDICT_WORDS: Readonly<Record<FillVerdict, string>> = catalogue({
  fits: "fits",
  overfull: "overfull",
  "volume-unknown": "volume not known",
  "not-applicable": "not counted by this rule",
});

/** Of the lists for writers of tables. */
export const FILL_TABLES = catalogue({
  sums: "Box fill sums",
  lines: "Box fill lines",
  box: "Box",
  place: "Place",
  state: "State",
  used: "Used, in³",
  volume: "Volume, in³",
  left: "Left, in³",
  result: "Result",
  remark: "Remark",
  item: "Item",
  awg: "AWG",
  count: "Count",
  each: "Each, in³",
  section: "Section",
});

const RING_WORDS: Readonly<Record<Ring["kind"], string>> = catalogue({
  "plaster-ring": "ring",
  "raised-cover": "raised cover",
  extension: "extension",
});

const MATERIALS: Readonly<Record<Box["material"], string>> = catalogue({
  metal: "metal",
  nonmetallic: "nonmetallic",
  unknown: "material not known",
});

const wording = catalogue({
  credited: (in3: Part) => `credited with ${in3} in³`,
  made: (item: Part, volume: Part) => `${item}. ${volume}.`,
  of: (item: Part, material: Part) => `${item}, ${material}`,
  marked: (in3: Part) => `Marked ${in3} in³`,
  ringAdds: (ring: Part, in3: Part) => `${ring} adds ${in3} in³`,
  ringUnmarked: (ring: Part) => `${ring} without a marked volume adds 0`,
  size: (size: Part) => `Size ${size}, by the table of standard boxes`,
  unknown: "Volume not known",
});

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
    return volume === undefined ? wording.ringUnmarked(name) : wording.ringAdds(name, formatVolume(volume));
  });
  const credited = available === undefined ? [] : [wording.credited(formatVolume(available))];
  const volume = [`${factWords(box.volume)}${letter}`, ...rings, ...credited].join("; ");
  return wording.made(titleSaysMaterial(box) ? item : wording.of(item, MATERIALS[box.material]), volume);
}

function factWords(fact: VolumeFact): string {
  if (fact.kind === "unknown") return wording.unknown;
  return fact.kind === "marked" ? wording.marked(formatVolume(fact.volumeIn3)) : wording.size(sizeWords(fact.size));
}

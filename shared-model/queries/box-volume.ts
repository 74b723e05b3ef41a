import { findStandardBox } from "../catalog/standard-boxes.ts";
import type { Box, VolumeFact } from "../model/enclosure.ts";
import { addVolumes, type CubicInches, cubicInches } from "../units/volume.ts";
import { inOrder } from "./in-order.ts";

/** Volume of a standard size; undefined when there is none of that name. */
type SizeVolume = (size: string) => CubicInches | undefined;

const stockVolume: SizeVolume = (size) => {
  const standard = findStandardBox(size);
  return standard === undefined ? undefined : cubicInches(standard.volumeIn3);
};

/**
 * Volume of one part: as marked, or the least volume of its standard size; undefined when it is not known.
 * @param ofSize What a standard size is credited with, where it is not as NFPA 70 has it.
 */
export function volumeOf(fact: VolumeFact, ofSize: SizeVolume = stockVolume): CubicInches | undefined {
  if (fact.kind === "marked") return fact.volumeIn3;
  return fact.kind === "unknown" ? undefined : ofSize(fact.size);
}

const PER_GANG = /per gang$/;

/**
 * Volume that a box is credited with: its own, plus rings and extensions that are marked or standard; an unmarked ring
 * adds nothing. Sizes listed per gang are multiplied by the gangs. Undefined when the box itself is not known.
 */
export function creditedVolume(box: Box, ofSize?: SizeVolume): CubicInches | undefined {
  const own = volumeOf(box.volume, ofSize);
  if (own === undefined) return undefined;
  const gangs = box.volume.kind === "table" && PER_GANG.test(box.volume.size) ? box.gangs : 1;
  const rings = inOrder(box.rings).map((ring) => volumeOf(ring.volume, ofSize) ?? (0 as CubicInches));
  return addVolumes((own * gangs) as CubicInches, ...rings);
}

import type { Device } from "../model/device.ts";
import type { EvidenceMark } from "../model/evidence.ts";

const isGuess = (mark: EvidenceMark | undefined): boolean => mark === "assumed" || mark === "unknown";

/**
 * Whether somebody has found which breaker of its panel a drawn one is: by its number, or where it has none, at all. One that
 * was drawn so that a circuit has a supply was not, and nobody may be sent to it by its name.
 */
export const isBreakerFound = ({ slot, evidence }: Device): boolean =>
  slot === undefined ? !isGuess(evidence?.type) : !isGuess(evidence?.slot);

/** Its rating where that was read or told; undefined for one that was only assumed. */
export const ratingRead = ({ breakerRatingA, evidence }: Device): Device["breakerRatingA"] =>
  isGuess(evidence?.breakerRatingA) ? undefined : breakerRatingA;

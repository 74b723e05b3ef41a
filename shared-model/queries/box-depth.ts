import type { Box } from "../model/enclosure.ts";
import { type Inches, inches } from "../units/quantity.ts";

/** Inside depth with what stands on the box, as far as it is recorded. */
export interface BoxDepth {
  readonly atLeastIn: Inches;
  /** Some ring, cover or extension on it adds a depth that is not recorded. */
  readonly more: boolean;
}

/** Last dimension of a standard size: "4x1-1/2 square", "FD single cover, 2-3/8 min depth, per gang". */
const DEPTH = /(?:x|, )(?:(\d+)-)?(\d+)(?:\/(\d+))?(?: min depth)?[ ,](?!.*x)/;

/**
 * Depth of a box from its back to the front of its rings; a ring of standard size brings that of its size. Undefined when
 * that of the box itself is not recorded.
 */
export function boxDepth({ depthIn, volume, rings }: Box): BoxDepth | undefined {
  const own = depthIn ?? (volume.kind === "table" ? depthOfSize(volume.size) : undefined);
  if (own === undefined) return undefined;
  let depth: number = own;
  let more = false;
  for (const ring of Object.values(rings)) {
    const added = ring.depthIn ?? (ring.volume.kind === "table" ? depthOfSize(ring.volume.size) : undefined);
    if (added === undefined) more = true;
    else depth += added;
  }
  return { atLeastIn: inches(depth), more };
}

/** Depth that a standard size names; undefined for a text without one. */
export function depthOfSize(size: string): Inches | undefined {
  const [, whole = "0", above, below] = size.match(DEPTH) ?? [];
  if (above === undefined) return undefined;
  return inches(below === undefined ? Number(above) : Number(whole) + Number(above) / Number(below));
}

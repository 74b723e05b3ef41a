import type { CableId, EnclosureId } from "../../../shared-model/model/ids.ts";

/** Where people who walk the sheet by keys can be: at a box, at a cable between boxes, or at a thing in a box. */
export type Place =
  | { readonly kind: "box"; readonly box: EnclosureId }
  /** `box` is the one that the cable was come to from. */
  | { readonly kind: "cable"; readonly cable: CableId; readonly box: EnclosureId }
  /** `key` as the things of a box have it: "end c1.bk.a". */
  | { readonly kind: "item"; readonly box: EnclosureId; readonly key: string };

export const samePlace = (a: Place, b: Place): boolean =>
  a.kind === b.kind &&
  a.box === b.box &&
  (a.kind !== "cable" || a.cable === (b as typeof a).cable) &&
  (a.kind !== "item" || a.key === (b as typeof a).key);

import type { ItemRef, PropertyTarget } from "../../shared-model/commands/command-args.ts";
import type { EnclosureId, EndKey } from "../../shared-model/model/ids.ts";

/** Something a person can select: an item, an entry of a box, or a conductor end in a box. */
export type Selected = ItemRef | Extract<PropertyTarget, { readonly kind: "entry" | "end" }>;

/** A conductor end that was picked up and follows the pointer, or waits for a place chosen from a list. */
export interface HeldEnd {
  readonly enclosure: EnclosureId;
  readonly end: EndKey;
}

/** What the next press on the sheet places. `id` names an item of the catalogue. */
export type Tool = { readonly kind: "enclosure" | "cable" | "device" | "load"; readonly id: string };

/** One text per selectable thing, for keys and comparisons. */
export const keyOf = (item: Selected): string => `${item.kind} ${item.id}`;

export const isItem = (item: Selected): item is ItemRef => item.kind !== "entry" && item.kind !== "end";

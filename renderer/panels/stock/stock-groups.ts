import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import type { DeviceType } from "../../../shared-model/catalog/device-type.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Tool } from "../../state/selection.ts";

export interface StockItem {
  readonly tool: Tool;
  readonly title: string;
  readonly figure: string;
  readonly glyph: string;
}

export interface StockGroup {
  readonly title: string;
  /** What a press on the sheet does with an item of the group. */
  readonly hint: string;
  readonly items: readonly StockItem[];
}

/** Families that only a panel takes, so that the list of a box stays short. */
const devicesIn = (where: DeviceType["where"]): readonly StockItem[] =>
  deviceTypes
    .filter((type) => type.where === where)
    .map((type) => ({
      tool: { kind: "device", id: type.id },
      title: type.title,
      figure: figureOf(type),
      glyph: type.glyph,
    }));

function figureOf({ defaults }: DeviceType): string {
  if (defaults.breakerRatingA !== undefined) return `${defaults.breakerRatingA} A`;
  if (defaults.loadW !== undefined) return `${defaults.loadW} W`;
  return defaults.ratingA === undefined ? "" : `${defaults.ratingA} A`;
}

/** The stock as the window lists it. */
export const stockGroups: readonly StockGroup[] = [
  {
    title: "Enclosures",
    hint: "Press the sheet where it goes.",
    items: enclosureItems.map(({ id, title, figure, glyph, make }) => ({
      tool: { kind: "enclosure", id },
      title,
      figure: make.kind === "box" ? `${figure} in³` : figure,
      glyph,
    })),
  },
  {
    title: "Cables",
    hint: "Press one box, then the other.",
    items: cableItems.map(({ id, title, sizeText }) => ({
      tool: { kind: "cable", id },
      title,
      figure: sizeText,
      glyph: "cable",
    })),
  },
  { title: "Devices", hint: "Press the box it goes into.", items: devicesIn("box") },
  { title: "Panel parts", hint: "Press the panel it goes into.", items: devicesIn("panel") },
  {
    title: "Loads",
    hint: "Press the outlet it is plugged into.",
    items: loadItems.map(({ id, title, figure, glyph }) => ({ tool: { kind: "load", id }, title, figure, glyph })),
  },
];

/** Items whose title holds every word that was typed. */
export function findInStock(items: readonly StockItem[], words: string): readonly StockItem[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return items.filter(({ title, figure }) => {
    const text = `${title} ${figure}`.toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}

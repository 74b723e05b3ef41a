import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import type { DeviceType } from "../../../shared-model/catalog/device-type.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { type EnclosureItem, enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Tool } from "../../state/selection.ts";
import { saysInTradeWords } from "../../state/trade-words.ts";
import { wording } from "./words.ts";

export interface StockItem {
  readonly tool: Tool;
  readonly title: string;
  readonly figure: string;
  readonly glyph: string;
  /** Further words that it is found by. */
  readonly also?: string;
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
      also: `${type.caption} ${type.family}`,
    }));

function figureOf({ defaults }: DeviceType): string {
  if (defaults.breakerRatingA !== undefined) return `${defaults.breakerRatingA} A`;
  if (defaults.loadW !== undefined) return `${defaults.loadW} W`;
  return defaults.ratingA === undefined ? "" : `${defaults.ratingA} A`;
}

/** Boxes that a device is screwed to are called by their gangs; the narrow one with its own ears, handy or utility box. */
function wordsOfBox(id: string, make: EnclosureItem["make"]): string {
  if (make.kind === "panel") return "panel";
  const { shape, gangs, material } = make.facts;
  const ganged = shape === "device" || shape === "masonry" || shape === "cast";
  return `box ${material} ${ganged ? wording.gang(gangs) : ""} ${id.startsWith("device-4-2-1-8") ? wording.handyUtility : ""}`;
}

/** The stock as the window lists it. */
export const stockGroups: readonly StockGroup[] = [
  {
    title: wording.enclosures,
    hint: wording.pressTheSheetWhereItGoes,
    items: enclosureItems.map(({ id, title, figure, glyph, make }) => ({
      tool: { kind: "enclosure", id },
      title,
      figure: make.kind === "box" ? wording.in3(figure) : figure,
      glyph,
      also: wordsOfBox(id, make),
    })),
  },
  {
    title: wording.cables,
    hint: wording.pressOneBoxThenTheOther,
    items: cableItems.map(({ id, title, sizeText }) => ({
      tool: { kind: "cable", id },
      title,
      figure: sizeText,
      glyph: "cable",
      also: wording.cableWire,
    })),
  },
  { title: wording.devices, hint: wording.pressTheBoxItGoesInto, items: devicesIn("box") },
  { title: wording.panelParts, hint: wording.pressThePanelItGoesInto, items: devicesIn("panel") },
  {
    title: wording.loads,
    hint: wording.pressTheOutletItIsPlugged,
    items: loadItems.map(({ id, title, figure, glyph }) => ({ tool: { kind: "load", id }, title, figure, glyph })),
  },
];

/** Items that say every word that was typed, in the trade's own words for it. */
export function findInStock(items: readonly StockItem[], words: string): readonly StockItem[] {
  return items.filter(({ title, figure, also = "" }) => saysInTradeWords(`${title} ${figure} ${also}`, words));
}

/** What no stock holds, because it is made in a box: the words it goes by, and where it is made. */
const MADE_IN_BOX: readonly (readonly [words: RegExp, where: string])[] = [
  [/pig\s?-?tail|jumper|bond(ing)? wire/i, wording.aPigtailOrJumperIsNot],
  [/wire\s?-?nut|connector|twist|lever|push-?in|crimp|splice|joint/i, wording.connectorsAreNotInStockThey],
  [/ring|extension|cover|plate/i, wording.ringsRaisedCoversAndExtensionsAre],
  [/tape|label|sticker/i, wording.labelsAreNotInStockThey],
];

/** Where to make what was looked for, or what else to try. */
export const notInStock = (words: string): string =>
  MADE_IN_BOX.find(([said]) => said.test(words))?.[1] ?? wording.nothingInStockIsCalledThat;

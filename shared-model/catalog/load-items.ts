import type { LoadPriority } from "../model/device.ts";
import { LOAD_TITLES } from "./stock-words.ts";

/** Something to plug in, with typical figures. */
export interface LoadItem {
  readonly id: string;
  readonly title: string;
  readonly figure: string;
  readonly glyph: string;
  readonly loadW: number;
  readonly loadOhm?: number;
  readonly leakMa?: number;
  readonly priority?: LoadPriority;
  readonly continuous?: boolean;
  readonly source: string;
}

const MODELLING_SOURCE = "modelling value: resistance from the rated watts at 120 V where not given";

export const loadItems: readonly LoadItem[] = [
  {
    id: "lamp-60",
    title: LOAD_TITLES["lamp-60"],
    figure: "60 W",
    glyph: "luminaire",
    loadW: 60,
    loadOhm: 240,
    leakMa: 0.1,
    source: MODELLING_SOURCE,
  },
  {
    id: "heater-1200",
    title: LOAD_TITLES["heater-1200"],
    figure: "1200 W",
    glyph: "heater",
    loadW: 1200,
    loadOhm: 12,
    continuous: true,
    source: MODELLING_SOURCE,
  },
  {
    id: "freezer-180",
    title: LOAD_TITLES["freezer-180"],
    figure: "180 W",
    glyph: "freezer",
    loadW: 180,
    loadOhm: 80,
    leakMa: 0.8,
    priority: "freezer",
    source: MODELLING_SOURCE,
  },
  {
    id: "washer-500",
    title: LOAD_TITLES["washer-500"],
    figure: "500 W",
    glyph: "washer",
    loadW: 500,
    leakMa: 0.5,
    source: MODELLING_SOURCE,
  },
  {
    id: "sump-pump-800",
    title: LOAD_TITLES["sump-pump-800"],
    figure: "800 W",
    glyph: "motor",
    loadW: 800,
    leakMa: 0.5,
    priority: "sump-pump",
    source: MODELLING_SOURCE,
  },
  {
    id: "appliance-600",
    title: LOAD_TITLES["appliance-600"],
    figure: "600 W",
    glyph: "appliance",
    loadW: 600,
    source: MODELLING_SOURCE,
  },
];

const BY_ID = new Map(loadItems.map((item) => [item.id, item]));
export const findLoadItem = (id: string): LoadItem | undefined => BY_ID.get(id);

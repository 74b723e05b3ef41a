import type { LoadPriority } from "../model/device.ts";

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

const MODELLING = "modelling value: resistance from the rated watts at 120 V where not given";

export const loadItems: readonly LoadItem[] = [
  {
    id: "lamp-60",
    title: "Table lamp",
    figure: "60 W",
    glyph: "luminaire",
    loadW: 60,
    loadOhm: 240,
    leakMa: 0.1,
    source: MODELLING,
  },
  {
    id: "heater-1200",
    title: "Portable heater",
    figure: "1200 W",
    glyph: "heater",
    loadW: 1200,
    loadOhm: 12,
    continuous: true,
    source: MODELLING,
  },
  {
    id: "freezer-180",
    title: "Freezer",
    figure: "180 W",
    glyph: "freezer",
    loadW: 180,
    loadOhm: 80,
    leakMa: 0.8,
    priority: "freezer",
    source: MODELLING,
  },
  { id: "washer-500", title: "Washer", figure: "500 W", glyph: "washer", loadW: 500, leakMa: 0.5, source: MODELLING },
  {
    id: "sump-pump-800",
    title: "Sump pump",
    figure: "800 W",
    glyph: "motor",
    loadW: 800,
    leakMa: 0.5,
    priority: "sump-pump",
    source: MODELLING,
  },
  { id: "appliance-600", title: "Small appliance", figure: "600 W", glyph: "appliance", loadW: 600, source: MODELLING },
];

const BY_ID = new Map(loadItems.map((item) => [item.id, item]));
export const findLoadItem = (id: string): LoadItem | undefined => BY_ID.get(id);

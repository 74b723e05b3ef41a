import type { Conductor, Construction, Material } from "../model/cable.ts";
import type { ConductorKey } from "../model/ids.ts";
import { type Colour, colourKey } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";
import { CABLE_TITLES, FIGURES } from "./stock-words.ts";

/** A cable of the stock, with its conductors in drawing order: hots, neutral, ground. */
export interface CableItem {
  readonly id: string;
  readonly title: string;
  /** Size text set into the sheath: "12/2". */
  readonly sizeText: string;
  readonly construction: Construction;
  readonly conductors: Readonly<Record<ConductorKey, Conductor>>;
  readonly insulationC?: number;
  readonly source: string;
}

const TYPICAL_SOURCE = "typical of the trade; the legend on the jacket governs";

interface Choices {
  readonly material?: Material;
  readonly construction?: Construction;
  readonly groundAwg?: WireSize;
  readonly insulationC?: number;
}

function cable(
  id: keyof typeof CABLE_TITLES,
  sizeText: string,
  awg: WireSize,
  colours: readonly Colour[],
  choices: Choices = {},
): CableItem {
  const conductors: Record<ConductorKey, Conductor> = {};
  colours.forEach((colour, order) => {
    const grounding = colour === "bare" || colour === "green";
    let key = colourKey(colour);
    while (key in conductors) key = `${key}2`;
    conductors[key as ConductorKey] = {
      colour,
      awg: grounding ? (choices.groundAwg ?? awg) : awg,
      material: choices.material ?? "copper",
      stranded: false,
      grounding,
      order,
    };
  });
  return {
    id,
    title: CABLE_TITLES[id],
    sizeText: choices.material === "aluminium" ? FIGURES.aluminium(sizeText) : sizeText,
    construction: choices.construction ?? "nonmetallic-sheathed",
    conductors,
    ...(choices.insulationC !== undefined && { insulationC: choices.insulationC }),
    source: TYPICAL_SOURCE,
  };
}

const TWO: readonly Colour[] = ["black", "white", "bare"];
const THREE: readonly Colour[] = ["black", "red", "white", "bare"];

export const cableItems: readonly CableItem[] = [
  cable("nm-12-2-g", "12/2", "12", TWO, { insulationC: 90 }),
  cable("nm-14-2-g", "14/2", "14", TWO, { insulationC: 90 }),
  cable("nm-12-3-g", "12/3", "12", THREE, { insulationC: 90 }),
  cable("nm-14-3-g", "14/3", "14", THREE, { insulationC: 90 }),
  cable("nm-12-2-2-g", "12/2/2", "12", ["black", "red", "white", "white", "bare"], {
    insulationC: 90,
  }),
  cable("nm-10-2-g", "10/2", "10", TWO, { insulationC: 90 }),
  cable("nm-10-3-g", "10/3", "10", THREE, { insulationC: 90 }),
  cable("nm-14-2", "14/2", "14", ["black", "white"], { insulationC: 60 }),
  cable("nm-12-2", "12/2", "12", ["black", "white"], { insulationC: 60 }),
  cable("nm-14-2-reduced-g", "14/2", "14", TWO, { groundAwg: "16", insulationC: 60 }),
  cable("armoured-12-2-g", "12/2", "12", ["black", "white", "green"], {
    construction: "armoured-bonded",
    insulationC: 90,
  }),
  cable("armoured-12-2-old", "12/2", "12", ["black", "white"], {
    construction: "armoured-old",
    insulationC: 60,
  }),
  cable("al-12-2-g", "12/2", "12", TWO, {
    material: "aluminium",
    insulationC: 60,
  }),
  cable("al-10-2-g", "10/2", "10", TWO, { material: "aluminium", insulationC: 60 }),
  cable("knob-tube-14", "14", "14", ["black"], {
    construction: "knob-and-tube",
    insulationC: 60,
  }),
  cable("knob-tube-12", "12", "12", ["black"], {
    construction: "knob-and-tube",
    insulationC: 60,
  }),
  cable("single-12-black", "12", "12", ["black"], {
    construction: "raceway",
    insulationC: 90,
  }),
  cable("single-12-white", "12", "12", ["white"], {
    construction: "raceway",
    insulationC: 90,
  }),
];

const BY_ID = new Map(cableItems.map((item) => [item.id, item]));
export const findCableItem = (id: string): CableItem | undefined => BY_ID.get(id);

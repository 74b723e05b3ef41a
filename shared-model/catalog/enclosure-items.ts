import type { Box, VolumeFact } from "../model/enclosure.ts";
import { cubicInches } from "../units/volume.ts";
import { findStandardBox } from "./standard-boxes.ts";
import { ENCLOSURE_TITLES, FIGURES } from "./stock-words.ts";

/** A box or panel of the stock. What it says about itself is a start; every fact can be changed on the placed box. */
export interface EnclosureItem {
  readonly id: string;
  readonly title: string;
  /** Right-hand figure in the stock list, e.g. "30.3 in³". */
  readonly figure: string;
  readonly glyph: string;
  readonly make:
    | {
        readonly kind: "box";
        readonly facts: Pick<Box, "material" | "shape" | "volume" | "internalClamps" | "gangs"> &
          Partial<Pick<Box, "depthIn" | "listedFor">>;
      }
    | { readonly kind: "panel"; readonly spaces: number };
  readonly source: string;
}

const TABLE_SOURCE = "NFPA 70 Table 314.16(A); from memory where standard-boxes says so";
const MARKED_SOURCE = "typical marking; the marking in the actual box governs";

interface Standard {
  readonly id: keyof typeof ENCLOSURE_TITLES;
  /** Of the table of standard boxes. */
  readonly size: string;
  readonly shape: Box["shape"];
  readonly depthIn: number;
}

function standard({ id, size, shape, depthIn }: Standard): EnclosureItem {
  const box = findStandardBox(size);
  if (box === undefined) throw new Error(`No standard box ${size}.`);
  const volume: VolumeFact = { kind: "table", size };
  const glyph = shape === "octagon" ? "box-round" : "box";
  return {
    id,
    title: ENCLOSURE_TITLES[id],
    figure: `${box.volumeIn3}`,
    glyph,
    make: {
      kind: "box",
      facts: {
        material: "metal",
        shape,
        volume,
        internalClamps: shape === "cast" ? "none" : "present",
        gangs: 1,
        depthIn: depthIn as Box["depthIn"] & number,
      },
    },
    source: TABLE_SOURCE,
  };
}

function marked(
  id: keyof typeof ENCLOSURE_TITLES,
  in3: number,
  shape: Box["shape"],
  gangs: number,
  listedFor: Box["listedFor"] = ["device"],
): EnclosureItem {
  return {
    id,
    title: ENCLOSURE_TITLES[id],
    figure: `${in3}`,
    glyph: shape === "round" ? "box-round" : "box",
    make: {
      kind: "box",
      facts: {
        material: "nonmetallic",
        shape,
        volume: { kind: "marked", volumeIn3: cubicInches(in3) },
        internalClamps: "included-in-marked-volume",
        gangs,
        ...(listedFor && { listedFor }),
      },
    },
    source: MARKED_SOURCE,
  };
}

/** What a dwelling is wired with most stands first, then by shape. */
export const enclosureItems: readonly EnclosureItem[] = [
  marked("plastic-new-1", 20, "device", 1),
  marked("plastic-new-2", 34, "device", 2),
  marked("plastic-old-1", 16, "device", 1),
  marked("plastic-old-2", 28, "device", 2),
  standard({ id: "square-4-2-1-8", size: "4x2-1/8 square", shape: "square", depthIn: 2.125 }),
  standard({ id: "square-4-1-1-2", size: "4x1-1/2 square", shape: "square", depthIn: 1.5 }),
  standard({ id: "square-4-1-1-4", size: "4x1-1/4 square", shape: "square", depthIn: 1.25 }),
  standard({ id: "square-4-11-16-2-1-8", size: "4-11/16x2-1/8 square", shape: "square", depthIn: 2.125 }),
  standard({ id: "square-4-11-16-1-1-2", size: "4-11/16x1-1/2 square", shape: "square", depthIn: 1.5 }),
  standard({ id: "square-4-11-16-1-1-4", size: "4-11/16x1-1/4 square", shape: "square", depthIn: 1.25 }),
  standard({ id: "device-3-2-3-1-2", size: "3x2x3-1/2 device", shape: "device", depthIn: 3.5 }),
  standard({ id: "device-3-2-2-3-4", size: "3x2x2-3/4 device", shape: "device", depthIn: 2.75 }),
  standard({ id: "device-3-2-2-1-2", size: "3x2x2-1/2 device", shape: "device", depthIn: 2.5 }),
  standard({ id: "device-3-2-2-1-4", size: "3x2x2-1/4 device", shape: "device", depthIn: 2.25 }),
  standard({ id: "device-3-2-2", size: "3x2x2 device", shape: "device", depthIn: 2 }),
  standard({ id: "device-3-2-1-1-2", size: "3x2x1-1/2 device", shape: "device", depthIn: 1.5 }),
  standard({ id: "device-4-2-1-8-2-1-8", size: "4x2-1/8x2-1/8 device", shape: "device", depthIn: 2.125 }),
  standard({ id: "device-4-2-1-8-1-7-8", size: "4x2-1/8x1-7/8 device", shape: "device", depthIn: 1.875 }),
  standard({ id: "device-4-2-1-8-1-1-2", size: "4x2-1/8x1-1/2 device", shape: "device", depthIn: 1.5 }),
  standard({ id: "octagon-4-2-1-8", size: "4x2-1/8 round/octagonal", shape: "octagon", depthIn: 2.125 }),
  standard({ id: "octagon-4-1-1-2", size: "4x1-1/2 round/octagonal", shape: "octagon", depthIn: 1.5 }),
  standard({ id: "octagon-4-1-1-4", size: "4x1-1/4 round/octagonal", shape: "octagon", depthIn: 1.25 }),
  standard({ id: "masonry-3-1-2", size: "3-3/4x2x3-1/2 masonry, per gang", shape: "masonry", depthIn: 3.5 }),
  standard({ id: "masonry-2-1-2", size: "3-3/4x2x2-1/2 masonry, per gang", shape: "masonry", depthIn: 2.5 }),
  standard({
    id: "weatherproof-fd",
    size: "FD single cover, 2-3/8 min depth, per gang",
    shape: "cast",
    depthIn: 2.375,
  }),
  standard({ id: "weatherproof-fs", size: "FS single cover, 1-3/4 min depth, per gang", shape: "cast", depthIn: 1.75 }),
  marked("plastic-ceiling", 22.5, "round", 1, ["luminaire"]),
  marked("fan-rated", 15.5, "octagon", 1, ["luminaire", "fan"]),
  marked("pancake", 5, "round", 1, ["luminaire"]),
  {
    id: "panel-16",
    title: ENCLOSURE_TITLES["panel-16"],
    figure: FIGURES.spaces(16),
    glyph: "panel",
    make: { kind: "panel", spaces: 16 },
    source: "typical of the trade",
  },
  {
    id: "panel-30",
    title: ENCLOSURE_TITLES["panel-30"],
    figure: FIGURES.spaces(30),
    glyph: "panel",
    make: { kind: "panel", spaces: 30 },
    source: "typical of the trade",
  },
];

const BY_ID = new Map(enclosureItems.map((item) => [item.id, item]));
export const findEnclosureItem = (id: string): EnclosureItem | undefined => BY_ID.get(id);

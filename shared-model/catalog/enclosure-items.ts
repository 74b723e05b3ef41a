import type { Box, VolumeFact } from "../model/enclosure.ts";
import { cubicInches } from "../units/volume.ts";
import { findStandardBox } from "./standard-boxes.ts";

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

const TABLE = "NFPA 70 Table 314.16(A); from memory where standard-boxes says so";
const MARKED = "typical marking; the marking in the actual box governs";

function standard(id: string, title: string, size: string, shape: Box["shape"], depthIn: number): EnclosureItem {
  const box = findStandardBox(size);
  if (box === undefined) throw new Error(`No standard box ${size}.`);
  const volume: VolumeFact = { kind: "table", size };
  const glyph = shape === "octagon" ? "box-round" : "box";
  return {
    id,
    title,
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
    source: TABLE,
  };
}

function marked(
  id: string,
  title: string,
  in3: number,
  shape: Box["shape"],
  gangs: number,
  listedFor: Box["listedFor"] = ["device"],
): EnclosureItem {
  return {
    id,
    title,
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
    source: MARKED,
  };
}

/** What a dwelling is wired with most stands first, then by shape. */
export const enclosureItems: readonly EnclosureItem[] = [
  marked("plastic-new-1", "Nonmetallic new-work, 1 gang", 20, "device", 1),
  marked("plastic-new-2", "Nonmetallic new-work, 2 gang", 34, "device", 2),
  marked("plastic-old-1", "Nonmetallic old-work, 1 gang", 16, "device", 1),
  marked("plastic-old-2", "Nonmetallic old-work, 2 gang", 28, "device", 2),
  standard("square-4-2-1-8", "4 in. square × 2-1/8", "4x2-1/8 square", "square", 2.125),
  standard("square-4-1-1-2", "4 in. square × 1-1/2", "4x1-1/2 square", "square", 1.5),
  standard("square-4-1-1-4", "4 in. square × 1-1/4", "4x1-1/4 square", "square", 1.25),
  standard("square-4-11-16-2-1-8", "4-11/16 sq. × 2-1/8", "4-11/16x2-1/8 square", "square", 2.125),
  standard("square-4-11-16-1-1-2", "4-11/16 sq. × 1-1/2", "4-11/16x1-1/2 square", "square", 1.5),
  standard("square-4-11-16-1-1-4", "4-11/16 sq. × 1-1/4", "4-11/16x1-1/4 square", "square", 1.25),
  standard("device-3-2-3-1-2", "Device 3 × 2 × 3-1/2", "3x2x3-1/2 device", "device", 3.5),
  standard("device-3-2-2-3-4", "Device 3 × 2 × 2-3/4", "3x2x2-3/4 device", "device", 2.75),
  standard("device-3-2-2-1-2", "Device 3 × 2 × 2-1/2", "3x2x2-1/2 device", "device", 2.5),
  standard("device-3-2-2-1-4", "Device 3 × 2 × 2-1/4", "3x2x2-1/4 device", "device", 2.25),
  standard("device-3-2-2", "Device 3 × 2 × 2", "3x2x2 device", "device", 2),
  standard("device-3-2-1-1-2", "Device 3 × 2 × 1-1/2", "3x2x1-1/2 device", "device", 1.5),
  standard("device-4-2-1-8-2-1-8", "Device 4 × 2-1/8 × 2-1/8", "4x2-1/8x2-1/8 device", "device", 2.125),
  standard("device-4-2-1-8-1-7-8", "Device 4 × 2-1/8 × 1-7/8", "4x2-1/8x1-7/8 device", "device", 1.875),
  standard("device-4-2-1-8-1-1-2", "Device 4 × 2-1/8 × 1-1/2", "4x2-1/8x1-1/2 device", "device", 1.5),
  standard("octagon-4-2-1-8", "Octagon 4 × 2-1/8", "4x2-1/8 round/octagonal", "octagon", 2.125),
  standard("octagon-4-1-1-2", "Octagon 4 × 1-1/2", "4x1-1/2 round/octagonal", "octagon", 1.5),
  standard("octagon-4-1-1-4", "Octagon 4 × 1-1/4", "4x1-1/4 round/octagonal", "octagon", 1.25),
  standard("masonry-3-1-2", "Masonry × 3-1/2, one gang", "3-3/4x2x3-1/2 masonry, per gang", "masonry", 3.5),
  standard("masonry-2-1-2", "Masonry × 2-1/2, one gang", "3-3/4x2x2-1/2 masonry, per gang", "masonry", 2.5),
  standard("weatherproof-fd", "Weatherproof FD, one gang", "FD single cover, 2-3/8 min depth, per gang", "cast", 2.375),
  standard("weatherproof-fs", "Weatherproof FS, one gang", "FS single cover, 1-3/4 min depth, per gang", "cast", 1.75),
  marked("plastic-ceiling", "Nonmetallic ceiling, round", 22.5, "round", 1, ["luminaire"]),
  marked("fan-rated", "Fan-rated ceiling box", 15.5, "octagon", 1, ["luminaire", "fan"]),
  marked("pancake", "Pancake, 1/2 in.", 5, "round", 1, ["luminaire"]),
  {
    id: "panel-16",
    title: "Panel, 16 spaces",
    figure: "16 sp.",
    glyph: "panel",
    make: { kind: "panel", spaces: 16 },
    source: "typical of the trade",
  },
  {
    id: "panel-30",
    title: "Panel, 30 spaces",
    figure: "30 sp.",
    glyph: "panel",
    make: { kind: "panel", spaces: 30 },
    source: "typical of the trade",
  },
];

const BY_ID = new Map(enclosureItems.map((item) => [item.id, item]));
export const findEnclosureItem = (id: string): EnclosureItem | undefined => BY_ID.get(id);

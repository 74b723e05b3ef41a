import type { Colour } from "../units/colour.ts";
import type { Celsius, Feet } from "../units/quantity.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { WithEvidence } from "./evidence.ts";
import type { CableId, ConductorKey, EnclosureId, EntryId } from "./ids.ts";

export type Material = "copper" | "aluminium" | "copper-clad-aluminium";

/** One wire of a cable, by what it is made of. What it does is the role of its net, never stored. */
export interface Conductor {
  readonly colour: Colour;
  readonly awg: WireSize;
  readonly material: Material;
  readonly stranded: boolean;
  /** Made to be the equipment grounding conductor: bare, or green. */
  readonly grounding: boolean;
  readonly order: number;
}

export type Construction =
  | "nonmetallic-sheathed"
  | "armoured-bonded"
  | "armoured-old"
  | "knob-and-tube"
  | "single-conductor"
  | "raceway";

export const GROUND_CLAMPED_TO = ["panel", "grounding-electrode", "water-pipe"] as const;
export type GroundClampedTo = (typeof GROUND_CLAMPED_TO)[number];

/** One end of the sheath: in an entry of an enclosure, or in country that is not drawn. */
export type CableSide = { readonly enclosure: EnclosureId; readonly entry: EntryId } | { readonly outside: string };

/** A sheath with its conductors, or an unjacketed single conductor, between two enclosures. */
export interface Cable extends WithEvidence {
  readonly id: CableId;
  readonly name: string;
  /** Catalogue item it was made from. */
  readonly item: string;
  readonly construction: Construction;
  readonly conductors: Readonly<Record<ConductorKey, Conductor>>;
  readonly sides: { readonly a: CableSide; readonly b: CableSide };
  readonly lengthFt?: Feet;
  readonly insulationC?: Celsius;
  /** Cables with the same route text run together; separate routes of one circuit matter. */
  readonly route?: string;
  /** What a ground that leaves the drawing by this cable is clamped to, as far as it matters. */
  readonly groundClampedTo?: GroundClampedTo;
  /** How far along the water pipe that clamp is from where the pipe enters the building. */
  readonly pipeFromEntryFt?: Feet;
  readonly notes?: string;
  readonly order: number;
}

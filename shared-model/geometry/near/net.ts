import type { Conductor } from "../../model/cable.ts";
import type { CableId, ConductorKey, EndKey, JumperId, PassThroughId } from "../../model/ids.ts";
import type { Colour } from "../../units/colour.ts";

/** 0 hot, 1 neutral, 2 ground: by what a conductor is made of. Grounds lie at the back and may be crossed at less cost. */
export type Kind = 0 | 1 | 2;

export const kindOfConductor = ({ grounding, colour }: Pick<Conductor, "grounding" | "colour">): Kind =>
  grounding ? 2 : colour === "white" || colour === "grey" ? 1 : 0;

/** Which way a conductor leaves its place: -1 to the left, 1 to the right. */
export type Facing = -1 | 1;

/**
 * One end of a route: a row on one side of a layer. Layers stand from left to right: wall, column of splices, devices,
 * column of splices, wall; between layer k and layer k + 1 lies channel k, where conductors change rows on lanes.
 */
export interface Port {
  readonly what: "wall" | "splice" | "hole" | "screw" | "bond" | "cap";
  layer: number;
  facing: Facing;
  /** Row in pitches; row 0 is the first hole row of a device. A screw under a device takes the row of its run. */
  row: number;
  /** How far inside the edge of its layer the conductor ends. */
  depth: number;
  /** Width at this port that lanes leave free for its plate, from the edge of the layer. */
  pad: number;
  /** Row of the hole, where several ends share it and this one arrives on a row beside it. */
  holeRow?: number;
  /** Under a device: x of the screw from the left edge of the layer, and which of its ends this is. */
  screw?: { readonly x: number; readonly nth: number };
}

/** A conductor to be routed, from port to port. */
export interface Net {
  readonly key: string;
  readonly kind: Kind;
  readonly of: "cable" | "jumper";
  readonly cable?: CableId;
  readonly conductor?: ConductorKey;
  readonly jumper?: JumperId;
  readonly passThrough?: PassThroughId;
  readonly ends: readonly EndKey[];
  readonly colour: Colour;
  readonly markedAs: readonly (Colour | undefined)[];
  readonly grounding: boolean;
  /** "BK" near its sheath, "C3 BK" at its place. */
  readonly code: string;
  readonly name: string;
  readonly a: Port;
  readonly b: Port;
  /** Row on which it passes the layers between two channels. */
  run: number;
  /** Only to be expected: it keeps its room and is not drawn. */
  readonly likely?: true;
  /** Lies level between its two caps, in one layer. */
  readonly alone?: true;
}

export const channelOf = (port: Port): number => (port.facing > 0 ? port.layer : port.layer - 1);

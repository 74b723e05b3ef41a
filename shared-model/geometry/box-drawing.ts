import type { DeviceFamily, EntryKind, Finish } from "../catalog/device-type.ts";
import type { EntryMeans } from "../model/enclosure.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EndKey,
  EntryId,
  JumperId,
  PassThroughId,
  RingId,
  Side,
  SpliceId,
  TerminalName,
} from "../model/ids.ts";
import type { Point } from "../model/project.ts";
import type { Colour } from "../units/colour.ts";

/**
 * Everything that the near drawing of one enclosure shows, in drawing units (1 du = 1 px at 100 %), with the origin at
 * the inner top-left corner of the enclosure. Screen, print and hit-testing read the same object.
 */
export interface BoxDrawing {
  readonly enclosure: EnclosureId;
  readonly kind: "box" | "panel";
  readonly material: "metal" | "nonmetallic" | "unknown";
  /** Inside of the walls. */
  readonly width: number;
  readonly height: number;
  /** Everything drawn, sheath stubs, captions and header included. */
  readonly bounds: Rect;
  readonly header: { readonly name: string; readonly note: string; readonly at: Point };
  readonly sheaths: readonly SheathDrawing[];
  readonly conductors: readonly ConductorDrawing[];
  readonly splices: readonly SpliceDrawing[];
  readonly devices: readonly DeviceDrawing[];
  readonly bond?: BondDrawing;
  readonly caps: readonly CapDrawing[];
  /** Breaker spaces of a panel with nothing in them: odd numbers left, even numbers right. */
  readonly freeSlots?: readonly { readonly slot: number; readonly at: Rect }[];
  readonly rings: readonly { readonly id: RingId; readonly text: string; readonly at: Point }[];
  readonly measure: {
    readonly bends: number;
    readonly crossings: number;
    readonly insulatedCrossings: number;
    readonly bodyHits: number;
    readonly sharedSegments: number;
  };
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Wall = "left" | "right" | "top" | "bottom";

/** A cable where it enters: the stub of its sheath outside, its end inside, its words. */
export interface SheathDrawing {
  readonly cable: CableId;
  readonly side: Side;
  readonly entry: EntryId;
  readonly means: EntryMeans;
  readonly wall: Wall;
  /** Centre of the sheath on the inner face of the wall. */
  readonly at: Point;
  /** Where the sheath leaves the drawing of this box, for the road to the other box. */
  readonly outer: Point;
  readonly name: string;
  readonly sizeText: string;
  readonly lengthText: string;
  /** "to B4" bold and what is there, written above the stub. */
  readonly captionTitle: string;
  readonly captionNote: string;
}

/** A paper plate with a code, set into a line. */
export interface Plate {
  readonly at: Point;
  readonly text: string;
  readonly vertical: boolean;
}

/** A cable conductor from its sheath to its place, or a jumper from place to place. */
export interface ConductorDrawing {
  readonly kind: "cable" | "jumper";
  readonly jumper?: JumperId;
  /** Set where a cable conductor runs through unbroken: it has no end here. */
  readonly passThrough?: PassThroughId;
  /** Which conductor of its cable it is; absent for a jumper. */
  readonly conductor?: ConductorKey;
  /** Ends that lie in this enclosure: one for a cable conductor, two for a jumper, from the first point to the last. */
  readonly ends: readonly EndKey[];
  readonly colour: Colour;
  /** Colour that each of the ends is re-identified as; same length as `ends`. */
  readonly markedAs: readonly (Colour | undefined)[];
  readonly grounding: boolean;
  readonly points: readonly Point[];
  /** Points of the fan out of the sheath at the start, where the halo is not painted; 0 for a jumper. */
  readonly fanPoints: number;
  /** As `fanPoints`, at the last points: only where a conductor runs through unbroken. */
  readonly fanPointsEnd?: number;
  readonly plates: readonly Plate[];
  /** Where each end can be picked up; same length as `ends`. */
  readonly grips: readonly Point[];
}

export interface SpliceDrawing {
  readonly splice: SpliceId;
  readonly name: string;
  /** "4 × 12, large". */
  readonly caption: string;
  readonly x: number;
  readonly rows: readonly { readonly y: number; readonly end: EndKey }[];
  readonly labelAt: Point;
  /** Where a further end would join. */
  readonly freeRow: Point;
}

export interface HoleDrawing {
  readonly hole: number;
  readonly at: Point;
  /** Direction from which a conductor comes. */
  readonly from: Wall;
  readonly taken: boolean;
}

export interface TerminalDrawing {
  readonly terminal: TerminalName;
  readonly label: string;
  /** "brass", "silver", "green". */
  readonly word: string;
  readonly finish: Finish;
  readonly entryKind: EntryKind;
  /** Block around screw and holes; absent for screws without a block. */
  readonly block?: Rect;
  readonly screw: Point;
  readonly holes: readonly HoleDrawing[];
  readonly labelAt: Point;
  readonly labelAnchor: "start" | "middle" | "end";
}

export interface DeviceDrawing {
  readonly device: DeviceId;
  readonly name: string;
  readonly caption: string;
  readonly type: string;
  readonly family: DeviceFamily;
  readonly glyph: string;
  readonly body: Rect;
  /** Room for its face or glyph inside the body, clear of terminals and words. */
  readonly face: Rect;
  readonly labelAt: Point;
  readonly terminals: readonly TerminalDrawing[];
}

export interface BondDrawing {
  readonly at: Point;
  readonly taken: readonly EndKey[];
  /** Where its words stand: two lines, the first on this baseline, beside the screw and clear of its conductors. */
  readonly labelAt: Point;
  readonly labelAnchor: "start" | "end";
}

/** A capped or loose end. */
export interface CapDrawing {
  readonly end: EndKey;
  readonly kind: "capped" | "loose";
  readonly at: Point;
  /** Which way the conductor comes into it. */
  readonly from: Wall;
}

import type { ScopeKind } from "../../answers/scope.ts";
import type { DeviceId, EndKey, SpliceId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { Rect } from "../box-drawing.ts";

/** What a flag says: K, M, R or N. */
export type ScopeSign = "kept" | "moved" | "removed" | "new";

export const SCOPE_LETTERS: Readonly<Record<ScopeSign, string>> = { kept: "K", moved: "M", removed: "R", new: "N" };

/** What stays where it is and is marked or set otherwise is kept; what takes the place of another is new. */
const SIGNS: Readonly<Record<ScopeKind, ScopeSign>> = {
  kept: "kept",
  moved: "moved",
  removed: "removed",
  new: "new",
  replaced: "new",
  relabelled: "kept",
  changed: "kept",
};

export const signOf = (kind: ScopeKind): ScopeSign => SIGNS[kind];

/**
 * What lies over the near drawing of a box of proposed while the difference is shown, in its units and from its origin.
 * What is removed is laid aside; the old way of a moved end leads to its old place, where that is still drawn.
 */
export interface ScopeDrawing {
  /** By the conductors of the box drawing, in their order. */
  readonly lines: readonly ScopeSign[];
  readonly splices: ReadonlyMap<SpliceId, SpliceMark>;
  readonly devices: ReadonlyMap<DeviceId, ScopeSign>;
  readonly flags: readonly FlagSpot[];
  readonly ways: readonly OldWay[];
  /** Open places that a moved end leaves. */
  readonly ports: readonly Point[];
  /** Where a capsule goes on around the open places in it. */
  readonly capsules: readonly Rect[];
  readonly aside: readonly Aside[];
  /** The box drawing and what lies beyond it. */
  readonly bounds: Rect;
}

export interface SpliceMark {
  readonly sign: ScopeSign;
  /** Name of the splice of as found that it is, where that is another. */
  readonly was?: string;
}

/** Middle of a flag, on a line or beside a name. */
export interface FlagSpot {
  readonly sign: ScopeSign;
  readonly at: Point;
}

/** The way of a moved end to its place as found. */
export interface OldWay {
  readonly end: EndKey;
  readonly points: readonly Point[];
}

/** A thing of as found that comes out, laid aside with crosses. */
export interface Aside {
  readonly kind: "device" | "splice" | "jumper" | "cable" | "part";
  readonly id: string;
  readonly name: string;
  /** Shape and words. */
  readonly area: Rect;
  readonly shape: Rect;
  readonly crosses: readonly Point[];
  readonly flagAt: Point;
  readonly nameAt: Point;
  /** Sign of a device, drawn in the middle of its shape. */
  readonly glyph?: string;
}

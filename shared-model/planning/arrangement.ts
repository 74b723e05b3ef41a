import type { Enclosure } from "../model/enclosure.ts";
import type { JumperId, SpliceId } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { ConnectorStock } from "./connector-stock.ts";
import type { Filled } from "./joint-cost.ts";
import type { JointGroup, Port } from "./joint-group.ts";

/** One splice of a group, or a port, that a jumper ends at. */
export type JumperSide = { readonly port: Port } | { readonly group: number; readonly bin: number | "any" };

/** A jumper that the make-up needs: a pigtail, a link between two splices of one group, or a strap between two ports. */
export interface Slot {
  readonly group: number;
  readonly sides: readonly [JumperSide, JumperSide];
  readonly awg: WireSize;
}

export interface Formed {
  readonly group: JointGroup;
  /** Number of splices; 0 where it is made without. */
  readonly bins: number;
  readonly linkAwg: WireSize | undefined;
}

export interface Arrangement {
  readonly cost: number;
  /** By group: home of each of its splices. */
  readonly homes: readonly (readonly (SpliceId | undefined)[])[];
  /** By slot. */
  readonly filled: readonly (Filled | undefined)[];
  /** By group: bin of each cable end. */
  readonly binOfEnd: readonly (readonly number[])[];
  /** By slot: bin of the side of a pigtail that is in a splice. */
  readonly binOfSlot: readonly (number | undefined)[];
}

export interface Search {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
  readonly formed: readonly Formed[];
  readonly slots: readonly Slot[];
  /** Jumpers and splices that may be kept, moved or taken out. */
  readonly jumpers: readonly JumperId[];
  readonly splices: readonly SpliceId[];
  readonly stock: ConnectorStock;
}

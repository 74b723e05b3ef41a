import type { DeviceId, EnclosureId } from "../model/ids.ts";

/** What one breaker or fuse of a panel feeds, as the wiring has it and not as a label says. */
export interface CircuitFeeds {
  readonly breaker: DeviceId;
  readonly panel: EnclosureId;
  /** As a line of the directory says it: "laundry (washer); stair (lights)"; empty where it feeds no outlet. */
  readonly feeds: string;
  /** Rooms of its outlets, or what a box in no room is called, each once. */
  readonly rooms: readonly string[];
  readonly outlets: number;
  /**
   * Boxes that a hot or a neutral of it comes to or passes through; those that no circuit comes to, though cables join them
   * to it, too: nobody knows that they are dead.
   */
  readonly boxes: readonly EnclosureId[];
  /** A cable of it leaves the drawing: it may feed more. */
  readonly leadsOutside: boolean;
}

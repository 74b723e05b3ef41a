import type { DeviceId, EndKey, OutletKey, SpliceId } from "../model/ids.ts";

/** Role of a net over switch positions only: all breakers on, all ground-fault devices reset, loads removed. */
export type Role = "ungrounded" | "switched" | "traveller" | "grounded" | "ground" | "signal" | "floating" | "conflict";

/** How an outlet stands with regard to ground-fault protection, as proved by its circuit. */
export interface OutletAnswer {
  readonly outlet: OutletKey;
  readonly name: string;
  readonly live: boolean;
  /** Devices that each protect it wherever it is live, or that do so by turns as switches stand. */
  readonly protectedBy: readonly DeviceId[];
}

/** What a box shows of the circuit: the role of each end's net and of each splice. */
export interface BoxRoles {
  readonly ends: Readonly<Record<EndKey, Role>>;
  readonly splices: Readonly<Record<SpliceId, Role>>;
  /** Ends on the LOAD side of devices that protect something there, with those devices; absent where there are none. */
  readonly behind?: Readonly<Record<EndKey, readonly DeviceId[]>>;
}

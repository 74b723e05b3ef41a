import type { CableId, DeviceId, EnclosureId, EntryId } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import type { CommandCall } from "./command-call.ts";

/** A cable that leads out of the drawing, and the panel that is to be drawn at its other side. */
export interface SupplyAsk {
  readonly state: StateName;
  readonly cable: CableId;
  /** Run first, on a copy: what makes the box that the cable enters, where it is not drawn yet. */
  readonly after?: CommandCall;
  /** A panel of the drawing; absent: a new one. */
  readonly panel?: EnclosureId;
  /** Rating of the breaker, amperes; absent: what the thinnest conductor of the cable bears. */
  readonly ratingA?: number;
  readonly fresh: FreshSupply;
}

interface Fresh<T> {
  readonly id: T;
  readonly name: string;
}

/** Ids and names for what may be drawn: unused ones stay unused. */
export interface FreshSupply {
  readonly panel: Fresh<EnclosureId>;
  readonly bars: { readonly neutral: DeviceId; readonly ground: DeviceId };
  readonly entry: EntryId;
  readonly breakers: readonly [Fresh<DeviceId>, Fresh<DeviceId>];
}

export type SupplyAnswer =
  | {
      readonly ok: true;
      readonly title: string;
      /** What draws it, to be run as one step; without what was run first. */
      readonly calls: readonly CommandCall[];
      readonly panel: string;
      readonly ratingA: number;
      /** Smaller ratings of circuits with outlets, falling. */
      readonly smaller: readonly number[];
    }
  | { readonly ok: false; readonly why: string };

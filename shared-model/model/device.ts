import type { Amps, Inches, Milliamps, Ohms, Watts } from "../units/quantity.ts";
import type { WithEvidence } from "./evidence.ts";
import type { DeviceId } from "./ids.ts";
import type { RoomKind } from "./room.ts";

/** How a ground-fault device of a given time of making behaves when its supply is landed on LOAD. */
export type Reversal = "deny" | "deny-first" | "trips" | "legacy";

export type Leg = "A" | "B" | "C";

/** Anything with terminals: receptacles, switches, luminaires, hard-wired appliances; in a panel also breakers and bars. */
export interface Device extends WithEvidence {
  readonly id: DeviceId;
  readonly name: string;
  /** Catalogue type: terminals, entry kinds, internal paths. */
  readonly type: string;
  /** Left-to-right place among the devices of its enclosure. */
  readonly order: number;
  /** The device of the other state that this one replaces. */
  readonly replaces?: DeviceId;
  readonly zones?: readonly RoomKind[];

  /** Break-off tabs of a duplex or of a two-switch yoke; absent means intact. */
  readonly hotTab?: "intact" | "removed";
  readonly neutralTab?: "intact" | "removed";
  /** How conductors enter it where the type leaves a choice; absent means the type's own. */
  readonly entryKind?: "side-screw" | "clamp-plate" | "push-in";

  /** Rating of the face or of the switch. */
  readonly ratingA?: Amps;
  readonly tamperResistant?: boolean;
  readonly weatherResistant?: boolean;
  readonly markedForAluminium?: boolean;
  readonly acceptsStranded?: boolean;
  readonly selfGrounding?: boolean;
  readonly bodyDepthIn?: Inches;
  readonly reachHeightIn?: Inches;
  readonly behindAppliance?: boolean;
  readonly metalPlate?: boolean;
  /** What its yoke is screwed to; "nothing" where it hangs by its conductors or its plate. */
  readonly fastenedTo?: "box" | "ring" | "cover" | "nothing";
  /** A duplex of which one half was switched or on another circuit, before it was changed. */
  readonly wasSplit?: boolean;

  /** Dimmers: watts that it bears as it is mounted, of LED lamps by a rating of their own, and side sections broken off its yoke. */
  readonly ratingW?: Watts;
  readonly ledRatingW?: Watts;
  readonly sideSectionsRemoved?: number;

  /** Ground-fault devices. */
  readonly reversal?: Reversal;
  readonly faceContact?: "separate" | "tied-to-load";

  /** Breakers and fuses. */
  readonly slot?: number;
  readonly breakerRatingA?: Amps;
  readonly legs?: readonly Leg[];
  readonly function?: "none" | "gfci" | "afci" | "dual" | "equipment-ground-fault";
  /** Breaker whose handle is tied to this one. */
  readonly tiedTo?: DeviceId;
  readonly listedForPanel?: boolean;
  /** Its conductor is held together in the panel with the neutral and the other hots of its multiwire circuit. */
  readonly groupedInPanel?: boolean;

  /** Luminaires, appliances, alarms: what they use. */
  readonly loadW?: Watts;
  readonly loadOhm?: Ohms;
  readonly leakMa?: Milliamps;
  readonly continuous?: boolean;
  readonly priority?: LoadPriority;
  /** Weight of a luminaire or fan, and the supply temperature it is marked for, are facts of the thing hung. */
  readonly weightLb?: number;
  /** The building holds it, not its box. */
  readonly heldByBuilding?: boolean;
  readonly supplyC?: number;
  readonly notes?: string;
}

export type LoadPriority = "none" | "freezer" | "medical" | "alarm" | "fire-alarm-system" | "sump-pump";

import type { RoomId } from "./ids.ts";

/** What a place in a dwelling is, for the tables of required protection. A box takes the set of its room, a device may add zones. */
export const ROOM_KINDS = [
  "bathroom",
  "kitchen-counter",
  "kitchen-other",
  "sink-zone",
  "laundry",
  "garage",
  "accessory-building",
  "outdoor",
  "crawl-space",
  "basement-unfinished",
  "basement-finished",
  "boathouse",
  "tub-shower-zone",
  "damp-wet-indoor",
  "food-prep-with-sink",
  "bedroom",
  "living",
  "dining",
  "family",
  "den",
  "library",
  "sunroom",
  "recreation",
  "closet",
  "hallway",
  "attic",
  "utility",
  "stair",
] as const;

export type RoomKind = (typeof ROOM_KINDS)[number];

export interface Room {
  readonly id: RoomId;
  readonly name: string;
  readonly kinds: readonly RoomKind[];
  readonly grade?: "above" | "at" | "below";
  readonly insulatedCavity?: boolean;
  readonly order: number;
}

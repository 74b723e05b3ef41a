import type { RoomKind } from "../../model/room.ts";
import { amps } from "../../units/quantity.ts";

/** Rating of the circuits that dwellings must have for bathrooms, laundries and small appliances. Source: NFPA 70 210.11(C), from memory. */
export const DEDICATED_RATING = amps(20);

/** Circuits of which equipment fastened in place may take a share. Source: NFPA 70 210.23(A), from memory. */
export const FASTENED_SHARE_RATINGS = { least: amps(15), greatest: amps(20) } as const;

/** Greatest rating of the receptacles that the rules on their faces are about. Source: NFPA 70 406.9, 406.12, from memory. */
export const SMALL_RECEPTACLES_UP_TO = amps(20);

/** Where receptacles may share a small-appliance circuit. Source: NFPA 70 210.52(B), unconfirmed. */
export const SMALL_APPLIANCE_PLACES: readonly RoomKind[] = [
  "kitchen-counter",
  "kitchen-other",
  "dining",
  "food-prep-with-sink",
];

/** Rooms of which a switched receptacle may be the lighting outlet. Source: NFPA 70 210.70(A)(1) Exception 1, from memory. */
export const LIT_BY_RECEPTACLE: readonly RoomKind[] = [
  "bedroom",
  "living",
  "dining",
  "family",
  "den",
  "library",
  "sunroom",
  "recreation",
];

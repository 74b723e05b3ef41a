import { ROOM_KINDS, type RoomKind } from "../../model/room.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionValues, Sourced } from "./edition-data.ts";

/** What does not change between the editions held. */
export const POLARITY_OF_ALL = {
  whiteByMakeToAwg: {
    value: "6" satisfies WireSize,
    section: "200.6(A)",
    source: "NFPA 70 200.6(A) and (E), from memory: of 6 AWG and thinner the insulation itself is white or grey",
    confidence: "unconfirmed",
  },
  greenByMakeToAwg: {
    value: "6" satisfies WireSize,
    section: "250.119",
    source:
      "NFPA 70 250.119, from memory: insulation itself is green, or green with yellow; 4 AWG and thicker may be marked as a ground",
    confidence: "from-memory",
  },
} satisfies Partial<EditionValues>;

const HABITABLE: readonly RoomKind[] = [
  "kitchen-counter",
  "kitchen-other",
  "basement-finished",
  "bedroom",
  "living",
  "dining",
  "family",
  "den",
  "library",
  "sunroom",
  "recreation",
];

const atSwitch = (
  value: readonly RoomKind[],
  source: string,
  confidence: Sourced<unknown>["confidence"],
): Pick<EditionValues, "neutralAtSwitchPlaces"> => ({
  neutralAtSwitchPlaces: {
    value,
    section: "404.2(C)",
    source: `NFPA 70 404.2(C), ${source}; which kinds of room count as habitable is our reading`,
    confidence,
  },
});

export const SWITCHES_2011 = atSwitch(
  ROOM_KINDS,
  "as a trade magazine tells it: nearly every lighting switch",
  "sourced",
);
export const SWITCHES_2014 = atSwitch(
  ["bathroom", ...HABITABLE],
  "as a reprint of an inspectors' article tells it: rooms that are not habitable are left out",
  "sourced",
);
export const SWITCHES_FROM_2017 = atSwitch(
  ["bathroom", "hallway", "stair", ...HABITABLE],
  "from memory: bathrooms, hallways, stairways and habitable rooms",
  "from-memory",
);

import type { RoomKind } from "../../model/room.ts";
import { amps } from "../../units/quantity.ts";
import type { EditionValues } from "./edition-data.ts";

const PLACES_2017: readonly RoomKind[] = [
  "bathroom",
  "garage",
  "accessory-building",
  "outdoor",
  "crawl-space",
  "basement-unfinished",
  "kitchen-counter",
  "sink-zone",
  "tub-shower-zone",
  "laundry",
  "boathouse",
];
const PLACES_2020: readonly RoomKind[] = [...PLACES_2017, "basement-finished", "damp-wet-indoor"];
const PLACES_2023: readonly RoomKind[] = [...PLACES_2020, "kitchen-other", "food-prep-with-sink"];

const AT_GRADE = {
  value: ["accessory-building", "crawl-space"] as readonly RoomKind[],
  section: "210.8(A)",
  source: "NFPA 70 210.8(A)(2) and (4), from memory",
  confidence: "from-memory",
} as const;

/** Where receptacles of dwellings need ground-fault protection in 2017: 125 V, 15 and 20 A. */
export const PROTECTION_2017 = {
  protectedPlaces: {
    value: PLACES_2017,
    section: "210.8(A)",
    source: "NFPA 70 210.8(A)(1) to (10): the 2014 list is reproduced in a town ordinance, unchanged in 2017",
    confidence: "sourced",
  },
  placesAtOrBelowGrade: AT_GRADE,
  protectedUpToA: {
    value: amps(20),
    section: "210.8(A)",
    source: "NFPA 70 210.8(A): 125 V, 15 and 20 A receptacles",
    confidence: "sourced",
  },
  protectedLightingPlaces: {
    value: ["crawl-space"],
    section: "210.8(E)",
    source: "NFPA 70 210.8(E), new in 2017: a trade journal's list of changes",
    confidence: "sourced",
  },
} satisfies Partial<EditionValues>;

/** 2020: any ampere rating in the listed places, every basement, damp and wet places indoors, outdoor hard-wired outlets. */
export const PROTECTION_2020 = {
  protectedPlaces: {
    value: PLACES_2020,
    section: "210.8(A)",
    source: "NFPA 70 210.8(A)(1) to (11): two trade summaries of the 2020 changes",
    confidence: "sourced",
  },
  placesAtOrBelowGrade: AT_GRADE,
  protectedLightingPlaces: {
    value: ["crawl-space"],
    section: "210.8(C)",
    source: "NFPA 70 210.8(C), from memory",
    confidence: "from-memory",
  },
  protectedHardWiredPlaces: {
    value: ["outdoor"],
    section: "210.8(F)",
    source:
      "NFPA 70 210.8(F), new in 2020, to 50 A: a maker's summary; dates of relief for cooling equipment unconfirmed",
    confidence: "sourced",
  },
} satisfies Partial<EditionValues>;

/** 2023: every kitchen receptacle, and places with a sink and fixed provisions for food or drink. */
export const PROTECTION_2023 = {
  ...PROTECTION_2020,
  protectedPlaces: {
    value: PLACES_2023,
    section: "210.8(A)",
    source: "NFPA 70 210.8(A)(1) to (12): two trade summaries of the 2023 changes",
    confidence: "sourced",
  },
  protectedHardWiredPlaces: {
    ...PROTECTION_2020.protectedHardWiredPlaces,
    source: "NFPA 70 210.8(F), to 50 A; the date to which cooling equipment is relieved is unconfirmed",
    confidence: "unconfirmed",
  },
} satisfies Partial<EditionValues>;

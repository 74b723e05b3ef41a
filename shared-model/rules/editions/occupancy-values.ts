import type { RoomKind } from "../../model/room.ts";
import { type Amps, amps, feet, inches } from "../../units/quantity.ts";
import type { EditionValues, Sourced } from "./edition-data.ts";

const NFPA = "NFPA 70";

const fromMemory = <T>(value: T, section: string, source: string): Sourced<T> => ({
  value,
  section,
  source: `${NFPA} ${source}, from memory`,
  confidence: "from-memory",
});

/** By rating of the circuit: the receptacles that may be put on one with two or more of them. */
const RECEPTACLES: Readonly<Record<number, readonly Amps[]>> = {
  15: [amps(15)],
  20: [amps(15), amps(20)],
  30: [amps(30)],
  40: [amps(40), amps(50)],
  50: [amps(50)],
};

/** What does not change between the editions held. */
export const OCCUPANCY_OF_ALL = {
  receptacleAmps: fromMemory(RECEPTACLES, "210.21(B)(3)", "Table 210.21(B)(3)"),
  motorLoadPercent: fromMemory(80, "404.14", "404.14: motor loads to 80 % of the rating of a general-use snap switch"),
  continuousPercent: fromMemory(
    80,
    "210.20(A)",
    "210.19(A) and 210.20(A): 125 % of a continuous load, which is a load of 80 %",
  ),
  fastenedSharePercent: fromMemory(50, "210.23(A)", "210.23(A)(2), on a circuit of 15 or 20 A"),
  tamperResistantToIn: fromMemory(inches(66), "406.12", "406.12 exception: more than 5 1/2 ft above the floor"),
  weatherResistantPlaces: fromMemory<readonly RoomKind[]>(
    ["outdoor", "damp-wet-indoor"],
    "406.9",
    "406.9(A) and (B): damp and wet places",
  ),
} satisfies Partial<EditionValues>;

const ARC_FAULT_PLACES: readonly RoomKind[] = [
  "kitchen-counter",
  "kitchen-other",
  "laundry",
  "family",
  "dining",
  "living",
  "library",
  "den",
  "bedroom",
  "sunroom",
  "recreation",
  "closet",
  "hallway",
];

const arcFault = (extension: string) =>
  ({
    arcFaultPlaces: fromMemory(
      ARC_FAULT_PLACES,
      "210.12",
      "210.12, the list for dwellings; kitchens and laundries are on it since 2014",
    ),
    arcFaultToA: fromMemory(amps(20), "210.12", "210.12: circuits of 120 V, 15 and 20 A"),
    extensionFreeFt: {
      value: feet(6),
      section: extension,
      source: `${NFPA} ${extension} exception, 2014 and later: a trade forum's thread and a licence-renewal course state it`,
      confidence: "sourced",
    },
  }) satisfies Partial<EditionValues>;

export const ARC_FAULT_2017_2020 = arcFault("210.12(D)");
export const ARC_FAULT_2023 = arcFault("210.12(E)");

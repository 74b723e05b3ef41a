import { amps, type Feet, feet } from "../../units/quantity.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionValues, EquipmentGroundRow } from "./edition-data.ts";

const row = (upTo: number, copper: WireSize, aluminium: WireSize): EquipmentGroundRow => ({
  upToA: amps(upTo),
  copper,
  aluminium,
});

/** What does not change between the editions held. */
export const GROUNDING_OF_ALL = {
  equipmentGrounds: {
    value: [
      row(15, "14", "12"),
      row(20, "12", "10"),
      row(60, "10", "8"),
      row(100, "8", "6"),
      row(200, "6", "4"),
      row(300, "4", "2"),
      row(400, "3", "1"),
    ],
    section: "250.122",
    source:
      "NFPA 70 Table 250.122, reproduced by an engineering reference and, its copper column, by a trade newsletter",
    confidence: "sourced",
  },
  pipeFromEntryFt: {
    value: feet(5) as Feet,
    section: "250.52(A)(1), 250.68(C)",
    source: "NFPA 70 250.52(A)(1) and 250.68(C), from memory: within 5 ft of where the pipe enters the building",
    confidence: "from-memory",
  },
  parallelFromAwg: {
    value: "1/0" as WireSize,
    section: "310.10",
    source: "NFPA 70 310.10, from memory: conductors in parallel from 1/0 AWG up, exceptions aside",
    confidence: "unconfirmed",
  },
} satisfies Partial<EditionValues>;

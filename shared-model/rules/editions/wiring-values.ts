import { amps } from "../../units/quantity.ts";
import type { EditionValues, SmallConductorLimits, Sourced } from "./edition-data.ts";

const COPPER = { "18": amps(7), "16": amps(10), "14": amps(15), "12": amps(20), "10": amps(30) };
const ALUMINIUM = { "12": amps(15), "10": amps(25) };

const LIMITS: SmallConductorLimits = { copper: COPPER, aluminium: ALUMINIUM, "copper-clad-aluminium": ALUMINIUM };
const LIMITS_WITH_14_CLAD: SmallConductorLimits = {
  ...LIMITS,
  "copper-clad-aluminium": { "14": amps(10), ...ALUMINIUM },
};

const limits = (value: SmallConductorLimits, more = ""): Sourced<SmallConductorLimits> => ({
  value,
  section: "240.4(D)",
  source: `NFPA 70 240.4(D), from memory${more}`,
  confidence: "from-memory",
});

/** What does not change between the editions held. */
export const WIRING_OF_ALL = {
  wiresPerScrew: {
    value: 1,
    section: "110.14(A)",
    source: "NFPA 70 110.14(A), from memory: one wire unless the terminal is marked for more",
    confidence: "from-memory",
  },
} satisfies Partial<EditionValues>;

export const SMALL_CONDUCTORS_BEFORE_2023 = { smallConductorAmps: limits(LIMITS) } satisfies Partial<EditionValues>;

export const SMALL_CONDUCTORS_FROM_2023 = {
  smallConductorAmps: limits(
    LIMITS_WITH_14_CLAD,
    "; the row for 14 AWG copper-clad aluminium is doubtful: one maker dates it 2026",
  ),
} satisfies Partial<EditionValues>;

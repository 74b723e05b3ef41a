import type { SectionConfidence } from "../../answers/finding.ts";
import { amps, type Inches, inches } from "../../units/quantity.ts";
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

const DROP_SECTION = "210.19, Informational Note";
const DROP_SOURCE =
  "NFPA 70 210.19 and 215.2, Informational Notes, which recommend and do not require; the figures are stated by a licence-preparation site and a trade magazine, the number of the note differs by edition";

/** What does not change between the editions held. */
export const WIRING_OF_ALL = {
  readilyReachedToIn: {
    value: inches(79),
    section: "404.8(A)",
    source:
      "NFPA 70 404.8(A), from memory: 6 ft 7 in. for switches; no height is given for TEST and RESET, so this is common practice",
    confidence: "from-memory",
  },
  wiresPerScrew: {
    value: 1,
    section: "110.14(A)",
    source: "NFPA 70 110.14(A), from memory: one wire unless the terminal is marked for more",
    confidence: "from-memory",
  },
  wiresPerHole: {
    value: 1,
    section: "110.14(A)",
    source: "NFPA 70 110.14(A), from memory: one wire in a hole unless it is marked for more",
    confidence: "from-memory",
  },
  branchDropPercent: { value: 3, section: DROP_SECTION, source: DROP_SOURCE, confidence: "sourced" },
  totalDropPercent: { value: 5, section: DROP_SECTION, source: DROP_SOURCE, confidence: "sourced" },
  statedLoadPercent: {
    value: 80,
    section: "",
    source: "common practice: what a breaker carries for hours is kept to 80 % of its rating; a figure of our own",
    confidence: "own-rule",
  },
} satisfies Partial<EditionValues>;

const unclamped = (value: number, what: string, confidence: SectionConfidence): Sourced<Inches> => ({
  value: inches(value),
  section: "314.17",
  source: `NFPA 70 314.17(C) Exception up to 2020, renumbered in 2023, from memory: ${what}`,
  confidence,
});

const unclampedEntries = (confidence: SectionConfidence) =>
  ({
    unclampedFastenedWithinIn: unclamped(8, "fastened within 8 in. of the box, along the sheath", confidence),
    unclampedSheathInsideIn: unclamped(0.25, "at least 1/4 in. of sheath inside the box", confidence),
  }) satisfies Partial<EditionValues>;

export const ENTRIES_BEFORE_2023 = unclampedEntries("from-memory");
export const ENTRIES_FROM_2023 = unclampedEntries("doubtful");

export const SMALL_CONDUCTORS_BEFORE_2023 = { smallConductorAmps: limits(LIMITS) } satisfies Partial<EditionValues>;

export const SMALL_CONDUCTORS_FROM_2023 = {
  smallConductorAmps: limits(
    LIMITS_WITH_14_CLAD,
    "; the row for 14 AWG copper-clad aluminium is doubtful: one maker dates it 2026",
  ),
} satisfies Partial<EditionValues>;

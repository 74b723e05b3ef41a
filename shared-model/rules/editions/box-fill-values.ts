import { inches } from "../../units/quantity.ts";
import { type CubicInches, cubicInches } from "../../units/volume.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionValues, Sourced } from "./edition-data.ts";

const NFPA = "NFPA 70";

const ALLOWANCES: Readonly<Partial<Record<WireSize, CubicInches>>> = {
  "18": cubicInches(1.5),
  "16": cubicInches(1.75),
  "14": cubicInches(2),
  "12": cubicInches(2.25),
  "10": cubicInches(2.5),
  "8": cubicInches(3),
  "6": cubicInches(5),
};

const sourced = <T>(value: T, section: string, source: string): Sourced<T> => ({
  value,
  section,
  source,
  confidence: "sourced",
});
const fromMemory = <T>(value: T, section: string, source: string): Sourced<T> => ({
  value,
  section,
  source,
  confidence: "from-memory",
});

/** Counting of box fill that is the same in every edition held, 2011 and later. */
export const COUNTING_OF_ALL = {
  conductorAllowance: sourced(
    ALLOWANCES,
    "314.16(B)(1)",
    `${NFPA} Table 314.16(B), headed 314.16(B)(1) in recent editions; 18, 16 and 6 AWG from memory, borne out by the conductor counts of Table 314.16(A)`,
  ),
  loopLengthIn: sourced(
    inches(12),
    "314.16(B)(1)",
    `${NFPA} 314.16(B)(1), twice the 6 in. of 300.14; a trade journal's answer states 12 in. and a count of two`,
  ),
  loopAllowances: sourced(2, "314.16(B)(1)", `${NFPA} 314.16(B)(1), as quoted in trade publications`),
  canopyWiresLeftOut: fromMemory(
    4,
    "314.16(B)(1) Exception",
    `${NFPA} 314.16(B)(1) Exception: up to four fixture wires thinner than 14 AWG, with an equipment grounding conductor`,
  ),
  clampAllowances: sourced(1, "314.16(B)(2)", `${NFPA} 314.16(B)(2), as explained in exam-preparation texts`),
  supportAllowances: sourced(
    1,
    "314.16(B)(3)",
    `${NFPA} 314.16(B)(3); a published quiz counts a stud and a hickey one each`,
  ),
  deviceAllowancesPerGang: sourced(
    2,
    "314.16(B)(4)",
    `${NFPA} 314.16(B)(4): two for each yoke, and for each gang that a wide device needs; by the largest conductor on it`,
  ),
} satisfies Partial<EditionValues>;

const FOUR_GROUNDS = "trade forum threads on the 2020 change, and lecture notes, work it out with figures";

/** Grounds through the 2017 edition: one allowance for all of them, one more for a set of isolated grounds. */
export const GROUNDS_BEFORE_2020 = {
  groundsInFirstAllowance: sourced(4, "314.16(B)(5)", `no effect: in this edition later grounds add nothing`),
  quartersPerFurtherGround: sourced(
    0,
    "314.16(B)(5)",
    `${NFPA} 314.16(B)(5): a single allowance, as a trade magazine's series on box fill states`,
  ),
  isolatedSetAllowances: fromMemory(1, "314.16(B)(5)", `${NFPA} 314.16(B)(5) with 250.146(D)`),
} satisfies Partial<EditionValues>;

/** Grounds from the 2020 edition: one allowance covers four, each further one adds a quarter of it. */
export const GROUNDS_FROM_2020 = {
  groundsInFirstAllowance: sourced(4, "314.16(B)(5)", `${NFPA} 314.16(B)(5); ${FOUR_GROUNDS}`),
  quartersPerFurtherGround: sourced(1, "314.16(B)(5)", `${NFPA} 314.16(B)(5); ${FOUR_GROUNDS}`),
  isolatedSetAllowances: fromMemory(
    0,
    "314.16(B)(5)",
    `${NFPA} 314.16(B)(5): the sentence on isolated grounds is gone, so they count with the rest; no source states it`,
  ),
} satisfies Partial<EditionValues>;

export const BLOCKS_BEFORE_2023 = {
  terminalBlockAllowances: sourced(0, "314.16(B)", `${NFPA} 314.16(B) has no item for terminal blocks before 2023`),
} satisfies Partial<EditionValues>;

export const BLOCKS_FROM_2023 = {
  terminalBlockAllowances: sourced(
    1,
    "314.16(B)(6)",
    `${NFPA} 314.16(B)(6), new in 2023: a code quiz and a licence-renewal course state it`,
  ),
} satisfies Partial<EditionValues>;

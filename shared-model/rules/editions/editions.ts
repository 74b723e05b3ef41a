import type { Edition } from "../../model/project.ts";
import {
  BLOCKS_BEFORE_2023,
  BLOCKS_FROM_2023,
  COUNTING_OF_ALL,
  GROUNDS_BEFORE_2020,
  GROUNDS_FROM_2020,
} from "./box-fill-values.ts";
import { BOXES_FROM_2023, BOXES_OF_ALL } from "./box-values.ts";
import { CANADIAN } from "./canadian-values.ts";
import type { EditionData, EditionValues } from "./edition-data.ts";
import { GROUNDING_OF_ALL } from "./grounding-values.ts";
import { ARC_FAULT_2017_2020, ARC_FAULT_2023, OCCUPANCY_OF_ALL } from "./occupancy-values.ts";
import { POLARITY_OF_ALL, SWITCHES_2011, SWITCHES_2014, SWITCHES_FROM_2017 } from "./polarity-values.ts";
import { PROTECTION_2017, PROTECTION_2020, PROTECTION_2023 } from "./protection-values.ts";
import {
  ENTRIES_BEFORE_2023,
  ENTRIES_FROM_2023,
  SMALL_CONDUCTORS_BEFORE_2023,
  SMALL_CONDUCTORS_FROM_2023,
  WIRING_OF_ALL,
} from "./wiring-values.ts";

const TO_2017: EditionValues = {
  ...COUNTING_OF_ALL,
  ...GROUNDS_BEFORE_2020,
  ...BLOCKS_BEFORE_2023,
  ...BOXES_OF_ALL,
  ...WIRING_OF_ALL,
  ...GROUNDING_OF_ALL,
  ...OCCUPANCY_OF_ALL,
  ...POLARITY_OF_ALL,
  ...SWITCHES_FROM_2017,
  ...ENTRIES_BEFORE_2023,
  ...SMALL_CONDUCTORS_BEFORE_2023,
};

const IN_2020: EditionValues = { ...TO_2017, ...GROUNDS_FROM_2020, ...PROTECTION_2020, ...ARC_FAULT_2017_2020 };

const IN_2023: EditionValues = {
  ...IN_2020,
  ...BLOCKS_FROM_2023,
  ...BOXES_FROM_2023,
  ...ENTRIES_FROM_2023,
  ...SMALL_CONDUCTORS_FROM_2023,
  ...PROTECTION_2023,
  ...ARC_FAULT_2023,
};

const edition = (year: Edition, values: EditionValues, countingOnly = false): EditionData => ({
  year,
  verified: true,
  textOf: year,
  countingOnly,
  countsBy: "nfpa-70",
  values,
});

/** Rules that judge by the count of box fill alone. */
const COUNTING_RULES: ReadonlySet<string> = new Set(["box-overfull", "box-volume-unknown", "fill-nearly-full"]);
/** Rules of NFPA 70 that explain its count. */
const EXPLAIN_THE_COUNT: ReadonlySet<string> = new Set(["egc-edition-difference", "ring-volume-unmarked"]);

/** Every edition held. 2026 answers with the 2023 text and is flagged as not verified. */
export const editions: Readonly<Record<Edition, EditionData>> = {
  2011: edition(2011, { ...TO_2017, ...SWITCHES_2011 }, true),
  2014: edition(2014, { ...TO_2017, ...SWITCHES_2014 }, true),
  2017: edition(2017, { ...TO_2017, ...PROTECTION_2017, ...ARC_FAULT_2017_2020 }),
  2020: edition(2020, IN_2020),
  2023: edition(2023, IN_2023),
  2026: { ...edition(2026, IN_2023), verified: false, textOf: 2023 },
  "CSA-C22.1": { ...edition("CSA-C22.1", CANADIAN, true), countsBy: "csa-c22.1", covers: COUNTING_RULES },
};

export const getEdition = (year: Edition): EditionData => editions[year];

/** Whether a rule runs by an edition at all. */
export const coversRule = ({ covers }: EditionData, ruleId: string): boolean => covers?.has(ruleId) ?? true;

/**
 * The edition whose text stands in where a rule judges by one that was not looked up for it: 2023 for 2026, and 2017 for
 * the editions of which only the count of box fill is held. Undefined where the edition's own text is held.
 */
export function standInFor(
  { verified, textOf, countingOnly, covers }: EditionData,
  ruleId: string,
): Edition | undefined {
  if (!verified) return textOf;
  if (!countingOnly || covers !== undefined || COUNTING_RULES.has(ruleId) || EXPLAIN_THE_COUNT.has(ruleId))
    return undefined;
  return 2017;
}

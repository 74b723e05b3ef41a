import type { Edition } from "../../model/project.ts";
import {
  BLOCKS_BEFORE_2023,
  BLOCKS_FROM_2023,
  COUNTING_OF_ALL,
  GROUNDS_BEFORE_2020,
  GROUNDS_FROM_2020,
} from "./box-fill-values.ts";
import type { EditionData, EditionValues } from "./edition-data.ts";
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
  ...WIRING_OF_ALL,
  ...ENTRIES_BEFORE_2023,
  ...SMALL_CONDUCTORS_BEFORE_2023,
};

const IN_2020: EditionValues = { ...TO_2017, ...GROUNDS_FROM_2020, ...PROTECTION_2020 };

const IN_2023: EditionValues = {
  ...IN_2020,
  ...BLOCKS_FROM_2023,
  ...ENTRIES_FROM_2023,
  ...SMALL_CONDUCTORS_FROM_2023,
  ...PROTECTION_2023,
};

const edition = (year: Edition, values: EditionValues, countingOnly = false): EditionData => ({
  year,
  verified: true,
  textOf: year,
  countingOnly,
  values,
});

/** Every edition held. 2026 answers with the 2023 text and is flagged as not verified. */
export const editions: Readonly<Record<Edition, EditionData>> = {
  2011: edition(2011, TO_2017, true),
  2014: edition(2014, TO_2017, true),
  2017: edition(2017, { ...TO_2017, ...PROTECTION_2017 }),
  2020: edition(2020, IN_2020),
  2023: edition(2023, IN_2023),
  2026: { ...edition(2026, IN_2023), verified: false, textOf: 2023 },
};

export const getEdition = (year: Edition): EditionData => editions[year];

import type { SectionConfidence } from "../../answers/finding.ts";
import type { RoomKind } from "../../model/room.ts";
import { amps, type Inches, inches } from "../../units/quantity.ts";
import type { EditionValues, Sourced } from "./edition-data.ts";

const NFPA = "NFPA 70";

const inchesOf = (
  value: number,
  section: string,
  source: string,
  confidence: SectionConfidence = "sourced",
): Sourced<Inches> => ({ value: inches(value), section, source: `${NFPA} ${source}`, confidence });

const FREE = "as a trade magazine's answer and a training site state it";
const DEPTH = "as a licence-renewal course quotes the texts of 2020 and 2023; earlier editions from memory";
const SETBACK = "from memory";

/** Where a fan is expected overhead: our reading of habitable rooms, which the code does not list. */
const FAN_PLACES: readonly RoomKind[] = [
  "bedroom",
  "living",
  "dining",
  "family",
  "den",
  "library",
  "sunroom",
  "recreation",
  "kitchen-counter",
  "kitchen-other",
];

/** Boxes and what hangs on them, through the 2020 edition. */
export const BOXES_OF_ALL = {
  sheathInsideIn: inchesOf(0.25, "314.17", "314.17(C) up to 2020, renumbered in 2023, from memory", "from-memory"),
  freeLengthIn: inchesOf(6, "300.14", `300.14, ${FREE}`),
  outsideOpeningIn: inchesOf(3, "300.14", `300.14, ${FREE}`),
  smallOpeningIn: inchesOf(8, "300.14", `300.14, ${FREE}`),
  behindDeviceIn: inchesOf(0.25, "314.24(B)", `314.24(B)(1) and (4), ${DEPTH}`),
  deepDeviceIn: inchesOf(1.875, "314.24(B)(1)", "314.24(B)(1), as quoted in a trade forum"),
  deepDeviceOnThickIn: inchesOf(1, "314.24(B)(4)", `314.24(B)(4), for 12 and 10 AWG, ${DEPTH}`),
  setbackIn: inchesOf(0.25, "314.20", `314.20, ${SETBACK}`, "from-memory"),
  setbackCombustibleIn: inchesOf(0, "314.20", `314.20, ${SETBACK}: flush`, "from-memory"),
  luminaireOnBoxLb: {
    value: 50,
    section: "314.27(A)",
    source: `${NFPA} 314.27(A)(1) and (2), as a licence-renewal course (2011, 2014) and a trade magazine (2017) quote it`,
    confidence: "sourced",
  },
  luminaireOnAnyBoxLb: {
    value: 6,
    section: "314.27(A)(1) Exception",
    source: `${NFPA} 314.27(A)(1) Exception, as a licence-renewal course (2011, 2014) quotes it: in a wall, by two No. 6 screws`,
    confidence: "sourced",
  },
  fanUnmarkedLb: {
    value: 35,
    section: "314.27(C)",
    source: `${NFPA} 314.27(C), as a trade magazine answers for 2017`,
    confidence: "sourced",
  },
  fanOnBoxLb: {
    value: 70,
    section: "314.27(C)",
    source: `${NFPA} 314.27(C), as a trade magazine answers for 2017`,
    confidence: "sourced",
  },
  spareConductorsForFanBox: {
    value: 1,
    section: "314.27(C)",
    source: `${NFPA} 314.27(C), as a trade magazine quotes 2017: spare, separately switched, ungrounded conductors`,
    confidence: "sourced",
  },
  fanPlaces: {
    value: FAN_PLACES,
    section: "314.27(C)",
    source: `our reading of a location acceptable for a fan (${NFPA} 314.27(C)), which is not listed`,
    confidence: "unconfirmed",
  },
  inUseCoverUpToA: {
    value: amps(20),
    section: "406.9(B)(1)",
    source: `${NFPA} 406.9(B)(1): 15 and 20 A, as a trade magazine's answer of 2015 states it`,
    confidence: "sourced",
  },
} satisfies Partial<EditionValues>;

/** 2023 drops the spare conductor: every ceiling box of a habitable room where a fan may come. */
export const BOXES_FROM_2023 = {
  sheathInsideIn: { ...BOXES_OF_ALL.sheathInsideIn, confidence: "doubtful" },
  spareConductorsForFanBox: {
    value: 0,
    section: "314.27(C)",
    source: `${NFPA} 314.27(C), new text of 2023 as quoted in a trade forum: listed, or with framing in reach behind it`,
    confidence: "sourced",
  },
} satisfies Partial<EditionValues>;

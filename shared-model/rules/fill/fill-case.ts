import type { FillItem, FillVerdict } from "../../answers/fill.ts";
import type { Edition } from "../../model/project.ts";
import { addVolumes, type CubicInches, exceedsVolume, subtractVolume, toDecimal } from "../../units/volume.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { getEdition } from "../editions/editions.ts";
import { type BoxContents, countFill } from "./count-fill.ts";

/** A box without a drawing: the worksheet of the `fill` verb, after it was read. Volumes are exact. */
export interface FillCase {
  readonly id: string | null;
  readonly edition: Edition;
  /** Volume of the box alone; absent when not known. */
  readonly box?: CubicInches;
  readonly rings: readonly CubicInches[];
  readonly contents: BoxContents;
}

/** The answer to a worksheet, as it is printed: volumes in decimal in³, `null` where there is none. */
export interface FillAnswer {
  readonly id: string | null;
  readonly edition: Edition;
  readonly editionVerified: boolean;
  readonly lines: readonly {
    readonly item: FillItem;
    readonly awg: WireSize;
    readonly count: number;
    readonly eachIn3: number;
    readonly in3: number;
    readonly section: string;
  }[];
  readonly totalIn3: number | null;
  readonly volumeIn3: number | null;
  readonly spareIn3: number | null;
  readonly verdict: FillVerdict;
  /** Only with `not-applicable`. */
  readonly why?: string;
}

/** Answers one worksheet. Exactly full fits. */
export function fillCase(worksheet: FillCase, edition: EditionData = getEdition(worksheet.edition)): FillAnswer {
  const head = { id: worksheet.id, edition: edition.year, editionVerified: edition.verified };
  const volume = worksheet.box === undefined ? undefined : addVolumes(worksheet.box, ...worksheet.rings);
  const volumeIn3 = volume === undefined ? null : toDecimal(volume);
  const counted = countFill(worksheet.contents, edition);
  if (!counted.applies) {
    return {
      ...head,
      lines: [],
      totalIn3: null,
      volumeIn3,
      spareIn3: null,
      verdict: "not-applicable",
      why: counted.reason,
    };
  }
  const lines = counted.lines.map(({ item, awg, count, each, volume: in3, section }) => ({
    item,
    awg,
    count,
    eachIn3: toDecimal(each),
    in3: toDecimal(in3),
    section,
  }));
  const { total } = counted;
  const answer = { ...head, lines, totalIn3: toDecimal(total), volumeIn3 };
  if (volume === undefined) return { ...answer, spareIn3: null, verdict: "volume-unknown" };
  const verdict = exceedsVolume(total, volume) ? "overfull" : "fits";
  return { ...answer, spareIn3: toDecimal(subtractVolume(volume, total)), verdict };
}

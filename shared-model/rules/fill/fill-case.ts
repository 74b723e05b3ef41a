import type { FillItem, FillLine, FillVerdict } from "../../answers/fill.ts";
import type { Edition } from "../../model/project.ts";
import { addMillilitres, type Millilitres, toDecimalMl } from "../../units/millilitres.ts";
import { addVolumes, type CubicInches, subtractVolume, toDecimal } from "../../units/volume.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { getEdition } from "../editions/editions.ts";
import type { BoxContents } from "./box-contents.ts";
import { countFill } from "./count-fill.ts";

/** A box without a drawing: the worksheet of the `fill` verb, after it was read. Volumes are exact. */
export interface FillCase {
  readonly id: string | null;
  readonly edition: Edition;
  /** Volume of the box alone; absent when not known. */
  readonly box?: CubicInches;
  readonly rings: readonly CubicInches[];
  /** Instead of both, where the box is marked in millilitres: it is then judged in them. */
  readonly marked?: { readonly box: Millilitres; readonly rings: readonly Millilitres[] };
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
    /** Only by a rule set whose table is in millilitres. */
    readonly eachMl?: number;
    readonly ml?: number;
  }[];
  readonly totalIn3: number | null;
  readonly volumeIn3: number | null;
  readonly spareIn3: number | null;
  /** Only by a rule set whose table is in millilitres; volume and spare where the box is marked in them, else null. */
  readonly totalMl?: number | null;
  readonly volumeMl?: number | null;
  readonly spareMl?: number | null;
  readonly verdict: FillVerdict;
  /** Only with `not-applicable`. */
  readonly why?: string;
}

/** Answers one worksheet. Exactly full fits, in the unit in which the volume of the box is told. */
export function fillCase(worksheet: FillCase, edition: EditionData = getEdition(worksheet.edition)): FillAnswer {
  const { marked } = worksheet;
  const head = { id: worksheet.id, edition: edition.year, editionVerified: edition.verified };
  const volume = worksheet.box === undefined ? undefined : addVolumes(worksheet.box, ...worksheet.rings);
  const volumeIn3 = volume === undefined ? null : toDecimal(volume);
  const volumeMl = marked === undefined ? undefined : addMillilitres(marked.box, ...marked.rings);
  const hasMl = edition.values.conductorMl !== undefined;
  const counted = countFill(worksheet.contents, edition);
  if (!counted.applies) {
    return {
      ...head,
      lines: [],
      totalIn3: null,
      volumeIn3,
      spareIn3: null,
      ...(hasMl && { totalMl: null, volumeMl: decimalMl(volumeMl), spareMl: null }),
      verdict: "not-applicable",
      why: counted.reason,
    };
  }
  const { total, totalMl } = counted;
  const spare = volume === undefined ? undefined : subtractVolume(volume, total);
  const spareMl = volumeMl === undefined || totalMl === undefined ? undefined : ((volumeMl - totalMl) as Millilitres);
  return {
    ...head,
    lines: counted.lines.map(asPrinted),
    totalIn3: toDecimal(total),
    volumeIn3,
    spareIn3: spare === undefined ? null : toDecimal(spare),
    ...(hasMl && { totalMl: decimalMl(totalMl), volumeMl: decimalMl(volumeMl), spareMl: decimalMl(spareMl) }),
    verdict: verdictOf(spareMl ?? spare),
  };
}

function verdictOf(spare: number | undefined): FillVerdict {
  if (spare === undefined) return "volume-unknown";
  return spare < 0 ? "overfull" : "fits";
}

const decimalMl = (volume: Millilitres | undefined): number | null =>
  volume === undefined ? null : toDecimalMl(volume);

const asPrinted = ({ item, awg, count, each, volume, section, ml }: FillLine): FillAnswer["lines"][number] => ({
  item,
  awg,
  count,
  eachIn3: toDecimal(each),
  in3: toDecimal(volume),
  section,
  ...(ml !== undefined && { eachMl: toDecimalMl(ml.each), ml: toDecimalMl(ml.volume) }),
});

import { type Millilitres, millilitres } from "../../units/millilitres.ts";
import { inches } from "../../units/quantity.ts";
import { type CubicInches, cubicInches } from "../../units/volume.ts";
import type { WireSize } from "../../units/wire-size.ts";
import type { EditionValues, Sourced, TableBox } from "./edition-data.ts";

const CSA = "CSA C22.1";
const TEXT = `${CSA} Rule 12-3034, as a provincial code site and an industry magazine give its text`;

const of = (confidence: Sourced<unknown>["confidence"]) => {
  return <T>(value: T, section: string, source: string): Sourced<T> => ({ value, section, source, confidence });
};
const sourced = of("sourced");
const fromMemory = of("from-memory");
const doubtful = of("doubtful");

/** Millilitres as Table 22 prints them, and the cubic inches that they were made from. */
const TABLE_22: Readonly<Partial<Record<WireSize, readonly [in3: number, ml: number]>>> = {
  "14": [1.5, 24.6],
  "12": [1.75, 28.7],
  "10": [2.25, 36.9],
  "8": [2.75, 45.1],
  "6": [4.5, 73.7],
};

const TABLE_22_SOURCE =
  "12 and 8 AWG as an exam guide prints them, 14 AWG in a trade forum; 10 and 6 AWG from memory, borne out by the cubic inches";

function tableOf<T>(pick: (in3: number, ml: number) => T): Readonly<Partial<Record<WireSize, T>>> {
  const rows = Object.entries(TABLE_22).map(([awg, [in3, ml]]) => [awg, pick(in3, ml)] as const);
  return Object.fromEntries(rows) as Partial<Record<WireSize, T>>;
}

const box = (in3: number, ml: number): TableBox => ({ in3: cubicInches(in3), ml: millilitres(ml) });

/**
 * Boxes of Table 23 under the names of the stock. The table prints whole millilitres, cut off, and counts of conductors;
 * the counts follow from the cubic inches that the millilitres were made from, and not from the millilitres.
 */
const TABLE_23: Readonly<Record<string, TableBox>> = {
  "4x1-1/2 round/octagonal": box(15, 245),
  "4x2-1/8 round/octagonal": box(21, 344),
  "4x1-1/2 square": box(21, 344),
  "4x2-1/8 square": box(30, 491),
  "4-11/16x1-1/2 square": box(30, 491),
  "4-11/16x2-1/8 square": box(42, 688),
  "4x1/2 round": box(5, 81),
  "3x2x1-1/2 device": box(8, 131),
  "3x2x2 device": box(10, 163),
  "3x2x2-1/4 device": box(10, 163),
  "3x2x2-1/2 device": box(12.5, 204),
  "3x2x3 device": box(15, 245),
  "3-3/4x2x2-1/2 masonry, per gang": box(14, 229),
  "3-3/4x2x3-1/2 masonry, per gang": box(21, 344),
};

/** What the count by CSA C22.1 reads. Nothing else of that code is held. */
const COUNTING = {
  conductorAllowance: sourced<Readonly<Partial<Record<WireSize, CubicInches>>>>(
    tableOf((in3) => cubicInches(in3)),
    "12-3034 and Table 22",
    `${CSA} Table 22; ${TABLE_22_SOURCE}`,
  ),
  conductorMl: sourced<Readonly<Partial<Record<WireSize, Millilitres>>>>(
    tableOf((_in3, ml) => millilitres(ml)),
    "12-3034 and Table 22",
    `${CSA} Table 22; ${TABLE_22_SOURCE}`,
  ),
  tableBoxes: fromMemory(
    TABLE_23,
    "Table 23",
    `${CSA} Table 23, from memory; its counts equal the cubic inches divided by those of Table 22`,
  ),
  connectorsPerAllowance: sourced(
    2,
    "12-3034",
    `${TEXT}: one for each pair of insulated connectors, a single one left over counts nothing`,
  ),
  supportAllowances: sourced(1, "12-3034", `${TEXT}: one each; an older text counts them one in all`),
  deviceAllowancesPerGang: sourced(
    2,
    "12-3034",
    `${TEXT}: two for each flush device on a single strap; two for each gang of a wider one is the cautious reading`,
  ),
  deepDeviceFromIn: sourced(inches(1), "12-3034", `${TEXT}: more than 2.54 cm behind the strap`),
  deepDeviceMlPerCm: doubtful(
    32,
    "12-3034",
    `${TEXT}: 32 mL for each centimetre of depth; that it takes the place of the two conductors is not certain`,
  ),
  clampAllowances: sourced(0, "12-3034(5)", `${CSA} Rule 12-3034(5), quoted in part in a trade forum; an exam guide`),
  groundAllowances: sourced(0, "12-3034(5)", `${CSA} Rule 12-3034(5), quoted in part in a trade forum; an exam guide`),
} satisfies Partial<EditionValues>;

/**
 * The rules that run by it read no other value. One that did would fail, and say so, which is better than a number of
 * another code.
 */
export const CANADIAN: EditionValues = COUNTING as Partial<EditionValues> as EditionValues;

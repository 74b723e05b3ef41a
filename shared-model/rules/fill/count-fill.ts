import type { FillItem, FillLine } from "../../answers/fill.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { addVolumes, type CubicInches, quarterOf, timesVolume } from "../../units/volume.ts";
import { isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EditionData, EditionValues } from "../editions/edition-data.ts";
import {
  addCount,
  allowanceLine,
  allowanceOf,
  type BoxContents,
  type CountedFill,
  linesBySize,
  thickestFirst,
} from "./box-contents.ts";
import { countCanadian } from "./count-canadian.ts";

const wording = catalogue({
  tooThick: (awg: Part) =>
    `${awg} AWG is present: counting by allowances ends at 6 AWG, and from 4 AWG up the rules for pull boxes govern (314.28).`,
});

/**
 * Counts box fill, line by line, exactly. Conductors stand first, each size on a line of its own from the thickest down.
 * Answers that the rule does not apply when any conductor is thicker than the largest size with an allowance (6 AWG).
 */
export function countFill(contents: BoxContents, edition: EditionData): CountedFill {
  const { values, countsBy } = edition;
  if (countsBy === "csa-c22.1") return countCanadian(contents, values);
  const tooThick = sizesIn(contents).find((awg) => values.conductorAllowance.value[awg] === undefined);
  if (tooThick !== undefined) {
    return {
      applies: false,
      reason: wording.tooThick(tooThick),
    };
  }
  const largest = thickestOf(present(contents));
  const lines = [
    ...conductorLines(contents, values),
    ...(contents.clamps ? ofLargest("clamps", largest, values.clampAllowances, values) : []),
    ...ofLargest(
      "supports",
      largest,
      {
        ...values.supportAllowances,
        value: values.supportAllowances.value * new Set(contents.supports).size,
      },
      values,
    ),
    ...linesBySize("devices", deviceCounts(contents, values), values.deviceAllowancesPerGang.section, values),
    ...groundLines(contents, values),
    ...linesBySize("terminal-blocks", blockCounts(contents, values), values.terminalBlockAllowances.section, values),
  ];
  return { applies: true, lines, total: addVolumes(...lines.map((line) => line.volume)) };
}

/** Conductors and grounds: what "the largest conductor in the box" is chosen from. */
function present(contents: BoxContents): readonly WireSize[] {
  return [...contents.conductors, ...contents.grounds].filter(({ count }) => count > 0).map(({ awg }) => awg);
}

const sizesIn = (contents: BoxContents): readonly WireSize[] => [
  ...present(contents),
  ...contents.devices.map(({ awg }) => awg),
  ...contents.terminalBlocks,
];

function conductorLines(contents: BoxContents, values: EditionValues): readonly FillLine[] {
  const counts = new Map<WireSize, number>();
  const canopy = new Map<WireSize, number>();
  for (const { awg, count, as } of contents.conductors) {
    if (as === "inside") continue;
    if (as === "canopy" && isThicker("14", awg)) addCount(canopy, awg, count);
    else addCount(counts, awg, count * (as === "loop" ? values.loopAllowances.value : 1));
  }
  // The exception lets a person leave out any four, so the thickest go first.
  let left = values.canopyWiresLeftOut.value;
  for (const [awg, count] of thickestFirst(canopy)) {
    const out = Math.min(left, count);
    left -= out;
    addCount(counts, awg, count - out);
  }
  return linesBySize("conductors", counts, values.conductorAllowance.section, values);
}

function deviceCounts(contents: BoxContents, values: EditionValues): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const { awg, gangs } of contents.devices) addCount(counts, awg, gangs * values.deviceAllowancesPerGang.value);
  return counts;
}

function blockCounts(contents: BoxContents, values: EditionValues): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const awg of contents.terminalBlocks) addCount(counts, awg, values.terminalBlockAllowances.value);
  return counts;
}

/** Grounds go by the largest of them. Where isolated grounds have an allowance of their own they are a set apart. */
function groundLines(contents: BoxContents, values: EditionValues): readonly FillLine[] {
  const apart = values.isolatedSetAllowances.value;
  const entering = contents.grounds.filter(({ count }) => count > 0);
  const isolated = apart > 0 ? entering.filter((ground) => ground.isolated) : [];
  const others = apart > 0 ? entering.filter((ground) => !ground.isolated) : entering;
  return [...setLines(others, 1, values), ...setLines(isolated, apart, values)];
}

function setLines(set: BoxContents["grounds"], first: number, values: EditionValues): readonly FillLine[] {
  const awg = thickestOf(set.map((ground) => ground.awg));
  if (awg === undefined) return [];
  const count = set.reduce((sum, ground) => sum + ground.count, 0);
  const further = Math.max(0, count - values.groundsInFirstAllowance.value);
  const quarters = further * values.quartersPerFurtherGround.value;
  const { section } = values.quartersPerFurtherGround;
  return [
    allowanceLine("grounds", awg, first, section, values),
    ...(quarters > 0 ? [quarterLine(awg, quarters, quarterOf(allowanceOf(awg, values)), section)] : []),
  ];
}

function ofLargest(
  item: FillItem,
  largest: WireSize | undefined,
  allowances: { readonly value: number; readonly section: string },
  values: EditionValues,
): readonly FillLine[] {
  if (largest === undefined || allowances.value === 0) return [];
  return [allowanceLine(item, largest, allowances.value, allowances.section, values)];
}

const quarterLine = (awg: WireSize, count: number, each: CubicInches, section: string): FillLine => ({
  item: "grounds",
  awg,
  count,
  each,
  volume: timesVolume(each, count),
  section,
});

import type { FillItem, FillLine } from "../../answers/fill.ts";
import type { Support } from "../../model/enclosure.ts";
import { addVolumes, type CubicInches, quarterOf, timesVolume } from "../../units/volume.ts";
import { compareWireSize, isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EditionData, EditionValues } from "../editions/edition-data.ts";

/** How a conductor stands in a box: see the fill worksheet in the README. */
export const CONDUCTOR_STANDINGS = ["ends", "through", "loop", "inside", "canopy"] as const;
export type ConductorStanding = (typeof CONDUCTOR_STANDINGS)[number];

/** What a box holds, as far as box fill asks. Counts are whole and may be 0. */
export interface BoxContents {
  readonly conductors: readonly { readonly awg: WireSize; readonly count: number; readonly as: ConductorStanding }[];
  readonly grounds: readonly { readonly awg: WireSize; readonly count: number; readonly isolated: boolean }[];
  /** At least one internal clamp is present, used or not. */
  readonly clamps: boolean;
  readonly supports: readonly Support[];
  /** Per yoke: the largest conductor on it and the gangs that it covers. */
  readonly devices: readonly { readonly awg: WireSize; readonly gangs: number }[];
  /** Per terminal block assembly, the largest conductor on it. */
  readonly terminalBlocks: readonly WireSize[];
}

export type CountedFill =
  | { readonly applies: true; readonly lines: readonly FillLine[]; readonly total: CubicInches }
  | { readonly applies: false; readonly reason: string };

/**
 * Counts box fill, line by line, exactly. Conductors stand first, each size on a line of its own from the thickest down.
 * Answers that the rule does not apply when any conductor is thicker than the largest size with an allowance (6 AWG).
 */
export function countFill(contents: BoxContents, edition: EditionData): CountedFill {
  const { values } = edition;
  const tooThick = sizesIn(contents).find((awg) => values.conductorAllowance.value[awg] === undefined);
  if (tooThick !== undefined) {
    return {
      applies: false,
      reason: `${tooThick} AWG is present: counting by allowances ends at 6 AWG, and from 4 AWG up the rules for pull boxes govern (314.28).`,
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
    ...bySize("devices", deviceCounts(contents, values), values.deviceAllowancesPerGang.section, values),
    ...groundLines(contents, values),
    ...bySize("terminal-blocks", blockCounts(contents, values), values.terminalBlockAllowances.section, values),
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
    if (as === "canopy" && isThicker("14", awg)) add(canopy, awg, count);
    else add(counts, awg, count * (as === "loop" ? values.loopAllowances.value : 1));
  }
  // The exception lets a person leave out any four, so the thickest go first.
  let left = values.canopyWiresLeftOut.value;
  for (const [awg, count] of thickestFirst(canopy)) {
    const out = Math.min(left, count);
    left -= out;
    add(counts, awg, count - out);
  }
  return bySize("conductors", counts, values.conductorAllowance.section, values);
}

function deviceCounts(contents: BoxContents, values: EditionValues): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const { awg, gangs } of contents.devices) add(counts, awg, gangs * values.deviceAllowancesPerGang.value);
  return counts;
}

function blockCounts(contents: BoxContents, values: EditionValues): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const awg of contents.terminalBlocks) add(counts, awg, values.terminalBlockAllowances.value);
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
  const each = allowanceOf(awg, values);
  return [
    line("grounds", awg, first, each, section),
    ...(quarters > 0 ? [line("grounds", awg, quarters, quarterOf(each), section)] : []),
  ];
}

function ofLargest(
  item: FillItem,
  largest: WireSize | undefined,
  allowances: { readonly value: number; readonly section: string },
  values: EditionValues,
): readonly FillLine[] {
  if (largest === undefined || allowances.value === 0) return [];
  return [line(item, largest, allowances.value, allowanceOf(largest, values), allowances.section)];
}

function bySize(
  item: FillItem,
  counts: ReadonlyMap<WireSize, number>,
  section: string,
  values: EditionValues,
): readonly FillLine[] {
  return thickestFirst(counts)
    .filter(([, count]) => count > 0)
    .map(([awg, count]) => line(item, awg, count, allowanceOf(awg, values), section));
}

const line = (item: FillItem, awg: WireSize, count: number, each: CubicInches, section: string): FillLine => ({
  item,
  awg,
  count,
  each,
  volume: timesVolume(each, count),
  section,
});

function allowanceOf(awg: WireSize, values: EditionValues): CubicInches {
  const allowance = values.conductorAllowance.value[awg];
  if (allowance === undefined) throw new Error(`No allowance for ${awg} AWG.`);
  return allowance;
}

const thickestFirst = (counts: ReadonlyMap<WireSize, number>): readonly (readonly [WireSize, number])[] =>
  [...counts].sort(([a], [b]) => compareWireSize(b, a));

const add = (counts: Map<WireSize, number>, awg: WireSize, count: number): void => {
  counts.set(awg, (counts.get(awg) ?? 0) + count);
};

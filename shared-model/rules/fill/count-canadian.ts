import type { FillLine } from "../../answers/fill.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { addMillilitres, type Millilitres, ML_PER_IN3 } from "../../units/millilitres.ts";
import { addVolumes, type CubicInches } from "../../units/volume.ts";
import { compareWireSize, thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EditionValues } from "../editions/edition-data.ts";
import { addCount, type BoxContents, type CountedFill, linesBySize } from "./box-contents.ts";

const wording = catalogue({
  tooThick: (awg: Part) =>
    `${awg} AWG is present: Table 22 of CSA C22.1 is held from 14 to 6 AWG only. Judge this box by hand.`,
});

/** Fixture wires that lead to a luminaire on the box count nothing. */
const FIXTURE_WIRES: ReadonlySet<WireSize> = new Set(["18", "16"]);

/**
 * Counts box fill by CSA C22.1 Rule 12-3034: grounds and clamps count nothing, connectors by the pair. It does not
 * apply when a conductor has no row in Table 22 (14 to 6 AWG).
 */
export function countCanadian(contents: BoxContents, values: EditionValues): CountedFill {
  const { conductors, devices } = contents;
  const counts = new Map<WireSize, number>();
  for (const { awg, count, as } of conductors) {
    // Straight through or in a loop: without a joint it is one.
    if (as !== "inside" && !(as === "canopy" && FIXTURE_WIRES.has(awg))) addCount(counts, awg, count);
  }
  const connectors = contents.connectors ?? [];
  const ofGrounds = (values.groundAllowances?.value ?? 0) > 0 ? present(byAwg(contents.grounds)) : [];
  const ofConnectors = present(byAwg(connectors));
  const sizes = [...present(counts), ...ofConnectors, ...devices.map(({ awg }) => awg), ...ofGrounds];
  const without = sizes.find((awg) => values.conductorAllowance.value[awg] === undefined);
  if (without !== undefined) return { applies: false, reason: noRow(without) };
  const lines = [
    ...linesBySize("conductors", counts, values.conductorAllowance.section, values),
    ...connectorLines(connectors, values),
    ...supportLines(contents, thickestOf(present(counts)), values),
    ...deviceLines(contents, values),
    ...freeLines(contents, thickestOf(present(counts)), values),
  ];
  const total = addVolumes(...lines.map(({ volume }) => volume));
  const totalMl = addMillilitres(...lines.flatMap(({ ml }) => ml?.volume ?? []));
  return { applies: true, lines, total, totalMl };
}

const noRow = (awg: WireSize): string => wording.tooThick(awg);

const present = (counts: ReadonlyMap<WireSize, number>): readonly WireSize[] =>
  [...counts].flatMap(([awg, count]) => (count > 0 ? [awg] : []));

function byAwg(rows: readonly { readonly awg: WireSize; readonly count: number }[]): ReadonlyMap<WireSize, number> {
  const counts = new Map<WireSize, number>();
  for (const { awg, count } of rows) addCount(counts, awg, count);
  return counts;
}

/** So many together make one allowance, of the largest conductor under them; the thickest stand together. */
function connectorLines(
  connectors: NonNullable<BoxContents["connectors"]>,
  values: EditionValues,
): readonly FillLine[] {
  const each = values.connectorsPerAllowance;
  if (each === undefined || each.value < 1) return [];
  const counts = new Map<WireSize, number>();
  let before = 0;
  for (const [awg, count] of [...byAwg(connectors)].sort(([a], [b]) => compareWireSize(b, a))) {
    // A set belongs to the size of its first, its largest. One that is not full at the end counts nothing.
    const begun = Math.ceil((before + count) / each.value) - Math.ceil(before / each.value);
    before += count;
    addCount(counts, awg, begun);
  }
  if (before % each.value !== 0) {
    const last = [...counts].filter(([, count]) => count > 0).at(-1);
    if (last !== undefined) addCount(counts, last[0], -1);
  }
  return linesBySize("connectors", counts, each.section, values);
}

function supportLines(
  { supports }: BoxContents,
  largest: WireSize | undefined,
  values: EditionValues,
): readonly FillLine[] {
  const { value, section } = values.supportAllowances;
  if (largest === undefined) return [];
  return linesBySize("supports", new Map([[largest, value * new Set(supports).size]]), section, values);
}

/** Grounds and clamps: nothing, unless a local amendment counts them. */
function freeLines(
  { grounds, clamps }: BoxContents,
  largest: WireSize | undefined,
  values: EditionValues,
): readonly FillLine[] {
  const { groundAllowances, clampAllowances } = values;
  const counted = [...byAwg(grounds)].map(([awg, count]) => [awg, count * (groundAllowances?.value ?? 0)] as const);
  return [
    ...(clamps && largest !== undefined
      ? linesBySize("clamps", new Map([[largest, clampAllowances.value]]), clampAllowances.section, values)
      : []),
    ...linesBySize("grounds", new Map(counted), groundAllowances?.section ?? "", values),
  ];
}

/** A deep device takes room by its depth in place of conductors; one whose depth is not known is not deep. */
function deviceLines({ devices }: BoxContents, values: EditionValues): readonly FillLine[] {
  const { deviceAllowancesPerGang, deepDeviceFromIn, deepDeviceMlPerCm } = values;
  const counts = new Map<WireSize, number>();
  const deep: FillLine[] = [];
  for (const { awg, gangs, depthCm = 0 } of devices) {
    if (deepDeviceFromIn === undefined || deepDeviceMlPerCm === undefined || !isDeep(depthCm, deepDeviceFromIn.value)) {
      addCount(counts, awg, gangs * deviceAllowancesPerGang.value);
      continue;
    }
    const { section } = deepDeviceMlPerCm;
    const { in3, ml } = roomOfDepth(depthCm, deepDeviceMlPerCm.value);
    deep.push({ item: "deep-devices", awg, count: 1, each: in3, volume: in3, section, ml: { each: ml, volume: ml } });
  }
  deep.sort((a, b) => b.volume - a.volume || compareWireSize(b.awg, a.awg));
  return [...linesBySize("devices", counts, deviceAllowancesPerGang.section, values), ...deep];
}

const CM_PER_IN = 2.54;
/** A depth is known to a hundredth of a centimetre at best; what is beyond is noise of the arithmetic. */
const hundredths = (cm: number): number => Math.round(cm * 100);
const isDeep = (depthCm: number, fromIn: number): boolean => hundredths(depthCm) > hundredths(fromIn * CM_PER_IN);

/** Both rounded up to the step of their unit, so that a deep device never takes less than it does. */
function roomOfDepth(depthCm: number, mlPerCm: number): { readonly in3: CubicInches; readonly ml: Millilitres } {
  const hundredthsOfMl = hundredths(depthCm) * mlPerCm;
  return {
    in3: Math.ceil((hundredthsOfMl * 100) / ML_PER_IN3) as CubicInches,
    ml: Math.ceil(hundredthsOfMl / 10) as Millilitres,
  };
}

import type { StepReading } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { ExpectedTest } from "../../model/test-record.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import { RESULT_TITLES } from "../../queries/record-words.ts";
import { RECORD_WITHIN_NEUTRAL_V, RECORD_WITHIN_V } from "../../solver/circuit/instrument-values.ts";
import type { VoltReading } from "../../solver/circuit/instruments.ts";
import type { OutletReading } from "../../solver/circuit/readings.ts";

/** Pairs of an outlet that are measured. */
export const PAIR_WORDS = catalogue({
  hg: "hot to ground",
  hn: "hot to neutral",
  ng: "neutral to ground",
});

/** "R3 hot to neutral". */
export const pairAt = (outlet: string, pair: keyof typeof PAIR_WORDS): string => wording.at(outlet, PAIR_WORDS[pair]);

const wording = catalogue({
  at: (outlet: Part, pair: Part) => `${outlet} ${pair}`,
  dark: (outlets: Part, count: Part) => `${outlets} ${count === 1 ? "goes" : "go"} dark`,
  floats: "no steady reading: it floats; 0 V on a low-impedance meter",
  nothingDark: "nothing goes dark",
  off: "off",
  tester: (outlet: Part) => `${outlet} plug-in tester`,
  within: (volts: Part, within: Part) => `${volts}, within ${within} V`,
  works: "works",
});

/** Below this a meter shows nothing: V. Chosen, as for the conditions of metal. */
const NOTHING_BELOW_V = 0.005;

/** As a meter shows a voltage: with one place after the point. */
export const voltWords = (volts: number): string => (volts === 0 ? "0 V" : `${volts.toFixed(1)} V`);

const shown = (volts: number): number => Number((volts < NOTHING_BELOW_V ? 0 : volts).toFixed(2));

/** A voltage to be found, with the tolerance of the test record. A floating one has no figure. */
export function voltReading(
  id: string,
  what: string,
  reading: VoltReading | undefined,
  kind: "hot-neutral" | "hot-ground" | "neutral-ground",
  at: Pick<StepReading, "point" | "name" | "brief"> = {},
): readonly StepReading[] {
  if (reading === undefined) return [];
  const within = kind === "neutral-ground" ? RECORD_WITHIN_NEUTRAL_V : RECORD_WITHIN_V;
  const value = shown(Math.abs(reading.volts));
  if (reading.floating) return [{ id, what, ...at, test: kind, expect: wording.floats }];
  const expected: ExpectedTest = { kind: "figure", value, within, unit: "V" };
  return [{ id, what, ...at, test: kind, expected, expect: wording.within(voltWords(value), within) }];
}

const PAIRS = [
  ["hn", "hot-neutral"],
  ["hg", "hot-ground"],
  ["ng", "neutral-ground"],
] as const;

/** What a meter finds at an outlet, and a plug-in tester where `withTester` says so. */
export function outletReadings(
  { key, name }: PlacedOutlet,
  reading: OutletReading | undefined,
  withTester = false,
): readonly StepReading[] {
  if (reading === undefined) return [];
  const at = { point: key, name };
  const volts = PAIRS.flatMap(([field, test]) =>
    voltReading(`${key}:${field}`, pairAt(name, field), reading[field], test, at),
  );
  const lamps = reading.tester?.name;
  if (!withTester || lamps === undefined) return volts;
  const tester: StepReading = {
    id: `${key}:tester`,
    what: wording.tester(name),
    ...at,
    test: "polarity",
    expected: { kind: "word", word: lamps },
    expect: RESULT_TITLES[lamps] ?? lamps,
  };
  return [...volts, tester];
}

/** What a lamp or an appliance does. */
export const worksReading = ({ key, name }: PlacedOutlet, isOn: boolean, id = `${key}:works`): StepReading => ({
  id,
  what: name,
  point: key,
  name,
  test: "works",
  ...(isOn && { expected: { kind: "word", word: "works" } as const }),
  expect: isOn ? wording.works : wording.off,
});

/** Which outlets go dark by a button. */
export function darkReading(
  id: string,
  what: string,
  test: "own-test" | "plug-in-button",
  at: Pick<StepReading, "point" | "name">,
  dark: readonly PlacedOutlet[],
): StepReading {
  const outlets = dark.map(({ key }) => key);
  const names = dark.map(({ name }) => name);
  return {
    id,
    what,
    ...at,
    test,
    expected: { kind: "outlets", outlets, names },
    expect: names.length === 0 ? wording.nothingDark : wording.dark(names.join(", "), names.length),
  };
}

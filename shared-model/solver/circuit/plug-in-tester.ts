import { catalogue } from "../../lib/catalogue.ts";
import type { Phasor } from "../network/network.ts";
import { over, plus, size, times } from "../network/phasor.ts";
import { TESTER_LAMP_OHM, TESTER_LIT_V } from "./instrument-values.ts";
import type { TwoPort } from "./two-port.ts";

const wording = catalogue({
  neutralAsGround: "the neutral joined to ground here instead of a ground wire, also with hot and neutral exchanged",
  neutralGroundExchanged: "neutral and ground exchanged",
  otherNeutral: "the neutral of another circuit",
  notBehindDevice: "not behind a ground-fault device",
  highResistance: "a joint or a ground of high resistance",
  openGround: "open ground",
  hotNeutralAsWell: "hot and neutral exchanged as well",
  openNeutral: "open neutral",
  deviceOpen: "a ground-fault device that is open, with the hot taken past it and nothing in use",
  openHot: "open hot / dead",
  breakerOpen: "a breaker or a ground-fault device that is open",
  openNeutralJoined: "an open neutral with the neutral joined to ground here: metal may be live",
  voltsTooLow: "volts too low to light a lamp",
  hotGroundReversed: "hot/ground reversed",
  openNeutralInUse: "an open neutral with something in use",
  hotNeutralReversed: "hot/neutral reversed",
  groundOnHotSlot: "neutral and ground exchanged as well: the ground wire is on the hot slot",
  unnamed: "no name on the label",
  twoHots: "two hots on the slots: use a meter",
  correct: "correct",
});

/** What a plug-in tester with three lamps calls the condition of an outlet, by the names on its label. */
export type TesterName =
  | "correct"
  | "open-ground"
  | "open-neutral"
  | "open-hot"
  | "hot-ground-reversed"
  | "hot-neutral-reversed"
  /** Lamps that no label names: all three, as between two hots; or neutral to ground alone. */
  | "unnamed";

interface TesterWords {
  /** As the trade says it. */
  readonly title: string;
  /** What else shows the same lamps. */
  readonly mayBe: readonly string[];
}

/** Lamps hot-neutral, hot-ground, neutral-ground as bits 4, 2, 1. Source: labels of three-lamp testers, common practice. */
const NAMES: readonly TesterName[] = [
  "open-hot",
  "unnamed",
  "open-neutral",
  "hot-ground-reversed",
  "open-ground",
  "hot-neutral-reversed",
  "correct",
  "unnamed",
];

/** What a name does not tell. Derived from the circuit: each was computed with the fault in it. */
export const TESTER_WORDS: Readonly<Record<TesterName, TesterWords>> = {
  correct: {
    title: wording.correct,
    mayBe: [
      wording.neutralAsGround,
      wording.neutralGroundExchanged,
      wording.otherNeutral,
      wording.notBehindDevice,
      wording.highResistance,
    ],
  },
  "open-ground": { title: wording.openGround, mayBe: [wording.hotNeutralAsWell] },
  "open-neutral": {
    title: wording.openNeutral,
    mayBe: [wording.deviceOpen],
  },
  "open-hot": {
    title: wording.openHot,
    mayBe: [wording.breakerOpen, wording.openNeutralJoined, wording.voltsTooLow],
  },
  "hot-ground-reversed": { title: wording.hotGroundReversed, mayBe: [wording.openNeutralInUse] },
  "hot-neutral-reversed": {
    title: wording.hotNeutralReversed,
    mayBe: [wording.groundOnHotSlot],
  },
  unnamed: { title: wording.unnamed, mayBe: [wording.twoHots] },
};

export interface TesterReading {
  readonly name: TesterName;
  /** Lamps that are lit: hot to neutral, hot to ground, neutral to ground. */
  readonly lit: readonly [boolean, boolean, boolean];
  /** Volts at the lamps. */
  readonly volts: readonly [number, number, number];
}

/** The three lamps put in together, between hot, neutral and ground as the three nodes of a two-port. */
export function plugInTester({ first, second, z11, z22, z12 }: TwoPort): TesterReading {
  // With the currents of the lamps drawn: (1 + Z·Y)·v = open, Y being the lamps as seen by the pairs, y·(2 1; 1 2).
  const y = 1 / TESTER_LAMP_OHM;
  const entry = (own: Phasor, other: Phasor, one: number): Phasor => ({
    re: one + y * (2 * own.re + other.re),
    im: y * (2 * own.im + other.im),
  });
  const a = entry(z11, z12, 1);
  const b = { re: y * (z11.re + 2 * z12.re), im: y * (z11.im + 2 * z12.im) };
  const c = { re: y * (2 * z12.re + z22.re), im: y * (2 * z12.im + z22.im) };
  const d = entry(z22, z12, 1);
  const determinant = minus(times(a, d), times(b, c));
  const hn = over(minus(times(d, first), times(b, second)), determinant);
  const ng = over(minus(times(a, second), times(c, first)), determinant);
  return testerReading(size(hn), size(plus(hn, ng)), size(ng));
}

/** The name of three voltages, in volts. */
export function testerReading(hn: number, hg: number, ng: number): TesterReading {
  const lit = [hn >= TESTER_LIT_V, hg >= TESTER_LIT_V, ng >= TESTER_LIT_V] as const;
  const name = NAMES[(lit[0] ? 4 : 0) + (lit[1] ? 2 : 0) + (lit[2] ? 1 : 0)] as TesterName;
  return { name, lit, volts: [hn, hg, ng] };
}

const minus = (one: Phasor, other: Phasor): Phasor => ({ re: one.re - other.re, im: one.im - other.im });

import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Phasor, Phasors } from "../network/network.ts";
import type { Circuit } from "./circuit.ts";

/** What is lost on the way from the buses of the service panel to an outlet. */
export interface VoltageDrop {
  readonly outlet: PlacedOutlet;
  /** Volts between the buses, or bus and bar, that feed the outlet; and between its contacts. */
  readonly sourceV: number;
  readonly outletV: number;
  readonly dropV: number;
  /** Of the volts that the supply has without load. */
  readonly percent: number;
}

/** Lower than this share of its supply, something else is wrong than long wires. */
const LEAST_SHARE = 0.5;

/**
 * Voltage drop of outlets with the loads of the circuit's setting on and, one outlet after the other, `testA` amperes more
 * at that outlet, in phase with its voltage. Leaves out what is dead or has less than half of its voltage.
 */
export function voltageDrops(circuit: Circuit, outlets: readonly PlacedOutlet[], testA = 0): readonly VoltageDrop[] {
  const at = circuit.factor.operatingPoint();
  const rails = railsOf(circuit);
  return outlets.flatMap((outlet) => {
    const [hot, neutral] = [outlet.hot, outlet.neutral].map((node) =>
      circuit.nodeOf({ kind: "device", device: outlet.device.id, node }),
    );
    if (hot === undefined || neutral === undefined) return [];
    const [from, to] = [nearest(rails, at, hot), nearest(rails, at, neutral)];
    if (from === undefined || to === undefined || from === to) return [];
    const [fed, used] = underTest(circuit, at, [from.node, to.node, hot, neutral], testA);
    const unloadedV = Math.hypot(from.re - to.re, from.im - to.im);
    const [sourceV, outletV] = [size(fed), size(used)];
    if (outletV < LEAST_SHARE * unloadedV) return [];
    const dropV = sourceV - outletV;
    return [{ outlet, sourceV, outletV, dropV, percent: (100 * dropV) / unloadedV }];
  });
}

/** A bus or the neutral bar of a service panel, with its volts without load. */
interface Rail extends Phasor {
  readonly node: number;
}

function railsOf({ network }: Circuit): readonly Rail[] {
  const rails = new Map<number, Rail>();
  for (const { plus, minus, re, im } of network.sources) {
    rails.set(plus, { node: plus, re, im });
    rails.set(minus, { node: minus, re: 0, im: 0 });
  }
  return [...rails.values()];
}

/** The rail whose voltage a node has, or nearly; several panels have equal ones, and the first stands for them. */
function nearest(rails: readonly Rail[], at: Phasors, node: number): Rail | undefined {
  let best: Rail | undefined;
  let least = Infinity;
  for (const rail of rails) {
    const apart = size(difference(at, node, rail.node));
    if (apart >= least) continue;
    best = rail;
    least = apart;
  }
  return best;
}

type FourNodes = readonly [from: number, to: number, hot: number, neutral: number];

/** Volts between the rails and between the contacts while the test current flows. */
function underTest(circuit: Circuit, at: Phasors, nodes: FourNodes, testA: number): readonly [Phasor, Phasor] {
  const [from, to, hot, neutral] = nodes;
  const fed = difference(at, from, to);
  const used = difference(at, hot, neutral);
  const volts = size(used);
  if (testA === 0 || volts === 0) return [fed, used];
  const drawn = { re: (testA * used.re) / volts, im: (testA * used.im) / volts };
  const change = circuit.factor.transfer(
    { nodes: [hot, neutral], re: [-drawn.re, drawn.re], im: [-drawn.im, drawn.im] },
    nodes,
  );
  return [plus(fed, difference(change, 0, 1)), plus(used, difference(change, 2, 3))];
}

const size = ({ re, im }: Phasor): number => Math.hypot(re, im);
const plus = (one: Phasor, other: Phasor): Phasor => ({ re: one.re + other.re, im: one.im + other.im });

const difference = ({ re, im }: Phasors, from: number, to: number): Phasor => ({
  re: (re[from] ?? 0) - (re[to] ?? 0),
  im: (im[from] ?? 0) - (im[to] ?? 0),
});

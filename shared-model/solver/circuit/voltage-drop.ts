import type { EnclosureId } from "../../model/ids.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Phasor, Phasors } from "../network/network.ts";
import { between, plus, size } from "../network/phasor.ts";
import type { Circuit } from "./circuit.ts";

/** What is lost on the way from buses to an outlet. */
export interface VoltageDrop {
  readonly outlet: PlacedOutlet;
  /** Volts between the buses, or bus and bar, that feed the outlet; and between its contacts. */
  readonly sourceV: number;
  readonly outletV: number;
  readonly dropV: number;
  /** Of the volts that those buses have without the test current. */
  readonly percent: number;
}

/** Lower than this share of its supply, something else is wrong than long wires. */
const LEAST_SHARE = 0.5;

/**
 * Voltage drop of outlets with the loads of the circuit's setting on and, one outlet after the other, `testA` amperes more
 * at that outlet, in phase with its voltage. Leaves out what is dead or has less than half of its voltage.
 * @param panel Counts from the buses of this panel; absent, from those of the service.
 */
export function voltageDrops(
  circuit: Circuit,
  outlets: readonly PlacedOutlet[],
  testA = 0,
  panel?: EnclosureId,
): readonly VoltageDrop[] {
  const at = circuit.factor.operatingPoint();
  const rails = panel === undefined ? serviceRails(circuit) : panelRails(circuit, at, panel);
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
    // Along its voltage without the test: a current through what is open would drive it far past nothing.
    if (!(along(used, between(at, hot, neutral)) > LEAST_SHARE * unloadedV)) return [];
    const dropV = sourceV - outletV;
    return [{ outlet, sourceV, outletV, dropV, percent: (100 * dropV) / unloadedV }];
  });
}

/** What of a phasor has the direction of another. */
const along = (one: Phasor, other: Phasor): number => (one.re * other.re + one.im * other.im) / (size(other) || 1);

/** A bus or the neutral bar of a panel, with its volts without load. */
interface Rail extends Phasor {
  readonly node: number;
}

function serviceRails({ network }: Circuit): readonly Rail[] {
  const rails = new Map<number, Rail>();
  for (const { plus, minus, re, im } of network.sources) {
    rails.set(plus, { node: plus, re, im });
    rails.set(minus, { node: minus, re: 0, im: 0 });
  }
  return [...rails.values()];
}

function panelRails(circuit: Circuit, { re, im }: Phasors, panel: EnclosureId): readonly Rail[] {
  return ["@busA", "@busB", "@busC", "@neutral"].flatMap((name) => {
    const node = circuit.nodeOf({ kind: "panel", panel, node: name });
    return node === undefined || node < 0 ? [] : { node, re: re[node] ?? 0, im: im[node] ?? 0 };
  });
}

/** The rail whose voltage a node has, or nearly; several panels have equal ones, and the first stands for them. */
function nearest(rails: readonly Rail[], at: Phasors, node: number): Rail | undefined {
  let best: Rail | undefined;
  let least = Infinity;
  for (const rail of rails) {
    const apart = size(between(at, node, rail.node));
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
  const fed = between(at, from, to);
  const used = between(at, hot, neutral);
  const volts = size(used);
  if (testA === 0 || volts === 0) return [fed, used];
  const drawn = { re: (testA * used.re) / volts, im: (testA * used.im) / volts };
  const change = circuit.factor.transfer(
    { nodes: [hot, neutral], re: [-drawn.re, drawn.re], im: [-drawn.im, drawn.im] },
    nodes,
  );
  return [plus(fed, between(change, 0, 1)), plus(used, between(change, 2, 3))];
}

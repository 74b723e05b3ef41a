import type { Network, NetworkSource } from "../../../shared-model/solver/network/network.ts";
import { Picker } from "../../builders/picker.ts";

/** Radians a second at 60 Hz. */
export const OMEGA = 2 * Math.PI * 60;
/** Modelling values of the same size as the circuits': ohms of a foot of 14 AWG copper, farads of a foot of cable. */
const OHM_PER_FT = 0.00253;
const TO_GROUND_PER_FT = 20e-12;
const BETWEEN_PER_FT = 8e-12;

interface Wiring {
  /** About how many nodes. */
  readonly nodes: number;
  /** Least resistance of a joint, ohms. Below 5 mΩ in floating parts, ngspice rounds in the sixth digit; see the test with 400 bits. */
  readonly leastJoint?: number;
}

/** Puts together a network branch by branch. */
export class NetworkBuilder {
  private readonly ends: [number, number, number, number][] = [];
  readonly sources: NetworkSource[] = [];
  count = 0;

  node(): number {
    return this.count++;
  }

  branch(a: number, b: number, g: number, bS = 0): void {
    this.ends.push([a, b, g, bS]);
  }

  ohms(a: number, b: number, ohm: number): void {
    this.branch(a, b, 1 / ohm);
  }

  farads(a: number, b: number, farad: number): void {
    this.branch(a, b, 0, OMEGA * farad);
  }

  source(plus: number, minus: number, volts: number, ohm: number, degrees = 0): void {
    const turn = (degrees * Math.PI) / 180;
    this.sources.push({ plus, minus, re: volts * Math.cos(turn), im: volts * Math.sin(turn), g: 1 / ohm, bS: 0 });
  }

  network(): Network {
    const { ends, count, sources } = this;
    return {
      nodeCount: count,
      a: Int32Array.from(ends, ([a]) => a),
      b: Int32Array.from(ends, ([, b]) => b),
      g: Float64Array.from(ends, ([, , g]) => g),
      bS: Float64Array.from(ends, ([, , , bS]) => bS),
      sources,
    };
  }
}

/** Hot, neutral and equipment ground at one place. */
type Trio = readonly [hot: number, neutral: number, ground: number];

/**
 * Wiring as houses have it: a panel with two legs, neutral bar bonded to the reference, circuits as chains of boxes with
 * spurs, splices, loads and cable capacitance, a few loops of neutrals and grounds, broken conductors, parts that hang in
 * the air, islands of capacitors alone and nets without any path.
 */
export function randomWiring(seed: number, { nodes, leastJoint = 5e-3 }: Wiring): Network {
  const pick = new Picker(seed);
  const builder = new NetworkBuilder();
  const joint = (a: number, b: number) => builder.ohms(a, b, leastJoint * 10 ** (pick.next() * 1.5));
  const bar = builder.node();
  const legs = [builder.node(), builder.node()];
  const groundBar = builder.node();
  builder.ohms(bar, -1, 0.02 + pick.next());
  joint(bar, groundBar);
  if (pick.chance(0.7)) {
    builder.source(legs[0] ?? 0, bar, 120, 0.05);
    builder.source(bar, legs[1] ?? 0, 120, 0.05);
  } else {
    builder.source(legs[0] ?? 0, bar, 120, 0.05);
    builder.source(legs[1] ?? 0, bar, 120, 0.05, 120);
  }
  const boxes: Trio[] = [];
  const cable = ([hot, neutral, ground]: Trio, broken: number): Trio => {
    const feet = 3 + pick.next() * 60;
    const far: Trio = [builder.node(), builder.node(), builder.node()];
    const from = [hot, neutral, ground] as const;
    for (const [i, end] of far.entries()) {
      if (pick.chance(broken)) continue;
      builder.ohms(from[i] ?? 0, end, OHM_PER_FT * feet);
    }
    for (const [h, n, g] of [from, far]) {
      builder.farads(h, g, (TO_GROUND_PER_FT * feet) / 2);
      builder.farads(n, g, (TO_GROUND_PER_FT * feet) / 2);
      builder.farads(h, n, (BETWEEN_PER_FT * feet) / 2);
    }
    return far;
  };
  const splice = (end: number): number => {
    if (!pick.chance(0.5)) return end;
    const middle = builder.node();
    joint(end, middle);
    return middle;
  };
  let here: Trio = [legs[0] ?? 0, bar, groundBar];
  while (builder.count < nodes) {
    if (pick.chance(0.15) || boxes.length === 0) {
      here = [legs[pick.below(2)] ?? 0, bar, groundBar];
    } else if (pick.chance(0.3)) here = boxes[pick.below(boxes.length)] ?? here;
    const [hot, neutral, ground] = cable(here, 0.02);
    here = [splice(hot), splice(neutral), splice(ground)];
    boxes.push(here);
    if (pick.chance(0.6)) builder.ohms(here[0], here[1], 8 * 10 ** (pick.next() * 2));
    if (pick.chance(0.1)) builder.ohms(here[0], here[2], 3_000 * 10 ** (pick.next() * 3));
    const other = boxes[pick.below(boxes.length)] ?? here;
    const kind = pick.below(60);
    // Loops: of neutrals, of grounds, of one circuit with another, neutral against ground.
    if (kind === 0) builder.ohms(here[1], other[1], OHM_PER_FT * (5 + pick.next() * 80));
    if (kind === 1) builder.ohms(here[2], other[2], OHM_PER_FT * (5 + pick.next() * 80));
    if (kind === 2) joint(here[1], here[2]);
    if (kind === 3) builder.ohms(here[0], other[0], 0.05 + pick.next());
    // A length of cable whose far end hangs free, and one joined at neither end.
    if (kind === 4) cable([here[0], builder.node(), builder.node()], 0);
    if (kind === 5) {
      const free = cable([builder.node(), builder.node(), builder.node()], 0);
      if (pick.chance(0.5)) builder.farads(free[2], -1, 30e-12 + pick.next() * 1e-9);
    }
    // Capacitors alone, tied to the circuit or to earth by capacitors alone.
    if (kind === 6) {
      const [x, y, z] = [builder.node(), builder.node(), builder.node()];
      builder.farads(x, y, 1e-10 * (1 + pick.next()));
      builder.farads(y, z, 1e-10 * (1 + pick.next()));
      builder.farads(z, x, 1e-9);
      builder.farads(pick.chance(0.5) ? here[0] : -1, y, 5e-11);
      builder.farads(z, -1, 2e-10);
    }
    // A separate source with its secondary bonded nowhere: in the air, or held by the capacitance of its conductors.
    if (kind === 7) {
      const [x, y] = [builder.node(), builder.node()];
      builder.source(x, y, 24, 0.5);
      builder.ohms(x, y, 50 + pick.next() * 500);
      if (pick.chance(0.5)) {
        builder.farads(x, here[2], 5e-10 * (1 + pick.next()));
        builder.farads(y, here[2], 1e-9);
      }
    }
    if (kind === 8) builder.node();
    if (kind === 9) builder.branch(here[0], here[0], 1, 1);
  }
  return builder.network();
}

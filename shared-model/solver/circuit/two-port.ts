import type { Phasor, Phasors } from "../network/network.ts";
import { between } from "../network/phasor.ts";
import type { Circuit } from "./circuit.ts";

/**
 * How three nodes look from outside: volts from the first to the second and from the second to the third with nothing
 * connected, and what a current drawn from one pair does to both. It holds all that any instrument between them can read.
 */
export interface TwoPort {
  readonly first: Phasor;
  readonly second: Phasor;
  /** Ohms: of the first pair, of the second, and of what one does to the other. */
  readonly z11: Phasor;
  readonly z22: Phasor;
  readonly z12: Phasor;
}

/** Two back-substitutions along the ways of three nodes. A node of -1 is earth. `at` is the operating point. */
export function twoPortOf({ factor }: Circuit, at: Phasors, one: number, two: number, three: number): TwoPort {
  const nodes = [one, two, three];
  const of1 = factor.transfer({ nodes: [one, two], re: ONE_OUT, im: NOTHING }, nodes);
  const of2 = factor.transfer({ nodes: [two, three], re: ONE_OUT, im: NOTHING }, nodes);
  return {
    first: between(at, one, two),
    second: between(at, two, three),
    z11: between(of1, 0, 1),
    z12: between(of1, 1, 2),
    z22: between(of2, 1, 2),
  };
}

/** The same of two nodes alone: volts with nothing connected, and ohms. */
export function pairOf({ factor }: Circuit, at: Phasors, one: number, two: number): readonly [Phasor, Phasor] {
  const of = factor.transfer({ nodes: [one, two], re: ONE_OUT, im: NOTHING }, [one, two]);
  return [between(at, one, two), between(of, 0, 1)];
}

const ONE_OUT = [1, -1];
const NOTHING = [0, 0];

import { throughMeters, type VoltReading } from "../../solver/circuit/instruments.ts";
import { CONTACT_OHM, FREQUENCY_HZ, SOURCE_OHM, STRAY_S } from "../../solver/circuit/modelling-values.ts";
import { analyse, type Factor, type NetworkSource, type Phasors } from "../../solver/network/network.ts";
import { between, size } from "../../solver/network/phasor.ts";

/** Neutral and ground of the panel, bonded: the reference. */
export const BONDED = -1;

/** A circuit of a few wires, put together by hand: what a guess about a cable describes. */
export class SmallCircuit {
  private readonly a: number[] = [];
  private readonly b: number[] = [];
  private readonly g: number[] = [];
  private readonly bS: number[] = [];
  private readonly sources: NetworkSource[] = [];
  private count = 0;
  private solved: { readonly factor: Factor; readonly at: Phasors } | undefined;

  /** A new piece of metal, with the leakage to earth that everything has. */
  node(): number {
    const made = this.count++;
    this.branch(made, BONDED, STRAY_S, 0);
    return made;
  }

  resistor(from: number, to: number, ohm: number): number {
    return this.branch(from, to, 1 / Math.max(ohm, CONTACT_OHM), 0);
  }

  capacitor(from: number, to: number, farad: number): void {
    if (farad > 0) this.branch(from, to, 0, 2 * Math.PI * FREQUENCY_HZ * farad);
  }

  /** A hot of so many volts against the neutral of the panel; negative on the other leg. */
  hot(volts: number): number {
    const made = this.node();
    this.sources.push({ plus: made, minus: BONDED, re: volts, im: 0, g: 1 / SOURCE_OHM, bS: 0 });
    return made;
  }

  /** What two meters show between two places. */
  volts(from: number, to: number): VoltReading {
    const { factor, at } = this.solve();
    const of = factor.transfer({ nodes: [from, to], re: [1, -1], im: [0, 0] }, [from, to]);
    return throughMeters(between(at, from, to), between(of, 0, 1));
  }

  /** Volts between two places with no instrument there. */
  openVolts(from: number, to: number): number {
    return size(between(this.solve().at, from, to));
  }

  /** Ohms between two places; infinite where nothing leads over. */
  ohms(from: number, to: number): number {
    const { re, im } = this.solve().factor.transfer({ nodes: [from, to], re: [1, -1], im: [0, 0] }, [from, to]);
    const ohm = size(between({ re, im }, 0, 1));
    return ohm > 40e6 ? Number.POSITIVE_INFINITY : ohm;
  }

  /** The most that any source gives, amperes. */
  mostAmps(): number {
    const { at } = this.solve();
    return Math.max(
      0,
      ...this.sources.map(({ plus, re, g }) => {
        const here = between(at, plus, BONDED);
        return Math.hypot(re - here.re, here.im) * g;
      }),
    );
  }

  private branch(from: number, to: number, g: number, bS: number): number {
    this.solved = undefined;
    this.a.push(from);
    this.b.push(to);
    this.g.push(g);
    this.bS.push(bS);
    return this.a.length - 1;
  }

  private solve() {
    if (this.solved === undefined) {
      const factor = analyse({
        nodeCount: this.count,
        a: Int32Array.from(this.a),
        b: Int32Array.from(this.b),
        g: Float64Array.from(this.g),
        bS: Float64Array.from(this.bS),
        sources: this.sources,
      });
      this.solved = { factor, at: factor.operatingPoint() };
    }
    return this.solved;
  }
}

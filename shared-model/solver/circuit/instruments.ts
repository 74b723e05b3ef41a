import type { Factor, Phasor, Phasors } from "../network/network.ts";
import { between, size } from "../network/phasor.ts";
import type { Circuit, Probe } from "./circuit.ts";
import {
  CONTINUITY_OHM,
  FLOATING_FROM_V,
  FLOATING_SHARE,
  LOW_METER_OHM,
  METER_OHM,
  NONCONTACT_V,
  OHMMETER_MOST_OHM,
} from "./instrument-values.ts";
import { pairOf } from "./two-port.ts";

/** What two meters show between two places, in volts. */
export interface VoltReading {
  /** A meter of 10 megohms. */
  readonly volts: number;
  /** A low-impedance meter of 3 kilohms. */
  readonly lowVolts: number;
  /** The first meter is not to be believed: there is more than 3 V, of which the second finds less than half. */
  readonly floating: boolean;
}

/**
 * Two leads on two places of an energised circuit. Each meter is put in alone. Undefined for a place that is not in the
 * circuit.
 */
export function readVolts(circuit: Circuit, from: Probe, to: Probe): VoltReading | undefined {
  const [one, two] = [circuit.nodeOf(from), circuit.nodeOf(to)];
  if (one === undefined || two === undefined) return undefined;
  return throughMeters(...pairOf(circuit, circuit.factor.operatingPoint(), one, two));
}

/** What meters make of the volts that stand open behind an impedance. */
export function throughMeters(open: Phasor, behind: Phasor): VoltReading {
  const volts = size(open);
  const shown = (ohm: number): number => (volts * ohm) / Math.hypot(ohm + behind.re, behind.im);
  const high = shown(METER_OHM);
  const low = shown(LOW_METER_OHM);
  return { volts: high, lowVolts: low, floating: high > FLOATING_FROM_V && low < FLOATING_SHARE * high };
}

/**
 * Whether a non-contact tester would signal at a place. A hint only: it signals at what merely floats too, and does not
 * behind metal. Undefined for a place that is not in the circuit.
 */
export function signalsNoncontact(circuit: Circuit, place: Probe): boolean | undefined {
  const node = circuit.nodeOf(place);
  return node === undefined ? undefined : size(between(circuit.factor.operatingPoint(), node, -1)) >= NONCONTACT_V;
}

/** What an ohmmeter finds between two places. */
export interface OhmReading {
  /** Absent where it shows that the circuit is open: more than 40 megohms. */
  readonly ohm?: number;
  /** A continuity tester sounds. */
  readonly continuous: boolean;
}

/**
 * Resistance between two places with the power off: the supply is taken away, contacts and loads stay as they are set.
 * The meter's current is a direct one, which no capacitance passes. Undefined for a place that is not in the circuit.
 */
export function readOhms(circuit: Circuit, from: Probe, to: Probe): OhmReading | undefined {
  const [one, two] = [circuit.nodeOf(from), circuit.nodeOf(to)];
  if (one === undefined || two === undefined) return undefined;
  if (one === two) return { ohm: 0, continuous: true };
  const { re, im } = deadFactor(circuit).transfer({ nodes: [one, two], re: [1, -1], im: [0, 0] }, [one, two]);
  const ohm = size(between({ re, im } satisfies Phasors, 0, 1));
  return ohm > OHMMETER_MOST_OHM ? { continuous: false } : { ohm, continuous: ohm <= CONTINUITY_OHM };
}

const dead = new WeakMap<Circuit, Factor>();

/** The circuit for direct current and without its supply. */
function deadFactor(circuit: Circuit): Factor {
  let factor = dead.get(circuit);
  if (factor === undefined) {
    const { network } = circuit;
    factor = circuit.factor.refactor({
      ...network,
      bS: new Float64Array(network.bS.length),
      sources: network.sources.map((source) => ({ ...source, g: 0, bS: 0 })),
    });
    dead.set(circuit, factor);
  }
  return factor;
}

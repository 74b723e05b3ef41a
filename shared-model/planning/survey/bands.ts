import { FLOATING_FROM_V, FLOATING_SHARE } from "../../solver/circuit/instrument-values.ts";
import type { Lead, LeadVariant, Wire } from "./lead.ts";
import { addTestLamp, corners, leadCircuit } from "./lead-circuit.ts";
import { BONDED } from "./small-circuit.ts";
import {
  AGREES_WITHIN_DEAD_V,
  AGREES_WITHIN_LIVE_V,
  MOST_FLOATING_V,
  OHM_FACTOR,
  TEST_LAMP_WITHIN_V,
} from "./survey-values.ts";

/** The readings that a circuit may give, ends included; `most` may be infinite where nothing conducts. */
export interface Band {
  readonly least: number;
  readonly most: number;
}

/** What is read at the wires of one cable. */
export type Probe =
  | {
      readonly kind: "volts";
      readonly from: Wire | "ground";
      readonly to: Wire | "ground";
      readonly meter: "high" | "low";
    }
  | { readonly kind: "ohms"; readonly from: Wire | "ground"; readonly to: Wire | "ground" }
  | { readonly kind: "test-lamp" };

/** A way in which a cable may stand, that two leads may have in common: its circuits in every corner and what they gave. */
interface Simulated {
  readonly circuits: Map<boolean, ReturnType<typeof leadCircuit>[]>;
  readonly bands: Map<string, Band>;
}

const cache = new Map<string, Simulated>();
const MOST_KEPT = 400;

const signature = (
  { kind, reversed, openNeutral, off, travels }: Lead,
  { lamps, load, closed, sameLeg }: LeadVariant,
): string => [kind, reversed, openNeutral, off, travels, [...lamps].sort().join("+"), load, closed, sameLeg].join(",");

/**
 * The band of an instrument at a cable, from solving the circuit in every corner of what is not known. Cached by what the
 * cable leads to.
 */
export function bandOf(lead: Lead, variant: LeadVariant, probe: Probe, nominalV: number): Band {
  const key = `${signature(lead, variant)};${nominalV}`;
  let known = cache.get(key);
  if (known === undefined) {
    if (cache.size >= MOST_KEPT) cache.clear();
    known = { circuits: new Map(), bands: new Map() };
    cache.set(key, known);
  }
  const asked =
    probe.kind === "test-lamp" ? probe.kind : `${probe.from}${probe.to}${"meter" in probe ? probe.meter : ""}`;
  let band = known.bands.get(asked);
  if (band === undefined) {
    band = widened(simulated(circuitsOf(known, lead, variant, probe, nominalV), probe), probe);
    known.bands.set(asked, band);
  }
  return band;
}

function circuitsOf({ circuits }: Simulated, lead: Lead, variant: LeadVariant, { kind }: Probe, nominalV: number) {
  const make = () => corners(nominalV).map((open) => leadCircuit(lead, variant, open, kind !== "ohms"));
  // The test lamp becomes a part of them.
  if (kind === "test-lamp") return make();
  const known = circuits.get(kind === "volts") ?? make();
  circuits.set(kind === "volts", known);
  return known;
}

function simulated(circuits: readonly ReturnType<typeof leadCircuit>[], probe: Probe): Band {
  let [least, most, mostLow] = [Number.POSITIVE_INFINITY, 0, 0];
  for (const { circuit, wires } of circuits) {
    const at = (wire: Wire | "ground"): number => (wire === "ground" ? BONDED : wires[wire]);
    let read: number;
    if (probe.kind === "test-lamp") {
      addTestLamp(circuit, wires);
      read = circuit.openVolts(wires.b, wires.w);
    } else if (probe.kind === "ohms") read = circuit.ohms(at(probe.from), at(probe.to));
    else {
      const { volts, lowVolts } = circuit.volts(at(probe.from), at(probe.to));
      read = probe.meter === "high" ? volts : lowVolts;
      mostLow = Math.max(mostLow, lowVolts);
    }
    least = Math.min(least, read);
    most = Math.max(most, read);
  }
  // What only floats may show anything: how much depends on what runs beside it, which nobody knows.
  const isHigh = probe.kind === "volts" && probe.meter === "high";
  const floats = isHigh && most > FLOATING_FROM_V && mostLow < FLOATING_SHARE * most;
  return floats ? { least: 0, most: Math.max(most, MOST_FLOATING_V) } : { least, most };
}

/** By how much a reading may miss the computed figures and agree. */
function widened({ least, most }: Band, { kind }: Probe): Band {
  // Half an ohm of leads and contacts, whatever is measured.
  if (kind === "ohms") return { least: least / OHM_FACTOR - 0.5, most: most * OHM_FACTOR + 0.5 };
  if (kind === "test-lamp") return { least: least - TEST_LAMP_WITHIN_V, most: most + TEST_LAMP_WITHIN_V };
  const within = (volts: number): number => (volts >= 60 ? AGREES_WITHIN_LIVE_V : AGREES_WITHIN_DEAD_V);
  return { least: least - within(least), most: most + within(most) };
}

export const isIn = (value: number, { least, most }: Band): boolean => value >= least && value <= most;

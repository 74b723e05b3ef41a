import type { Lead, LeadVariant } from "./lead.ts";
import { addLead, corners } from "./lead-circuit.ts";
import { SmallCircuit } from "./small-circuit.ts";
import { HARMED_FROM_V, SHORT_FROM_A, TEST_LAMP_OHM, WORKS_FROM_SHARE } from "./survey-values.ts";

/** What would happen with some cables joined, hot to hot and white to white, and energised. */
export interface Joined {
  /** The most that any supply would give, with nothing but what the leads hold. */
  readonly amps: number;
  /** Volts between the joined hots and whites. */
  readonly volts: number;
}

const PLAIN: LeadVariant = { share: 1, lamps: [] };

/**
 * Solves cables joined to each other.
 * @param opposite The second of two supplies comes from the other leg.
 * @param closed A contact closed between hot and white, as by a switch put there.
 */
export function joinedCircuit(leads: readonly Lead[], nominalV: number, opposite: boolean, closed: boolean): Joined {
  const circuit = new SmallCircuit();
  const [open] = corners(nominalV);
  const [b, w, r] = [circuit.node(), circuit.node(), circuit.node()];
  leads.forEach((lead, index) => {
    const variant: LeadVariant =
      lead.kind === "loop-fed" ? { ...PLAIN, lamps: ["filament"] } : { ...PLAIN, closed: true };
    const wires = addLead(circuit, lead, variant, open as never, true, opposite && index > 0 ? -1 : 1);
    circuit.resistor(wires.b, b, 0);
    circuit.resistor(wires.w, w, 0);
    circuit.resistor(wires.r, r, 0);
  });
  if (closed) circuit.resistor(b, w, 0);
  return { amps: circuit.mostAmps(), volts: circuit.openVolts(b, w) };
}

export const isShort = ({ amps }: Joined): boolean => amps > SHORT_FROM_A;
export const isDoubleVoltage = ({ volts }: Joined): boolean => volts > HARMED_FROM_V;

/** Whether a source alone makes a lamp that is joined to it work. */
export function givesPower(source: Lead, nominalV: number): boolean {
  const circuit = new SmallCircuit();
  const [open] = corners(nominalV);
  const { b, w } = addLead(circuit, source, { ...PLAIN, lamps: ["filament"], closed: true }, open as never, true);
  circuit.resistor(b, w, TEST_LAMP_OHM);
  return circuit.openVolts(b, w) >= WORKS_FROM_SHARE * nominalV;
}

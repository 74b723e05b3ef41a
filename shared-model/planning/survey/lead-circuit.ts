import { CAPACITANCE_F_PER_FT } from "../../solver/circuit/modelling-values.ts";
import type { Lead, LeadVariant, Wire } from "./lead.ts";
import { BONDED, SmallCircuit } from "./small-circuit.ts";
import {
  CABLE_FT,
  COLD_SHARE,
  CONDUCTOR_OHM,
  FILAMENT_OHM,
  LED_OHM,
  NEIGHBOURS,
  PLUGGED_OHM,
  SUPPLY_SHARES,
  TEST_LAMP_OHM,
} from "./survey-values.ts";

/** Values that a guess leaves open; the readings of all of them make a band. */
export interface Open {
  readonly volts: number;
  /** How many live wires run beside the first wire, and beside the second. */
  readonly besideB: number;
  readonly besideW: number;
  readonly filamentOhm: number;
  readonly ledOhm: number;
  readonly loadOhm: number;
}

export type Wires = Readonly<Record<Wire, number>>;

/** Every corner of what is left open. */
export const corners = (nominalV: number): readonly Open[] =>
  SUPPLY_SHARES.flatMap((share) => {
    const volts = share * nominalV;
    const [fewest, most] = NEIGHBOURS;
    const at = (besideB: number, besideW: number, index: number): Open => ({
      volts,
      besideB,
      besideW,
      filamentOhm: FILAMENT_OHM[index] as number,
      ledOhm: LED_OHM[index % 2] as number,
      loadOhm: PLUGGED_OHM[index % 2] as number,
    });
    return [
      ...FILAMENT_OHM.map((_, index) => at(fewest, fewest, index)),
      ...[at(most, most, 0), at(most, fewest, 1), at(fewest, most, 0)],
    ];
  });

/** The wires of one cable, apart from all others, as what it leads to makes them. */
export function leadCircuit(lead: Lead, variant: LeadVariant, open: Open, powered: boolean) {
  const circuit = new SmallCircuit();
  const wires = addLead(circuit, lead, variant, open, powered);
  return { circuit, wires };
}

/** Puts a cable with what it leads to into a circuit; gives its wires at the box. */
export function addLead(
  circuit: SmallCircuit,
  lead: Lead,
  variant: LeadVariant,
  open: Open,
  powered: boolean,
  leg: 1 | -1 = 1,
): Wires {
  const wires: Wires = { b: circuit.node(), w: circuit.node(), r: circuit.node() };
  const { b, w, r } = wires;
  // An ohmmeter's direct current passes no capacitance.
  if (powered) addCapacitances(circuit, wires, open);
  const hot = (to: number, sign: 1 | -1 = 1): void => {
    if (powered && lead.off !== true) circuit.resistor(circuit.hot(leg * sign * open.volts), to, CONDUCTOR_OHM);
  };
  const neutral = (to: number): void => {
    circuit.resistor(to, BONDED, CONDUCTOR_OHM);
  };
  const load = (from: number, to: number): void => {
    if (variant.load === true) circuit.resistor(from, to, open.loadOhm);
  };
  switch (lead.kind) {
    case "supply":
      hot(lead.reversed === true ? w : b);
      if (lead.openNeutral !== true) neutral(lead.reversed === true ? b : w);
      load(b, w);
      break;
    case "multiwire-supply":
      hot(b);
      // Of two wires the white is the second hot.
      hot(lead.reversed === true ? w : r, variant.sameLeg === true ? 1 : -1);
      if (lead.reversed !== true) neutral(w);
      break;
    case "switched-supply":
      if (variant.closed === true) hot(b);
      else if (lead.travels === true) hot(r);
      neutral(w);
      break;
    case "loop-fed":
      hot(w);
      addLamps(circuit, b, BONDED, variant, open, powered);
      break;
    case "feeds":
    case "leg":
      addLamps(circuit, b, w, variant, open, powered);
      load(b, w);
      break;
    case "loop":
      if (variant.closed === true) circuit.resistor(b, w, 2 * CONDUCTOR_OHM);
      break;
    case "travellers":
      circuit.resistor(variant.closed === true ? b : r, w, 2 * CONDUCTOR_OHM);
      break;
    case "other-neutral":
      neutral(w);
      break;
    case "dead":
      break;
  }
  return wires;
}

function addLamps(
  circuit: SmallCircuit,
  from: number,
  to: number,
  { lamps }: LeadVariant,
  { filamentOhm, ledOhm }: Open,
  powered: boolean,
): void {
  for (const lamp of lamps) {
    if (lamp === "filament") circuit.resistor(from, to, powered ? filamentOhm : filamentOhm * COLD_SHARE);
    // The direct current of an ohmmeter does not pass the rectifier of an LED lamp at its few volts.
    if (lamp === "led" && powered) circuit.resistor(from, to, ledOhm);
  }
}

/** What the wires of a cable have against each other, against ground, and against live wires that run beside it. */
function addCapacitances(circuit: SmallCircuit, { b, w, r }: Wires, { volts, besideB, besideW }: Open): void {
  const farad = (perFt: number): number => perFt * CABLE_FT;
  const { toGround, between } = CAPACITANCE_F_PER_FT;
  for (const wire of [b, w, r]) circuit.capacitor(wire, BONDED, farad(toGround));
  circuit.capacitor(b, w, farad(between));
  circuit.capacitor(b, r, farad(between));
  if (besideB + besideW === 0) return;
  const beside = circuit.hot(volts);
  for (const [wire, count] of [
    [b, besideB],
    [r, besideB],
    [w, besideW],
  ] as const)
    circuit.capacitor(beside, wire, count * farad(between));
}

/** A lamp of 60 W put across the two wires while they were dead. */
export const addTestLamp = (circuit: SmallCircuit, { b, w }: Wires): void => {
  circuit.resistor(b, w, TEST_LAMP_OHM);
};

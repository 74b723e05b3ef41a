import type { Material } from "../../model/cable.ts";
import type { WireSize } from "../../units/wire-size.ts";
import { FREQUENCY_HZ } from "./modelling-values.ts";

/** What a wire is made of, as far as its resistance goes. */
export interface Wire {
  readonly awg: WireSize;
  readonly material: Material;
  readonly stranded: boolean;
}

/** Degrees Celsius at which wire is taken to be unless told: nothing drawn is warm until it carries current. */
export const WIRE_TEMPERATURE_C = 20;

interface Metal {
  /** Resistivity at 20 degrees C, ohm mm²/m. */
  readonly ohmMm2PerM: number;
  /** Change of resistance per degree from 20 degrees C. */
  readonly perC: number;
  readonly source: string;
}

const COPPER: Metal = {
  ohmMm2PerM: 0.017241,
  perC: 0.00393,
  source: "ASTM B3, annealed copper of 100 % IACS; from memory",
};
const ALUMINIUM: Metal = {
  ohmMm2PerM: 0.028264,
  perC: 0.00403,
  source: "electrical conductor aluminium of 61 % IACS; from memory",
};
/** Share of copper in the cross-section of copper-clad aluminium wire. Source: ASTM B566 class 10; from memory. */
const CLADDING = 0.1;

const METALS: Readonly<Record<Material, Metal>> = {
  copper: COPPER,
  aluminium: ALUMINIUM,
  "copper-clad-aluminium": inParallel(COPPER, ALUMINIUM, CLADDING),
};

/** Strands run in a helix and are that much longer than the wire. Source: ASTM B8, concentric lay; from memory. */
const LAY = 1.02;

const M_PER_FT = 0.3048;
/** Permeability of free space, H/m; of the metals too. */
const MU_0 = 4e-7 * Math.PI;

/** Diameter of a solid wire in mm. Source: ASTM B258, 39 equal ratios between 36 AWG (0.005 in.) and 4/0 (0.46 in.). */
export function diameterMm(awg: WireSize): number {
  const number = awg.endsWith("/0") ? 1 - Number(awg.slice(0, -2)) : Number(awg);
  return 0.127 * 92 ** ((36 - number) / 39);
}

const perFoot = new Map<string, number>();

/**
 * Resistance at 60 Hz of one foot of a wire, ohm. Skin effect is in it and does not matter: at 20 degrees C it adds 2
 * millionths to 14 AWG copper, 0.1 thousandths to 6 AWG and 5 thousandths to 4/0. Reactance is left out: some 0.05 ohm in
 * 1000 ft (typical of cable, from memory), which changes the impedance of 14 AWG by 0.02 % and of 6 AWG by 0.8 %.
 */
export function ohmsPerFoot({ awg, material, stranded }: Wire, temperatureC = WIRE_TEMPERATURE_C): number {
  const key = `${awg} ${material} ${stranded} ${temperatureC}`;
  let ohms = perFoot.get(key);
  if (ohms === undefined) {
    const { ohmMm2PerM, perC } = METALS[material];
    const resistivity = ohmMm2PerM * (1 + perC * (temperatureC - 20)) * (stranded ? LAY : 1);
    const diameter = diameterMm(awg);
    const direct = resistivity / ((Math.PI / 4) * diameter ** 2);
    ohms = direct * skinEffect(diameter, resistivity) * M_PER_FT;
    perFoot.set(key, ohms);
  }
  return ohms;
}

/**
 * How much higher resistance is at 60 Hz than for direct current in a round wire: the first term of the series of Bessel
 * functions, good to a thousandth for wires thinner than the skin depth (8.5 mm in copper).
 */
function skinEffect(diameter: number, ohmMm2PerM: number): number {
  const depthMm = Math.sqrt((ohmMm2PerM * 1e-6) / (Math.PI * FREQUENCY_HZ * MU_0)) * 1000;
  return 1 + (diameter / 2 / depthMm) ** 4 / 48;
}

/** Conductances of a core and its cladding add up. */
function inParallel(cladding: Metal, core: Metal, share: number): Metal {
  const outside = share / cladding.ohmMm2PerM;
  const inside = (1 - share) / core.ohmMm2PerM;
  return {
    ohmMm2PerM: 1 / (outside + inside),
    perC: (outside * cladding.perC + inside * core.perC) / (outside + inside),
    source: `10 % by area of (${cladding.source}), the rest of (${core.source})`,
  };
}

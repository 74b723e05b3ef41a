import type { Leg } from "../../model/device.ts";
import type { Supply } from "../../model/project.ts";
import { NOMINAL_V } from "./modelling-values.ts";

export interface LegPhasor {
  readonly leg: Leg;
  /** Volts to neutral. */
  readonly re: number;
  readonly im: number;
}

/** Degrees by leg: two halves of one winding, or three phases 120 degrees apart. */
const ANGLES: Readonly<Record<Supply["system"], readonly (readonly [Leg, number])[]>> = {
  "120/240": [
    ["A", 0],
    ["B", 180],
  ],
  "208Y/120": [
    ["A", 0],
    ["B", -120],
    ["C", 120],
  ],
};

/** The legs that a supply has. A supply of no volts, or of volts that are no number, is taken as the nominal one. */
export function legPhasors({ system, nominalV }: Supply): readonly LegPhasor[] {
  const volts = nominalV !== undefined && Number.isFinite(nominalV) && nominalV > 0 ? nominalV : NOMINAL_V;
  return ANGLES[system].map(([leg, degrees]) => {
    const angle = (degrees * Math.PI) / 180;
    // Exactly real for 0 and 180 degrees.
    return { leg, re: volts * Math.cos(angle), im: degrees % 180 === 0 ? 0 : volts * Math.sin(angle) };
  });
}

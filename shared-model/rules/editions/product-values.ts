import { milliamps, volts } from "../../units/quantity.ts";

/** Residual current at which a Class A device must trip. Source: UL 943, as restated by two trade references. */
export const CLASS_A_TRIPS = milliamps(6);

/** Volts to neutral of a supply that does not say otherwise. Source: ANSI C84.1, from memory. */
export const NOMINAL = volts(120);

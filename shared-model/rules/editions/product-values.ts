import { amps, milliamps, volts } from "../../units/quantity.ts";
import type { WireSize } from "../../units/wire-size.ts";

/** Residual current at which a Class A device must trip. Source: UL 943, as restated by two trade references. */
export const CLASS_A_TRIPS = milliamps(6);

/** Volts to neutral of a supply that does not say otherwise. Source: ANSI C84.1, from memory. */
export const NOMINAL = volts(120);

/** What a push-in entry of a receptacle or switch is listed for. Source: UL 498 and UL 20, from memory. */
export const PUSH_IN_TAKES = { awg: "14" satisfies WireSize, material: "copper", stranded: false } as const;

/** Ratings in which small breakers are made, up to what the small conductors allow. Source: NFPA 70 240.6(A), from memory. */
export const BREAKER_RATINGS = [amps(15), amps(20), amps(25), amps(30)] as const;

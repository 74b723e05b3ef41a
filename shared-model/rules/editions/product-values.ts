import { amps, inches, milliamps, volts } from "../../units/quantity.ts";
import type { WireSize } from "../../units/wire-size.ts";

/** Residual current at which a Class A device must trip. Source: UL 943, as restated by two trade references. */
export const CLASS_A_TRIPS = milliamps(6);

/**
 * How much of that level may leak with nothing wrong. Source: IEC 60364-5-53, 531.3.2, from memory: three tenths of the
 * rated current of a residual-current device; for Class A devices common practice.
 */
export const STANDING_LEAK_SHARE = 0.3;

/** Volts to neutral of a supply that does not say otherwise. Source: ANSI C84.1, from memory. */
export const NOMINAL = volts(120);

/** What a push-in entry of a receptacle or switch is listed for. Source: UL 498 and UL 20, from memory. */
export const PUSH_IN_TAKES = { awg: "14" satisfies WireSize, material: "copper", stranded: false } as const;

/** Room for folded conductors behind a device, beyond what the code asks for: typical, common practice. */
export const CONDUCTOR_SPACE = inches(0.375);

/** What the insulation of any dwelling cable stands, old ones too. Source: NFPA 70 310.104 of 2011 and before, from memory. */
export const LEAST_INSULATION_C = 60;

/** Weights that boxes for fans are marked for. Common practice. */
export const FAN_BOX_MARKINGS_LB = [50, 70] as const;

/** Ratings in which snap switches are made. Common practice, from memory. */
export const SWITCH_RATINGS = [amps(15), amps(20), amps(30)] as const;

/** Ratings in which small breakers are made, up to what the small conductors allow. Source: NFPA 70 240.6(A), from memory. */
export const BREAKER_RATINGS = [amps(15), amps(20), amps(25), amps(30)] as const;

/** Breakers up to this rating have lugs of the size in our catalogue; larger ones take more. Modelling value: typical of the trade, from memory. */
export const SMALL_LUGS_UP_TO = amps(30);

/** Devices up to this rating need a mark of their own for aluminium. Source: NFPA 70 404.14(C) and 406.3(C), from memory. */
export const MARKED_FOR_ALUMINIUM_UP_TO = amps(20);

/*
 * What instruments are taken to be. Typical of the trade and modelling values, from memory; no maker's figures.
 */

/** A digital meter: so high that a capacitance of a few nanofarads can hold a voltage against it. */
export const METER_OHM = 10_000_000;
/** A low-impedance meter, which draws down what only a capacitance holds. */
export const LOW_METER_OHM = 3000;
/** Below this, no reading is called floating. */
export const FLOATING_FROM_V = 3;
/** A reading floats when the low-impedance meter finds less than this share of it. */
export const FLOATING_SHARE = 0.5;
/** Each of the three lamps of a plug-in tester, and the volts from which one is lit. */
export const TESTER_LAMP_OHM = 100_000;
export const TESTER_LIT_V = 80;
/** Volts to earth from which a non-contact tester signals; a pen may be set from some 50 V to some 90 V. */
export const NONCONTACT_V = 50;
/** A continuity tester sounds up to this resistance; an ohmmeter shows no number beyond the other. */
export const CONTINUITY_OHM = 30;
export const OHMMETER_MOST_OHM = 40_000_000;
/**
 * How far a reading of a test record may be from what is computed and still agree: the supply of a house is seldom what is
 * written on it, and loads come and go. Modelling values of ours.
 */
export const RECORD_WITHIN_V = 5;
export const RECORD_WITHIN_NEUTRAL_V = 1;

/*
 * What a drawing does not say and a circuit needs. All are modelling values: chosen so that readings come out as they do in
 * houses, not measured on anything. A value that a person has entered always goes before them.
 */

/** A closed contact of a breaker, a switch or a ground-fault device; also what joins the bars of a panel. */
export const CONTACT_OHM = 0.001;
/** Each leg of the supply, up to the buses of the service panel. */
export const SOURCE_OHM = 0.05;
/** From the neutral of the supply to earth anywhere: a leak of kilohms sees the whole voltage. */
export const EARTH_OHM = 0.001;
/** From every node to earth, S: air and dirt. It makes what hangs on nothing have a voltage at all: none. */
export const STRAY_S = 1e-12;
/** Supply of the electronics of a ground-fault device, across its LINE: 4 mA. */
export const ELECTRONICS_OHM = 30_000;
/** Between conductors of a cable. */
export const CAPACITANCE_F_PER_FT = { toGround: 20e-12, between: 8e-12 } as const;
/** A cable or jumper of which no length is known. */
export const ASSUMED_CABLE_FT = 30;
export const ASSUMED_JUMPER_IN = 6;
/** No conductor and no joint has less: 1/2 in. of 14 AWG. */
export const LEAST_OHM = 0.0001;
/** What something uses that uses power and does not say how much: a pilot lamp, the works of a timer. */
export const SMALL_USER_OHM = 30_000;
/** A luminaire or an appliance whose watts are not known. */
export const ASSUMED_LOAD_W = 60;
/** Volts for which watts and leaks are stated. */
export const RATED_V = 120;
export const NOMINAL_V = 120;
export const FREQUENCY_HZ = 60;
/** A test button, of a device or of a plug-in tester: 8 mA. */
export const TEST_OHM = 15_000;
/** A leak to earth that must open a Class A device, with margin: 6.3 mA. */
export const LEAK_TEST_OHM = 19_000;
/** Beyond this a resistance in a setting is a slip. */
export const MOST_OHM = 1e12;

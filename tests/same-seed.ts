import fc from "fast-check";

/**
 * Random tests repeat in every short run, so that a change fails for what it changed; long runs explore with seeds of
 * their own, and a failing seed is named by the failure.
 */
const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
if (!LONG) fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_261_125 });

/** A limit of a test, in milliseconds, with room for the repetitions of a long run on a machine that does other work too. */
export const withRoom = (limit: number): number => (LONG ? 6 * limit : limit);

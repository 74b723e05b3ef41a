/**
 * Measures the readings of all outlets of a circuit, and its trips, warm. Alone: `node tests/bench/readings.mjs`. Times are
 * those that the processors spent on this program, its collector of garbage included, so that others disturb less.
 */
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("./big-house.ts") & typeof import("../../shared-model/solver/circuit/build-circuit.ts") & typeof import("../../shared-model/solver/circuit/circuit.ts") & typeof import("../../shared-model/queries/outlets-of.ts") & typeof import("../../shared-model/solver/circuit/readings.ts") & typeof import("../../shared-model/solver/circuit/trips.ts") & typeof import("../../shared-model/solver/circuit/live-after.ts")} Core */

const PARTS = [
  "tests/bench/big-house.ts",
  "shared-model/solver/circuit/build-circuit.ts",
  "shared-model/solver/circuit/circuit.ts",
  "shared-model/queries/outlets-of.ts",
  "shared-model/solver/circuit/readings.ts",
  "shared-model/solver/circuit/trips.ts",
  "shared-model/solver/circuit/live-after.ts",
];
/** Milliseconds at most for the readings, warm. */
const SIZES = [
  { boxes: 20, most: 1, rounds: 100 },
  { boxes: 1000, most: 50, rounds: 30 },
];
const WARMING = 10;
/** Milliseconds that one measurement takes at least: the clock of the processors is coarse. */
const LEAST_MS = 4;

/**
 * @typedef {object} ReadingTimes Milliseconds of processor time of every round.
 * @property {number} boxes
 * @property {number} outlets
 * @property {number} nodes
 * @property {number} most
 * @property {number[]} readings Three pairs on two meters and the plug-in tester at every outlet.
 * @property {number[]} anew The same after a breaker was switched: new values, factorised, solved and read.
 * @property {number[]} trips What every device does, followed to the end.
 * @property {number[]} live Every contact that is live after that.
 */

/** @returns {Promise<ReadingTimes[]>} */
export function measureReadings() {
  return withCore(PARTS, (/** @type {Core} */ core) => {
    const { bigHouse, buildCircuit, EVERYTHING_ON, liveAfter, outletsOf, readOutlets, runTrips } = core;
    return SIZES.map(({ boxes, most, rounds }) => {
      const { asFound, supply } = bigHouse(boxes);
      const outlets = Object.values(asFound.enclosures).flatMap(({ devices }) =>
        Object.values(devices).flatMap((device) => outletsOf(device)),
      );
      const circuit = buildCircuit(asFound, supply);
      const [breaker] = circuit.overcurrent;
      if (breaker === undefined) throw new Error("The house has no breaker.");
      const run = runTrips(circuit);
      const off = { ...EVERYTHING_ON, off: new Set([breaker.device]) };
      const work = {
        readings: () => readOutlets(circuit, outlets),
        anew: (/** @type {number} */ round) => readOutlets(circuit.inSetting(round % 2 ? EVERYTHING_ON : off), outlets),
        trips: () => runTrips(circuit.inSetting(EVERYTHING_ON)),
        live: () => liveAfter(run, outlets),
      };
      for (let round = 0; round < WARMING; round++) for (const one of Object.values(work)) one(round);
      /** @type {ReadingTimes} */
      const times = {
        boxes,
        outlets: outlets.length,
        nodes: circuit.network.nodeCount,
        most,
        readings: [],
        anew: [],
        trips: [],
        live: [],
      };
      for (let round = 0; round < rounds; round++)
        for (const name of /** @type {const} */ (["readings", "anew", "trips", "live"]))
          times[name].push(timeOf(() => work[name](round)));
      return times;
    });
  });
}

/** @param {() => unknown} work @returns {number} Milliseconds of processor time of one. */
function timeOf(work) {
  const started = process.cpuUsage();
  for (let count = 1; ; count++) {
    work();
    const { user, system } = process.cpuUsage(started);
    const spent = (user + system) / 1000;
    if (spent >= LEAST_MS) return spent / count;
  }
}

/** @param {readonly ReadingTimes[]} all @returns {boolean} Whether every target was met. */
export function reportReadings(all) {
  let met = true;
  for (const { boxes, outlets, nodes, most, readings, anew, trips, live } of all) {
    console.log(`\nReadings of ${boxes} boxes: ${outlets} outlets, ${nodes} nodes; ${readings.length} rounds in turn`);
    console.log(`  all readings               ${figures(readings)} ms`);
    console.log(`  in another setting         ${figures(anew)} ms`);
    console.log(`  all trips                  ${figures(trips)} ms`);
    console.log(`  what is live               ${figures(live)} ms`);
    const median = middle(readings);
    if (median > most) met = false;
    console.log(
      `${median <= most ? "met   " : "MISSED"} all readings, warm, median: ${median.toFixed(2)} ms, at most ${most}`,
    );
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportReadings(await measureReadings())) process.exitCode = 1;

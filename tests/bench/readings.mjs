/**
 * Measures the readings of all outlets of a circuit, and its trips, warm. Alone: `node tests/bench/readings.mjs`. Times are
 * those that the processors spent on this program, its collector of garbage included, so that others disturb less.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
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
export async function measureReadings() {
  const folder = mkdtempSync(join(tmpdir(), "loadside-readings-"));
  try {
    const { bigHouse, buildCircuit, EVERYTHING_ON, liveAfter, outletsOf, readOutlets, runTrips } = await load(folder);
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
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
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

/**
 * @param {string} folder
 * @returns {Promise<typeof import("./big-house.ts") & typeof import("../../shared-model/solver/circuit/build-circuit.ts") & typeof import("../../shared-model/solver/circuit/circuit.ts") & typeof import("../../shared-model/queries/outlets-of.ts") & typeof import("../../shared-model/solver/circuit/readings.ts") & typeof import("../../shared-model/solver/circuit/trips.ts") & typeof import("../../shared-model/solver/circuit/live-after.ts")>}
 */
async function load(folder) {
  const circuit = join(ROOT, "shared-model/solver/circuit");
  /** @type {Record<string, string>} */
  const input = {
    house: join(ROOT, "tests/bench/big-house.ts"),
    build: join(circuit, "build-circuit.ts"),
    circuit: join(circuit, "circuit.ts"),
    outlets: join(ROOT, "shared-model/queries/outlets-of.ts"),
    readings: join(circuit, "readings.ts"),
    trips: join(circuit, "trips.ts"),
    live: join(circuit, "live-after.ts"),
  };
  await build({
    configFile: false,
    root: ROOT,
    logLevel: "warn",
    build: {
      ssr: true,
      target: "es2023",
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: {
        input,
        preserveEntrySignatures: "strict",
        output: { entryFileNames: "[name].mjs", chunkFileNames: "[name]-[hash].mjs" },
      },
    },
  });
  const parts = Object.keys(input).map((name) => import(pathToFileURL(join(folder, `${name}.mjs`)).href));
  return Object.assign({}, ...(await Promise.all(parts)));
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
  const load = loadavg().map((value) => value.toFixed(1));
  console.log(`  load of the machine        ${load.join(" ")} on ${cpus().length} processors`);
  return met;
}

/** @param {readonly number[]} values */
function middle(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** @param {readonly number[]} values */
function figures(values) {
  const show = (/** @type {number} */ value) => value.toFixed(2).padStart(8);
  return `median ${show(middle(values))}   least ${show(Math.min(...values))}   most ${show(Math.max(...values))}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url) && !reportReadings(await measureReadings()))
  process.exitCode = 1;

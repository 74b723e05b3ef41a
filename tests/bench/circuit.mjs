/**
 * Measures the circuit solver beside ngspice on the same netlists, analysis time only, in turn in one run. Alone:
 * `node tests/bench/circuit.mjs`.
 */
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { getNgspice, NO_NGSPICE } from "../get-ngspice.mjs";
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/solver/network/network.ts") & typeof import("../../shared-model/solver/network/spice-deck.ts") & typeof import("../solver/network/random-network.ts")} Core */

const PARTS = [
  "shared-model/solver/network/network.ts",
  "shared-model/solver/network/spice-deck.ts",
  "tests/solver/network/random-network.ts",
];
const SIZES = [
  { nodes: 10_000, least: 5, rounds: 7 },
  { nodes: 100_000, least: 8, rounds: 3 },
];
const REPEATS = 10;
/** Points of one ngspice analysis more than one: each loads, factorises and solves again in the order found before. */
const MORE_POINTS = 4;

/**
 * @typedef {object} CircuitTimes Milliseconds of every round.
 * @property {number} nodes
 * @property {number} branches
 * @property {number} least How many times faster than ngspice the warm solver must be.
 * @property {number[]} cold Checking, ordering, factorising and solving.
 * @property {number[]} warm New values in the order found before: factorising and solving.
 * @property {number[]} solve Solving alone.
 * @property {number[]} ngspice One analysis in ngspice, as it reports itself.
 * @property {number[]} nextPoint One more frequency in ngspice, in the order found before.
 */

/** @param {string} program ngspice. @returns {Promise<CircuitTimes[]>} */
export function measureCircuit(program) {
  return withCore(PARTS, (/** @type {Core} */ { analyse, randomWiring, spiceDeck }, folder) =>
    SIZES.map(({ nodes, least, rounds }) => {
      const network = randomWiring(1, { nodes });
      const factor = analyse(network);
      const deck = spiceDeck(factor, () => undefined);
      /** @type {CircuitTimes} */
      const times = {
        nodes: network.nodeCount,
        branches: network.a.length,
        least,
        cold: [],
        warm: [],
        solve: [],
        ngspice: [],
        nextPoint: [],
      };
      for (let warming = 0; warming < REPEATS; warming++)
        analyse(network)
          .refactor({ ...network })
          .operatingPoint();
      for (let round = 0; round < rounds; round++) {
        const { one, next } = timeOfNgspice(program, folder, deck);
        times.ngspice.push(one);
        times.nextPoint.push(next);
        times.cold.push(timeOf(() => analyse(network).operatingPoint(), 1));
        // Other values each time, as after an edit of lengths or loads; not timed.
        const changed = { ...network, g: network.g.map((value, i) => value * (1 + ((i + round) % 13) / 100)) };
        times.warm.push(timeOf(() => factor.refactor(changed).operatingPoint(), REPEATS));
        times.solve.push(timeOf(() => factor.operatingPoint(), REPEATS));
      }
      return times;
    }),
  );
}

/** @param {() => unknown} work @param {number} repeats @returns {number} Milliseconds of one. */
function timeOf(work, repeats) {
  const started = performance.now();
  for (let i = 0; i < repeats; i++) work();
  return (performance.now() - started) / repeats;
}

/**
 * The analysis time that ngspice reports, without reading the deck. One analysis orders, factorises and solves; the same
 * with more points at the same frequency tells what a point adds once the order is known.
 * @param {string} program @param {string} folder @param {string} deck
 */
function timeOfNgspice(program, folder, deck) {
  /** @param {number} points */
  const report = (points) => {
    const end = deck.lastIndexOf(".ac lin 1 ");
    const control = `.control\nac lin ${points} 60 ${60 + (points - 1) * 1e-6}\nrusage all\nquit\n.endc\n.end\n`;
    writeFileSync(join(folder, "deck.cir"), deck.slice(0, end) + control);
    const { stdout, stderr } = spawnSync(program, ["-b", "deck.cir"], {
      cwd: folder,
      encoding: "utf8",
      timeout: 600_000,
    });
    const seconds = /Total analysis time \(seconds\) = ([\d.e+-]+)/.exec(`${stdout}${stderr}`)?.[1];
    if (seconds === undefined) throw new Error(`ngspice reported no analysis time:\n${stdout.slice(-2000)}`);
    return Number(seconds) * 1000;
  };
  const one = report(1);
  return { one, next: (report(1 + MORE_POINTS) - one) / MORE_POINTS };
}

/** @param {readonly CircuitTimes[]} all @returns {boolean} Whether every target was met. */
export function reportCircuit(all) {
  let met = true;
  for (const { nodes, branches, least, cold, warm, solve, ngspice, nextPoint } of all) {
    console.log(`\nCircuit of ${nodes} nodes, ${branches} branches, loops included; ${warm.length} rounds in turn`);
    console.log(`  ours from nothing          ${figures(cold)} ms`);
    console.log(`  ours with new values       ${figures(warm)} ms`);
    console.log(`  ours, solving alone        ${figures(solve)} ms`);
    console.log(`  ngspice, an analysis       ${figures(ngspice)} ms`);
    console.log(`  ngspice, one point more    ${figures(nextPoint)} ms`);
    const times = middle(ngspice) / middle(warm);
    if (times < least) met = false;
    console.log(
      `${times >= least ? "met   " : "MISSED"} warm against an ngspice analysis: ${times.toFixed(1)} times, at least ${least}`,
    );
    console.log(`       from nothing against the same: ${(middle(ngspice) / middle(cold)).toFixed(1)} times`);
    console.log(`       warm against one point more:   ${(middle(nextPoint) / middle(warm)).toFixed(1)} times`);
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta)) {
  const program = getNgspice();
  if (program === undefined) {
    console.error(NO_NGSPICE);
    process.exitCode = 2;
  } else if (!reportCircuit(await measureCircuit(program))) process.exitCode = 1;
}

/**
 * Measures the proof of protection: of a typical circuit and of a whole house. Processor time of this process, which other
 * programs on the machine disturb less than the clock; the clock beside it. Alone: `node tests/bench/proof.mjs`.
 */
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/solver/circuit/proof.ts") & typeof import("../../shared-model/solver/sections.ts") & typeof import("./guarded-house.ts")} Core */

const PARTS = [
  "shared-model/solver/circuit/proof.ts",
  "shared-model/solver/sections.ts",
  "tests/bench/guarded-house.ts",
];
const CASES = [
  { name: "A typical circuit", boxes: 20, most: 5, rounds: 60 },
  { name: "A house", boxes: 1000, most: 1000, rounds: 7 },
];

/**
 * @typedef {object} ProofTimes Milliseconds of every round.
 * @property {string} name
 * @property {number} boxes
 * @property {number} outlets
 * @property {number} proved Outlets that some device protects.
 * @property {number} most
 * @property {number[]} cold Nothing kept of the drawing before: sections, circuits and proof.
 * @property {number[]} warm Sections known, as after the rules have run: circuits and proof.
 * @property {number[]} clock The same as `warm` by the clock.
 */

/** @returns {Promise<ProofTimes[]>} */
export function measureProof() {
  return withCore(PARTS, (/** @type {Core} */ { guardedHouse, proveInstallation, allSections }) =>
    CASES.map(({ name, boxes, most, rounds }) => {
      const project = guardedHouse(boxes);
      const proofs = proveInstallation(project.asFound, project.supply);
      const proved = proofs.filter(({ protectedBy }) => protectedBy.length > 0).length;
      /** @type {ProofTimes} */
      const times = { name, boxes, outlets: proofs.length, proved, most, cold: [], warm: [], clock: [] };
      for (let round = 0; round < 2 * rounds; round++) {
        const fresh = structuredClone(project);
        const isWarm = round % 2 === 1;
        if (isWarm) for (const section of allSections(fresh.asFound)) section.outlets();
        const started = performance.now();
        const before = process.cpuUsage();
        proveInstallation(fresh.asFound, fresh.supply);
        const { user, system } = process.cpuUsage(before);
        (isWarm ? times.warm : times.cold).push((user + system) / 1000);
        if (isWarm) times.clock.push(performance.now() - started);
      }
      return times;
    }),
  );
}

/** @param {readonly ProofTimes[]} all @returns {boolean} Whether every target was met. */
export function reportProof(all) {
  let met = true;
  for (const { name, boxes, outlets, proved, most, cold, warm, clock } of all) {
    console.log(`\n${name} of ${boxes} boxes, ${outlets} outlets, ${proved} of them proved; ${warm.length} rounds`);
    console.log(`  from nothing               ${figures(cold)} ms`);
    console.log(`  sections known             ${figures(warm)} ms`);
    console.log(`  the same by the clock      ${figures(clock)} ms`);
    if (middle(warm) > most) met = false;
    console.log(
      `${middle(warm) <= most ? "met   " : "MISSED"} proof of all: ${middle(warm).toFixed(2)} ms, at most ${most}`,
    );
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportProof(await measureProof())) process.exitCode = 1;

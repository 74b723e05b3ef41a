/**
 * Measures the proof of protection: of a typical circuit, of a whole house, and as a part of one edit. Processor time of this process, which other
 * programs on the machine disturb less than the clock; the clock beside it. Alone: `node tests/bench/proof.mjs`.
 */
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/solver/circuit/proof.ts") & typeof import("../../shared-model/solver/sections.ts") & typeof import("./guarded-house.ts")} Core */
/** @typedef {typeof import("../../shared-model/analysis/session.ts") & typeof import("../../shared-model/commands/run-command.ts") & typeof import("./guarded-house.ts")} Editing */

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
      const proofs = proveInstallation(project.asFound);
      const proved = proofs.filter(({ protectedBy }) => protectedBy.length > 0).length;
      /** @type {ProofTimes} */
      const times = { name, boxes, outlets: proofs.length, proved, most, cold: [], warm: [], clock: [] };
      for (let round = 0; round < 2 * rounds; round++) {
        const fresh = structuredClone(project);
        const isWarm = round % 2 === 1;
        if (isWarm) for (const section of allSections(fresh.asFound)) section.outlets();
        const started = performance.now();
        const before = process.cpuUsage();
        proveInstallation(fresh.asFound);
        const { user, system } = process.cpuUsage(before);
        (isWarm ? times.warm : times.cold).push((user + system) / 1000);
        if (isWarm) times.clock.push(performance.now() - started);
      }
      return times;
    }),
  );
}

const EDITED_BOXES = 1000;
const EDITS = 400;
const MOST_OF_EDIT = 25;

/**
 * One edit of a house, each followed by its contrary, up to its fresh findings: rules, and proof of the circuit.
 * @returns {Promise<number[]>} Milliseconds of every edit.
 */
export function measureProvedEdits() {
  const parts = [
    "shared-model/analysis/session.ts",
    "shared-model/commands/run-command.ts",
    "tests/bench/guarded-house.ts",
  ];
  return withCore(parts, (/** @type {Editing} */ { guardedHouse, openSession, runCommand }) => {
    let project = guardedHouse(EDITED_BOXES);
    const session = openSession(project);
    const state = "as-found";
    /** @type {number[]} */
    const times = [];
    for (let step = -EDITS / 4; step < EDITS; step++) {
      const number = (Math.floor((step + EDITS) / 2) * 37) % EDITED_BOXES;
      const [enclosure, end] = [`b${number}`, `c${number}.bk.b`];
      const call =
        step % 2 === 0
          ? { command: "leave-splice", args: { state, enclosure, end } }
          : { command: "join-splice", args: { state, enclosure, end, splice: `${enclosure}-x` } };
      const done = runCommand(project, /** @type {Parameters<typeof runCommand>[1]} */ (call));
      if (!done.ok) throw new Error(done.refusal.message);
      project = done.project;
      const before = process.cpuUsage();
      session.applyPatches(done.patches, step + EDITS);
      const { user, system } = process.cpuUsage(before);
      if (step >= 0) times.push((user + system) / 1000);
    }
    return times;
  });
}

/** @param {readonly number[]} times @returns {boolean} Whether the target was met. */
export function reportProvedEdits(times) {
  const sorted = [...times].sort((p, q) => p - q);
  const high = sorted[Math.floor(0.95 * sorted.length)] ?? Number.NaN;
  console.log(
    `\nOne edit of ${EDITED_BOXES} boxes to fresh findings, proof of its circuit among them; ${times.length} edits`,
  );
  console.log(`  with all rules             ${figures(times)} ms`);
  const met = high <= MOST_OF_EDIT;
  console.log(`${met ? "met   " : "MISSED"} 95 of 100 edits: ${high.toFixed(2)} ms, at most ${MOST_OF_EDIT}`);
  reportLoad();
  return met;
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

if (isStarted(import.meta)) {
  if (!reportProof(await measureProof())) process.exitCode = 1;
  if (!reportProvedEdits(await measureProvedEdits())) process.exitCode = 1;
}

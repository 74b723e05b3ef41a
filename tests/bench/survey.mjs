/**
 * Measures what the survey of a box with 8 unknown cables takes to say what to test next, at the stages of a survey. Time
 * of the thread, which other programs on the machine disturb less than the clock. Alone: `node tests/bench/survey.mjs`.
 */
import { existsSync, readFileSync } from "node:fs";
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../planning/survey-bench.ts")} Core */

const PARTS = ["tests/planning/survey-bench.ts"];
const MOST = 100;
const ROUNDS = 30;
const CABLES = 8;

/** @returns {Promise<{ readonly name: string; readonly ms: number[] }[]>} Milliseconds of every round, by stage. */
export function measureSurvey() {
  return withCore(PARTS, (/** @type {Core} */ { lightItem, ohms, outletItem, survey, triple, unknownBox, works }) => {
    const project = unknownBox(CABLES);
    const groups = [
      ...[1, 2, 3, 4, 5, 6].map((number) => [outletItem(`R${number}`)]),
      [lightItem("L1", { switches: ["S1"] })],
    ];
    const names = Array.from({ length: CABLES }, (_, index) => `C${index + 1}`);
    const live = names.flatMap((name, index) => triple(name, index === 0 ? [120, 120, 0] : [0, 0, 0]));
    const cold = names.slice(1).map((name) => ohms(name, name === "C5" ? 18 : "open", ["S1"]));
    const first = works(["C1", "C2", "C3"], ["R1", "R2"], ["S1"]);
    const second = works(["C1", "C2", "C4"], ["R1", "R3"], ["S1"]);
    const stages = [
      { name: "nothing read", readings: [] },
      { name: "all read live", readings: live },
      { name: "and dead", readings: [...live, ...cold] },
      { name: "two joined", readings: [...live, ...cold, first] },
      { name: "and two more", readings: [...live, ...cold, first, second] },
    ];
    return stages.map(({ name, readings }) => {
      /** @type {number[]} */
      const ms = [];
      for (let round = -ROUNDS / 3; round < ROUNDS; round++) {
        const before = spent();
        const { next } = survey(project, { groups }, readings);
        const after = spent();
        if (next === undefined) throw new Error(`Nothing to test next: ${name}.`);
        if (round >= 0) ms.push(after - before);
      }
      return { name, ms };
    });
  });
}

const OF_THREAD = "/proc/thread-self/schedstat";
const hasThreadTime = existsSync(OF_THREAD);

/** Milliseconds of this thread; of the process where the system does not tell. */
function spent() {
  if (hasThreadTime) return Number(readFileSync(OF_THREAD, "utf8").split(" ")[0]) / 1e6;
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** @param {Awaited<ReturnType<typeof measureSurvey>>} all @returns {boolean} Whether the target was met. */
export function reportSurvey(all) {
  let met = true;
  console.log(`\nSurvey of ${CABLES} unknown cables: what to test next; ${ROUNDS} rounds`);
  for (const { name, ms } of all) {
    console.log(`  ${name.padEnd(28)} ${figures(ms)} ms`);
    if (middle(ms) > MOST) met = false;
    console.log(`${middle(ms) <= MOST ? "met   " : "MISSED"} ${name}: ${middle(ms).toFixed(2)} ms, at most ${MOST}`);
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportSurvey(await measureSurvey())) process.exitCode = 1;

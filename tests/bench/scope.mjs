/**
 * Measures the scope of a house of 1,000 boxes as the window asks for it, of a session that has checked the drawing: the
 * difference by box, and everything with findings and work steps, whose figures are computed; that has the target. Processor
 * time of the thread, which other programs on the machine disturb less than the clock. Alone: `node tests/bench/scope.mjs`.
 */
import { figures, isStarted, middle, reportLoad, taken, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/planning/scope/difference.ts") & typeof import("../../shared-model/analysis/scope-answer.ts") & typeof import("../../shared-model/analysis/session.ts") & typeof import("../../shared-model/commands/run-command.ts") & typeof import("./big-house.ts")} Core */

const PARTS = [
  "shared-model/analysis/scope-answer.ts",
  "shared-model/planning/scope/difference.ts",
  "shared-model/analysis/session.ts",
  "shared-model/commands/run-command.ts",
  "tests/bench/big-house.ts",
];
const BOXES = 1000;
const OPENED = 10;
const MOST = 100;
const ROUNDS = 9;

/** Boxes in which a receptacle is replaced: all on one circuit, or each on a circuit of its own. */
const JOBS = [
  { name: "10 boxes of one circuit", apart: 2 },
  { name: "10 boxes of ten circuits", apart: BOXES / OPENED },
];

/** @returns {Promise<{ readonly name: string; readonly opened: number; readonly difference: number[]; readonly answer: number[]; readonly checks: number[] }[]>} Milliseconds of every round. */
export function measureScope() {
  return withCore(PARTS, (/** @type {Core} */ { bigHouse, openSession, runCommand, scopeAnswer, scopeDifference }) =>
    JOBS.map(({ name, apart }) => {
      const project = plan(bigHouse(BOXES), apart, runCommand);
      /** @type {number[]} */
      const difference = [];
      /** @type {number[]} */
      const answer = [];
      /** @type {number[]} */
      const checks = [];
      let opened = 0;
      for (let round = -1; round < ROUNDS; round++) {
        const fresh = structuredClone(project);
        /** @type {ReturnType<typeof openSession> | undefined} */
        let session;
        const check = taken(() => {
          session = openSession(fresh);
        });
        if (session === undefined) throw new Error("No session.");
        const { asFound, proposed } = session.project;
        if (proposed === undefined) throw new Error("Nothing is proposed.");
        const own = session;
        const differs = taken(() => {
          opened = scopeDifference(asFound, proposed).totals.boxes;
        });
        const answers = taken(() => scopeAnswer(own));
        if (round < 0) continue;
        checks.push(check);
        difference.push(differs);
        answer.push(answers);
      }
      return { name, opened, difference, answer, checks };
    }),
  );
}

/** @param {ReturnType<Core["bigHouse"]>} house @param {number} apart @param {Core["runCommand"]} runCommand */
function plan(house, apart, runCommand) {
  let project = house;
  /** @param {import("../../shared-model/answers/command-call.ts").CommandCall} call */
  const run = (call) => {
    const done = runCommand(project, call);
    if (!done.ok) throw new Error(done.refusal.message);
    project = done.project;
  };
  run({ command: "start-proposed", args: {} });
  for (let index = 0; index < OPENED; index++) {
    const box = 1 + index * apart;
    const args = {
      state: "proposed",
      device: `b${box}-r0`,
      id: `g${box}`,
      type: "gfci-receptacle-15",
      name: `G${box}`,
    };
    run({ command: "replace-device", args });
  }
  return project;
}

/** @param {Awaited<ReturnType<typeof measureScope>>} all @returns {boolean} Whether the target was met. */
export function reportScope(all) {
  let met = true;
  console.log(`\nScope of ${BOXES} boxes, two accounts, checked before; ${ROUNDS} rounds`);
  for (const { name, opened, difference, answer, checks } of all) {
    console.log(`  ${name}, ${opened} opened`);
    console.log(`  ${"  difference by box".padEnd(28)} ${figures(difference)} ms`);
    console.log(`  ${"  all of it, with steps".padEnd(28)} ${figures(answer)} ms`);
    console.log(`  ${"  a first check of it".padEnd(28)} ${figures(checks)} ms`);
    const ms = middle(answer);
    if (ms > MOST) met = false;
    console.log(`${ms <= MOST ? "met   " : "MISSED"} ${name}: ${ms.toFixed(2)} ms, at most ${MOST}`);
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportScope(await measureScope())) process.exitCode = 1;

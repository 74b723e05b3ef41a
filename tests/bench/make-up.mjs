/**
 * Measures the make-up of a box of 12 cables: planned, tried on a copy, judged by rules and proof. Processor time of the
 * thread, which other programs on the machine disturb less than the clock. Alone: `node tests/bench/make-up.mjs`.
 */
import { figures, isStarted, middle, reportLoad, taken, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/planning/make-up.ts") & typeof import("../../shared-model/analysis/session.ts") & typeof import("../../shared-model/commands/run-command.ts") & typeof import("./full-box.ts")} Core */

const PARTS = [
  "shared-model/commands/run-command.ts",
  "shared-model/planning/make-up.ts",
  "shared-model/analysis/session.ts",
  "tests/bench/full-box.ts",
];
const MOST = 20;
const ROUNDS = 40;

/** @returns {Promise<{ readonly name: string; readonly ms: number[]; readonly checks: number[] }[]>} Milliseconds of every round: the make-up, and a first check of the same drawing to compare with. */
export function measureMakeUp() {
  return withCore(PARTS, (/** @type {Core} */ { fullBox, fullIntent, FULL_BOX, makeUp, openSession, runCommand }) =>
    ["all ends capped", "one joint a colour, as found"].map((name, joined) => {
      const project = fullBox(joined === 1);
      /** @type {number[]} */
      const ms = [];
      /** @type {number[]} */
      const checks = [];
      for (let round = -ROUNDS / 4; round < ROUNDS; round++) {
        const fresh = structuredClone(project);
        // As in the window: the drawing is frozen and was checked before anybody asks for a make-up.
        runCommand(fresh, { command: "set-edition", args: { edition: fresh.edition } });
        const check = taken(() => openSession(fresh));
        const make = taken(() => {
          const made = makeUp(fresh, "as-found", FULL_BOX, fullIntent);
          if (!made.ok) throw new Error(made.refusal.message);
        });
        if (round < 0) continue;
        checks.push(check);
        ms.push(make);
      }
      return { name, ms, checks };
    }),
  );
}

/** @param {Awaited<ReturnType<typeof measureMakeUp>>} all @returns {boolean} Whether the target was met. */
export function reportMakeUp(all) {
  let met = true;
  console.log(`\nMake-up of a box of 12 cables, tried and judged; ${ROUNDS} rounds`);
  for (const { name, ms, checks } of all) {
    console.log(`  ${name.padEnd(28)} ${figures(ms)} ms`);
    console.log(`  ${"  a first check of it".padEnd(28)} ${figures(checks)} ms`);
    if (middle(ms) > MOST) met = false;
    console.log(`${middle(ms) <= MOST ? "met   " : "MISSED"} ${name}: ${middle(ms).toFixed(2)} ms, at most ${MOST}`);
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportMakeUp(await measureMakeUp())) process.exitCode = 1;

/**
 * Measures what each rule costs on a large house: a first check of the whole, by the clock, the least of some rounds, and
 * the share of one edit. A rule that takes long is listed. Alone: `node tests/bench/rules.mjs`.
 */
import { isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/analysis/session.ts") & typeof import("../../shared-model/commands/run-command.ts") & typeof import("../../shared-model/rules/registry.ts") & typeof import("./guarded-house.ts")} Core */

const BOXES = 1000;
const ROUNDS = 5;
const EDITS = 60;
/** Milliseconds from which a rule is listed. */
const LISTED_MS = 2;

/**
 * @typedef {object} RuleTime
 * @property {string} rule
 * @property {number} whole Milliseconds of the whole house, the least of all rounds.
 * @property {number} edit Milliseconds of one edit, the median.
 */

/** @returns {Promise<RuleTime[]>} */
export function measureRules() {
  const parts = [
    "shared-model/analysis/session.ts",
    "shared-model/commands/run-command.ts",
    "shared-model/rules/registry.ts",
    "tests/bench/guarded-house.ts",
  ];
  return withCore(parts, (/** @type {Core} */ { guardedHouse, openSession, rules, runCommand }) => {
    let project = guardedHouse(BOXES);
    const watch = stopwatch();
    /** @type {Map<string, number[]>} */
    const whole = new Map(rules.map(({ id }) => [id, []]));
    /** @type {Map<string, number[]>} */
    const edits = new Map(rules.map(({ id }) => [id, []]));
    for (let round = 0; round < ROUNDS; round++) {
      const fresh = structuredClone(project);
      for (const [rule, ms] of watch.during(() => openSession(fresh, { watch }))) whole.get(rule)?.push(ms);
    }
    const session = openSession(project, { watch });
    for (let step = 0; step < EDITS; step++) {
      const number = (Math.floor(step / 2) * 37) % BOXES;
      const [enclosure, end] = [`b${number}`, `c${number}.bk.b`];
      const call =
        step % 2 === 0
          ? { command: "leave-splice", args: { state: "as-found", enclosure, end } }
          : { command: "join-splice", args: { state: "as-found", enclosure, end, splice: `${enclosure}-x` } };
      const done = runCommand(project, /** @type {Parameters<typeof runCommand>[1]} */ (call));
      if (!done.ok) throw new Error(done.refusal.message);
      project = done.project;
      const took = watch.during(() => session.applyPatches(done.patches, step + 1));
      for (const [rule, times] of edits) times.push(took.get(rule) ?? 0);
    }
    return rules.map(({ id }) => ({
      rule: id,
      whole: Math.min(...(whole.get(id) ?? [])),
      edit: middle(edits.get(id) ?? []),
    }));
  });
}

/** Adds up what each rule takes between its beginning and its end. */
function stopwatch() {
  /** @type {Map<string, number>} */
  let took = new Map();
  /** @type {string | undefined} */
  let running;
  let since = 0;
  const stop = () => {
    if (running !== undefined) took.set(running, (took.get(running) ?? 0) + performance.now() - since);
    running = undefined;
  };
  return {
    skips: () => false,
    /** @param {string} rule */
    begins(rule) {
      running = rule;
      since = performance.now();
    },
    ends: stop,
    /** @param {() => unknown} work */
    during(work) {
      took = new Map();
      work();
      return took;
    },
  };
}

/** @param {readonly RuleTime[]} times */
export function reportRules(times) {
  const sum = (/** @type {readonly number[]} */ values) => values.reduce((total, value) => total + value, 0);
  const slow = times.filter(({ whole }) => whole > LISTED_MS).sort((a, b) => b.whole - a.whole);
  console.log(`\n${times.length} rules over ${BOXES} boxes; milliseconds of the whole house, and of one edit`);
  console.log(
    `  all together               ${sum(times.map(({ whole }) => whole))
      .toFixed(1)
      .padStart(8)} ${sum(times.map(({ edit }) => edit))
      .toFixed(3)
      .padStart(8)}`,
  );
  console.log(slow.length === 0 ? `  none takes over ${LISTED_MS} ms` : `  over ${LISTED_MS} ms:`);
  for (const { rule, whole, edit } of slow)
    console.log(`  ${rule.padEnd(30)} ${whole.toFixed(1).padStart(5)} ${edit.toFixed(3).padStart(8)}`);
  reportLoad();
}

if (isStarted(import.meta)) reportRules(await measureRules());

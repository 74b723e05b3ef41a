/**
 * Measures the command field at 2,000 boxes: from opening it to the first answer, and each answer while words are typed
 * letter by letter. Alone: `node tests/bench/command-field.mjs`. Times are those that the processors spent on this program.
 */
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("./big-house.ts") & typeof import("../../renderer/state/document-store.ts") & typeof import("../../renderer/state/commands/command-lines.ts") & typeof import("../../renderer/state/commands/entry.ts") & typeof import("../../renderer/state/commands/search.ts")} Core */

const PARTS = [
  "tests/bench/big-house.ts",
  "renderer/state/document-store.ts",
  "renderer/state/commands/command-lines.ts",
  "renderer/state/commands/entry.ts",
  "renderer/state/commands/search.ts",
];
const BOXES = 2000;
/** Names, trade words, two words, ends of conductors, and slips, which make it look farthest. */
const TYPED = [
  "B1500",
  "gfi outlet",
  "C1999 BK",
  "recptacle in B12",
  "lumniaire",
  "splice",
  "zzzz",
  "lay out everything",
];
const ROUNDS = 8;
const MOST_MS = 50;
/** Everything is made ready when the field gets the focus, before a letter can follow. */
const MOST_TO_OPEN_MS = 150;

/** @typedef {{ lines: number, opening: number[], answers: number[] }} FieldTimes Milliseconds. */

/** @returns {Promise<FieldTimes>} */
export function measureCommandField() {
  return withCore(PARTS, (/** @type {Core} */ core) => {
    const { bigHouse, openDocument, commandShelves, typedLines, findOnShelves, shelve } = core;
    /** @type {number[]} */
    const opening = [];
    /** @type {number[]} */
    const answers = [];
    let lines = 0;
    for (let round = 0; round < ROUNDS; round++) {
      // Another document each time, so that nothing that was made ready can be used again.
      openDocument({ project: bigHouse(BOXES) });
      const start = busyMs();
      const shelves = commandShelves();
      findOnShelves([...shelves, shelve(typedLines("b"))], "b");
      const opened = busyMs() - start;
      lines = shelves.reduce((sum, shelf) => sum + shelf.lines.length, 0);
      if (round > 1) opening.push(opened);
      for (const words of TYPED) {
        for (let length = 1; length <= words.length; length++) {
          const typed = words.slice(0, length);
          const before = busyMs();
          findOnShelves([...shelves, shelve(typedLines(typed))], typed);
          if (round > 1) answers.push(busyMs() - before);
        }
      }
    }
    return { lines, opening, answers };
  });
}

function busyMs() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** @param {FieldTimes} times @returns {boolean} Whether the target is met. */
export function reportCommandField({ lines, opening, answers }) {
  const sorted = [...answers].sort((a, b) => a - b);
  const p95 = sorted[Math.floor(sorted.length * 0.95)] ?? Number.NaN;
  console.log(`\nCommand field with ${BOXES} boxes, ${lines} lines`);
  console.log(`  opened to first answer     ${figures(opening)} ms of processor`);
  console.log(`  answer to a letter         ${figures(answers)} ms of processor   p95 ${p95.toFixed(2)}`);
  reportLoad();
  const opened = middle(opening);
  const met = p95 <= MOST_MS && opened <= MOST_TO_OPEN_MS;
  const say = (/** @type {string} */ what, /** @type {number} */ value, /** @type {number} */ most) =>
    console.log(`${value <= most ? "met   " : "MISSED"} ${what}: ${value.toFixed(2)} ms, at most ${most}`);
  say("command field, p95 of an answer", p95, MOST_MS);
  say("command field, median from opening to the first answer", opened, MOST_TO_OPEN_MS);
  return met;
}

if (isStarted(import.meta)) process.exitCode = reportCommandField(await measureCommandField()) ? 0 : 1;

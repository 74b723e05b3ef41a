/**
 * Arranging a house: the time that the worker is at it, for houses of chains and of short circuits, and the longest that
 * other messages wait for it meanwhile.
 */
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

const ROUNDS = 7;
/** Boxes, boxes of a circuit, and how long the worker may take: milliseconds. */
const HOUSES = [
  // So few are drawn on the way, each where it comes to stand.
  { boxes: 115, perCircuit: 20, most: 1000 },
  { boxes: 1000, perCircuit: 20, most: 1000 },
  { boxes: 1000, perCircuit: 3, most: 1000 },
  { boxes: 2000, perCircuit: 20, most: 2000 },
  { boxes: 2000, perCircuit: 3, most: 2000 },
];
const ORDERS = /** @type {const} */ (["by-circuit", "by-room"]);

/**
 * @typedef {object} Arranged
 * @property {number} boxes
 * @property {number} perCircuit
 * @property {string} order
 * @property {number} most
 * @property {number[]} took Milliseconds of processor time of this thread.
 * @property {number[]} waits The longest step of each round, likewise.
 */

/** @returns {Promise<readonly Arranged[]>} */
export const measureArranging = () =>
  withCore(
    ["tests/bench/big-house.ts", "shared-model/geometry/house/arrange-house.ts", "shared-model/geometry/draw-box.ts"],
    (core) => HOUSES.flatMap((house) => ORDERS.map((order) => arrange(core, house, order))),
  );

/**
 * @param {any} core
 * @param {{ boxes: number, perCircuit: number, most: number }} house
 * @param {string} order
 * @returns {Arranged}
 */
function arrange({ bigHouse, arrangeHouse }, { boxes, perCircuit, most }, order) {
  /** @type {number[]} */
  const took = [];
  /** @type {number[]} */
  const waits = [];
  for (let round = 0; round < ROUNDS; round++) {
    // Anew each time: what was drawn of a box is remembered with it. The window sends along what it has drawn.
    const project = bigHouse(boxes, perCircuit);
    const ids = Object.keys(project.asFound.enclosures);
    const sizes = new Map(ids.map((id) => [id, { x: -124, y: -44, width: 1159, height: 760 }]));
    const before = process.cpuUsage();
    const steps = arrangeHouse(project, project.asFound, { order, sizes });
    let longest = 0;
    for (;;) {
      const from = process.cpuUsage();
      const { done } = steps.next();
      longest = Math.max(longest, process.cpuUsage(from).user / 1000);
      if (done) break;
    }
    took.push(process.cpuUsage(before).user / 1000);
    waits.push(longest);
  }
  return { boxes, perCircuit, order, most, took, waits };
}

/** @param {readonly Arranged[]} all @returns {boolean} Whether all were in time. */
export function reportArranging(all) {
  console.log("\nArranging a house in the worker, processor time");
  let met = true;
  for (const { boxes, perCircuit, order, most, took, waits } of all) {
    const inTime = middle(took) <= most && middle(waits) <= 100;
    met &&= inTime;
    console.log(`${inTime ? "met   " : "MISSED"} ${boxes} boxes, ${perCircuit} a circuit, ${order.replace("-", " ")}`);
    console.log(`  took, at most ${most}        ${figures(took)} ms`);
    console.log(`  longest wait, at most 100  ${figures(waits)} ms`);
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta) && !reportArranging(await measureArranging())) process.exitCode = 1;

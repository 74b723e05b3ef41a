/**
 * Measures opening the Scope view with a drawing of 1,000 boxes: the longest that the window's own thread is held up by one
 * task, from the press until flags and list are there. Time that the processor spent on that thread, which other programs
 * on the machine disturb less than the clock; beside it what a switch to as found and back takes in the same window. Alone,
 * with a built window: `node tests/bench/scope-view.mjs [folder of the window]`.
 */
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { CHROMIUM_ARGS, findChromium } from "../get-chromium.mjs";
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";
import { newWindow } from "./window-steps.mjs";

/** @typedef {typeof import("../../shared-model/commands/run-command.ts") & typeof import("../../shared-model/format/text-to-save.ts") & typeof import("./big-house.ts")} Core */

const BOXES = 1000;
/** Boxes in which a receptacle is replaced and an end is taken out of its joint. */
const OPENED = [10, 100];
const ROUNDS = 5;
const MOST_MS = 100;

/** @typedef {{ readonly opened: number, readonly first: number[], readonly scope: number[], readonly switched: number[] }} ScopeViewTimes Milliseconds of the longest task: of the first time in a window, of later times, and of a switch of the states. */

/**
 * @param {import("@playwright/test").Browser} browser
 * @param {string} folder The built window.
 * @returns {Promise<readonly ScopeViewTimes[]>}
 */
export async function measureScopeView(browser, folder) {
  /** @type {ScopeViewTimes[]} */
  const all = [];
  for (const opened of OPENED) {
    const text = await withCore(
      ["tests/bench/big-house.ts", "shared-model/commands/run-command.ts", "shared-model/format/text-to-save.ts"],
      (/** @type {Core} */ core) => planned(core, opened),
    );
    /** @type {number[]} */
    const first = [];
    /** @type {number[]} */
    const scope = [];
    /** @type {number[]} */
    const switched = [];
    for (let window = 0; window < 2; window++) {
      const times = await inOneWindow(browser, folder, text);
      first.push(times.first);
      scope.push(...times.scope);
      switched.push(...times.switched);
    }
    all.push({ opened, first, scope, switched });
  }
  return all;
}

/** @param {Core} core @param {number} opened */
function planned({ bigHouse, runCommand, textToSave }, opened) {
  let project = bigHouse(BOXES);
  /** @param {Parameters<typeof runCommand>[1]} call */
  const run = (call) => {
    const done = runCommand(project, call);
    if (!done.ok) throw new Error(done.refusal.message);
    project = done.project;
  };
  run({ command: "start-proposed", args: {} });
  const boxes = Object.values(project.asFound.enclosures).filter(({ kind }) => kind === "box");
  const apart = Math.floor(boxes.length / opened);
  for (let index = 0; index < opened; index++) {
    const box = boxes[index * apart];
    const [device] = Object.values(box?.devices ?? {});
    const end = Object.entries(box?.places ?? {}).find(([, { at }]) => at.kind === "splice")?.[0];
    if (box === undefined || device === undefined || end === undefined) throw new Error("A box has nothing in it.");
    const id = /** @type {typeof device.id} */ (`g${index}`);
    const args = { device: device.id, id, type: "gfci-receptacle-15", name: `G${index}` };
    run({ command: "replace-device", args: { state: "proposed", ...args } });
    const taken = /** @type {keyof typeof box.places} */ (end);
    run({ command: "cap-end", args: { state: "proposed", enclosure: box.id, end: taken } });
  }
  return textToSave(project);
}

/** @param {import("@playwright/test").Browser} browser @param {string} folder @param {string} text */
async function inOneWindow(browser, folder, text) {
  const openedFile = {
    name: "house.loadside",
    token: "house",
    limit: text.length,
    read: async () => /** @type {const} */ ({ ok: true, text }),
    save: async () => /** @type {const} */ ({ ok: true }),
  };
  const host = await startBrowserHost({ folder, openedFile });
  const page = await newWindow(browser);
  try {
    await page.goto(host.url);
    await page.locator(".sheet:not([data-waiting])").waitFor({ timeout: 120_000 });
    // Checked, and everything beside the sheet is there.
    await page.getByText(/^\d+ checks run$/).waitFor({ timeout: 120_000 });
    const strip = page.getByRole("banner");
    const show = (/** @type {string} */ name) => strip.getByRole("button", { name, exact: true }).click();
    const shown = async () => {
      await page.locator(".scope-tallies").first().waitFor({ timeout: 120_000 });
      await page.locator(".scope-row").first().waitFor();
    };
    const pressed = async (/** @type {string} */ name) =>
      strip.locator(`button[aria-pressed=true]`, { hasText: name }).waitFor();
    const first = await longestTask(browser, page, async () => {
      await show("Scope");
      await shown();
    });
    /** @type {number[]} */
    const scope = [];
    /** @type {number[]} */
    const switched = [];
    for (let round = 0; round < ROUNDS; round++) {
      await show("Proposed");
      await pressed("Proposed");
      switched.push(
        await longestTask(browser, page, async () => {
          await show("As found");
          await pressed("As found");
          await show("Proposed");
          await pressed("Proposed");
        }),
      );
      scope.push(
        await longestTask(browser, page, async () => {
          await show("Scope");
          await shown();
        }),
      );
    }
    return { first, scope, switched };
  } finally {
    await page.context().close();
    await host.close();
  }
}

/**
 * The longest task of the page's own thread while something is done, in milliseconds of the processor.
 * @param {import("@playwright/test").Browser} browser
 * @param {import("@playwright/test").Page} page
 * @param {() => Promise<void>} work
 */
async function longestTask(browser, page, work) {
  await browser.startTracing(page, { categories: ["toplevel", "__metadata"] });
  await work();
  // What follows in slices belongs to it.
  await page.evaluate(() => new Promise((done) => setTimeout(done, 500)));
  const trace = JSON.parse((await browser.stopTracing()).toString());
  /** @type {readonly { readonly name: string, readonly pid: number, readonly tid: number, readonly tdur?: number, readonly args?: { readonly name?: string } }[]} */
  const events = trace.traceEvents;
  const main = new Set(
    events.filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain").map(threadOf),
  );
  const tasks = events.filter((event) => /RunTask$/.test(event.name) && main.has(threadOf(event)));
  if (tasks.length === 0) throw new Error("The trace holds no task.");
  return Math.max(...tasks.map(({ tdur = 0 }) => tdur)) / 1000;
}

/** @param {{ readonly pid: number, readonly tid: number }} event */
const threadOf = ({ pid, tid }) => `${pid} ${tid}`;

/** @param {readonly ScopeViewTimes[]} all @returns {boolean} Whether the target was met. */
export function reportScopeView(all) {
  let met = true;
  console.log(`\nScope view of ${BOXES} boxes: longest task of the window's own thread, ms of the processor`);
  for (const { opened, first, scope, switched } of all) {
    console.log(`  ${opened} boxes opened`);
    console.log(`  ${"  first time in a window".padEnd(28)} ${figures(first)}`);
    console.log(`  ${"  once more".padEnd(28)} ${figures(scope)}`);
    console.log(`  ${"  as found and back".padEnd(28)} ${figures(switched)}`);
    const longest = Math.max(middle(first), middle(scope));
    if (longest > MOST_MS) met = false;
    const ratio = longest / middle(switched);
    console.log(
      `${longest <= MOST_MS ? "met   " : "MISSED"} ${opened} opened: ${longest.toFixed(1)} ms, at most ${MOST_MS}; ${ratio.toFixed(2)} of a switch`,
    );
  }
  reportLoad();
  return met;
}

if (isStarted(import.meta)) {
  const executablePath = await findChromium();
  const browser = await chromium.launch({
    args: [...CHROMIUM_ARGS],
    ...(executablePath !== undefined && { executablePath }),
  });
  try {
    const folder = process.argv[2] ?? fileURLToPath(new URL("../../dist/window", import.meta.url));
    if (!reportScopeView(await measureScopeView(browser, folder))) process.exitCode = 1;
  } finally {
    await browser.close();
  }
}

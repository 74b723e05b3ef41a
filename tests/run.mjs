/**
 * `npm test`: everything that must hold before a change goes in, in one go and one line at the end.
 *
 *   node tests/run.mjs [--long] [--only=STEP,STEP]
 *
 * Plain Node, because it installs the packages itself. A failing step does not stop the ones that do not need it.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { hasDisplay } from "../electron/app-window.mjs";
import { runtimeAtHand } from "../electron/desktop-runtime.mjs";
import { installWhenNeeded } from "../electron/install-when-needed.mjs";
import { nodeIsTooOld } from "../electron/node-version.mjs";
import { getChromium, NO_CHROMIUM } from "./get-chromium.mjs";
import { getNgspice, NO_NGSPICE } from "./get-ngspice.mjs";
import { getPoppler, NO_POPPLER } from "./get-poppler.mjs";
import { countOfPlaywright, countOfVitest, oneOf, secondTries } from "./test-counts.mjs";

/**
 * @typedef {import("./test-counts.mjs").Count} Count
 * @typedef {{ status: number, output: string }} Ended
 * @typedef {{ count: Count, output: string, notRun?: string }} Outcome `notRun`: why a step that this computer cannot run was left.
 * @typedef {{ name: string, needs?: string, run: () => Promise<Outcome> }} Step
 */

const ROOT = fileURLToPath(new URL("../", import.meta.url));
const REPORTS = mkdtempSync(join(tmpdir(), "loadside-test-"));
const LAYERED = ["shared-model", "renderer", "electron", "tests"];

/** Tests of this run that failed and then passed. @type {ReturnType<typeof secondTries>[number][]} */
const triedTwice = [];

/** These read the sources only, so two at a time suit two cores. @type {Step[]} */
const SIDE_BY_SIDE = [
  { name: "types", run: checkTypes },
  { name: "lint", run: () => check("@biomejs/biome/bin/biome", "check", "--error-on-warnings", ".") },
  {
    name: "layers",
    run: () => check("dependency-cruiser/bin/dependency-cruise.mjs", "--config", "layers.cjs", ...LAYERED),
  },
  { name: "unused", run: () => check("knip/bin/knip.js", "--no-progress") },
];

/** These use both cores themselves. @type {Step[]} */
const IN_TURN = [
  { name: "unit", run: runUnitTests },
  { name: "build", run: buildAll },
  { name: "e2e", needs: "build", run: runEndToEnd },
  { name: "desktop", needs: "build", run: runInDesktopRuntime },
];

/** @returns {Promise<Count[]>} */
async function runAll() {
  const refusal = nodeIsTooOld() ?? (installWhenNeeded(ROOT) ? undefined : "The packages could not be installed.");
  if (refusal !== undefined) {
    console.log(refusal);
    return [oneOf(false)];
  }
  if (process.argv.includes("--long")) process.env.LOADSIDE_LONG = "1";
  const only = process.argv
    .find((each) => each.startsWith("--only="))
    ?.slice("--only=".length)
    .split(",");
  const asked = (/** @type {Step} */ step) => only === undefined || only.includes(step.name);

  const counts = await runSideBySide(SIDE_BY_SIDE.filter(asked));
  const failed = new Set();
  for (const step of IN_TURN.filter(asked)) {
    const outcome = failed.has(step.needs)
      ? { count: oneOf(false), output: `Not run: ${step.needs} failed.` }
      : undefined;
    const count = await report(step, outcome ?? step.run());
    if (count.failed > 0) failed.add(step.name);
    counts.push(count);
  }
  return counts;
}

/** @param {Step[]} steps @returns {Promise<Count[]>} */
async function runSideBySide(steps) {
  /** @type {Count[]} */
  const counts = [];
  const waiting = steps.values();
  const worker = async () => {
    for (const step of waiting) counts.push(await report(step, step.run()));
  };
  await Promise.all([worker(), worker()]);
  return counts;
}

/** Prints one line for a step that passed, everything for one that failed. @param {Step} step @param {Outcome | Promise<Outcome>} running */
async function report(step, running) {
  const started = performance.now();
  const { count, output, notRun } = await running;
  if (notRun !== undefined) console.log(`${step.name.padEnd(7)} NOT RUN: ${notRun}`);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  const skipped = count.skipped > 0 ? `, ${count.skipped} SKIPPED` : "";
  console.log(`${step.name.padEnd(7)} ${count.passed} passed, ${count.failed} failed${skipped} (${seconds} s)`);
  if (count.failed > 0) console.log(`${output.trimEnd()}\n`);
  return count;
}

/** One tsconfig a runtime; each is a program of its own. @returns {Promise<Outcome>} */
async function checkTypes() {
  const configs = readdirSync(ROOT).filter((name) => /^tsconfig[.].+[.]json$/.test(name));
  let output = "";
  let passed = true;
  for (const config of configs) {
    const ended = await node("typescript/bin/tsc", "--project", config, "--pretty", "false");
    if (ended.status === 0) continue;
    passed = false;
    output += `${config}\n${ended.output}`;
  }
  return { count: oneOf(passed && configs.length > 0), output };
}

/** @param {string} tool @param {string[]} args @returns {Promise<Outcome>} */
async function check(tool, ...args) {
  const { status, output } = await node(tool, ...args);
  return { count: oneOf(status === 0), output };
}

/** @returns {Promise<Outcome>} */
async function runUnitTests() {
  const ngspice = getNgspice();
  process.env.LOADSIDE_NGSPICE = ngspice ?? "";
  const hasPoppler = getPoppler();
  process.env.LOADSIDE_POPPLER = hasPoppler ? "1" : "";
  const file = join(REPORTS, "unit.json");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
  const { status, output } = await node("vitest/vitest.mjs", "run", ...reporters);
  const notRun = [
    ...(ngspice === undefined ? [`the comparison with ngspice. ${NO_NGSPICE}`] : []),
    ...(hasPoppler ? [] : [`the reading back of PDF files. ${NO_POPPLER}`]),
  ].join(" And ");
  return { count: countOfVitest(readReport(file), status), output, ...(notRun !== "" && { notRun }) };
}

/** @returns {Promise<Outcome>} */
async function buildAll() {
  const { status, output } = await run(process.execPath, ["shared-model/hosts/build.mjs"]);
  return { count: oneOf(status === 0), output };
}

/** @returns {Promise<Outcome>} */
async function runEndToEnd() {
  const chromium = await getChromium();
  if (chromium === undefined) return { count: oneOf(false), output: NO_CHROMIUM };
  const file = join(REPORTS, "e2e.json");
  Object.assign(process.env, { LOADSIDE_CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: file });
  // A machine that is busy with something else fails no test by that alone: what fails twice fails. Nothing is hidden.
  const { status, output } = await node("@playwright/test/cli.js", "test", "--retries=1", "--reporter=list,json");
  const outcome = readReport(file);
  triedTwice.push(...secondTries(outcome));
  return { count: countOfPlaywright(outcome, status), output };
}

/**
 * The same program in the real runtime. Where there is none, the tests with a stand-in have run, and this one is
 * counted as skipped: it proves nothing. Nothing is fetched for it.
 * @returns {Promise<Outcome>}
 */
async function runInDesktopRuntime() {
  const runtime = hasDisplay() ? runtimeAtHand(ROOT) : { why: "has no display here" };
  if ("why" in runtime) {
    return {
      count: { passed: 0, failed: 0, skipped: 1 },
      output: "",
      notRun: `the desktop runtime ${runtime.why}. Its tests prove nothing in this run.`,
    };
  }
  const file = join(REPORTS, "desktop.json");
  Object.assign(process.env, { LOADSIDE_RUNTIME: runtime.program, PLAYWRIGHT_JSON_OUTPUT_FILE: file });
  const { status, output } = await node("@playwright/test/cli.js", "test", "--reporter=list,json", "desktop-runtime");
  return { count: countOfPlaywright(readReport(file), status), output };
}

/** One line in plain sight, then each test with what went wrong at first. @param {ReturnType<typeof secondTries>} tries */
function printSecondTries(tries) {
  if (tries.length === 0) return;
  const tests = tries.length === 1 ? "test" : "tests";
  console.log(`${tries.length} ${tests} needed a second try: ${tries.map(({ name }) => name).join(", ")}`);
  for (const { name, why } of tries) console.log(`  ${name}: ${why}`);
}

/** @param {string} file */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}

/** @param {string} script Inside node_modules. @param {string[]} args */
const node = (script, ...args) => run(process.execPath, [join("node_modules", script), ...args]);

/** @param {string} command @param {string[]} args @returns {Promise<Ended>} */
function run(command, args) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (/** @type {string} */ text) => {
        output += text;
      });
    }
    child.once("error", (error) => resolve({ status: 1, output: `${output}${error.message}\n` }));
    child.once("close", (status) => resolve({ status: status ?? 1, output }));
  });
}

process.chdir(ROOT);
const counts = await runAll();
rmSync(REPORTS, { recursive: true, force: true });
const sum = (/** @type {keyof Count} */ key) => counts.reduce((total, count) => total + count[key], 0);
// Nothing run is nothing shown.
const failures = sum("passed") === 0 && sum("failed") === 0 ? 1 : sum("failed");
if (sum("skipped") > 0) console.log(`${sum("skipped")} tests were SKIPPED`);
printSecondTries(triedTwice);
console.log(`${sum("passed")} passed, ${failures} failed`);
process.exitCode = failures === 0 ? 0 : 1;

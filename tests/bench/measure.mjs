/** Measures what the window's user waits for, in the Chromium that the tests use. Ratios within one run count. `run.mjs` prepares it. */
import { cpus, loadavg } from "node:os";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import { build } from "vite";
import { startBrowserHost } from "../../electron/browser-host.mjs";
import { CHROMIUM_ARGS, findChromium, NO_CHROMIUM } from "../get-chromium.mjs";
import { getNgspice, NO_NGSPICE } from "../get-ngspice.mjs";
import { measureArranging, reportArranging } from "./arrange.mjs";
import { measureCircuit, reportCircuit } from "./circuit.mjs";
import { measureCommandField, reportCommandField } from "./command-field.mjs";
import { measureMakeUp, reportMakeUp } from "./make-up.mjs";
import { measurePaper, reportPaper } from "./paper.mjs";
import { measureProof, measureProvedEdits, reportProof, reportProvedEdits } from "./proof.mjs";
import { measureReadings, reportReadings } from "./readings.mjs";
import { measureRules, reportRules } from "./rules.mjs";
import { measureScope, reportScope } from "./scope.mjs";
import { measureScopeView, reportScopeView } from "./scope-view.mjs";
import { measureSheet } from "./sheet.mjs";
import { measureSurvey, reportSurvey } from "./survey.mjs";
import { measureOpening, measureSample, measureWindow } from "./window.mjs";

const ROUNDS = 100;
/** Boxes of the buildings that the sheet is measured with; the largest with `--long` only. */
const SIZES = [100, 500, 1000, 2000, 5000];
const LONG_SIZES = [10_000];
const MOST_DENSE = 9000;
/** The size that the targets are for. */
const TARGET_SIZE = 2000;
const LONG = process.argv.includes("--long");
const page = fileURLToPath(new URL("page", import.meta.url));
const folder = fileURLToPath(new URL("../../dist/bench", import.meta.url));

/** @type {Readonly<Record<string, string>>} */
const SHEET_WORDS = {
  panWhole: "pan, everything in view",
  zoomWhole: "zoom, everything in view",
  through: "zoom to full size and back",
  pan: "pan at full size",
  drag: "drag at full size",
};

const executablePath = await findChromium();
if (executablePath === undefined) {
  console.error(NO_CHROMIUM);
  process.exit(2);
}
await build({
  configFile: false,
  root: page,
  base: "./",
  logLevel: "warn",
  worker: { format: "es" },
  build: { outDir: folder, emptyOutDir: true, target: "es2023", modulePreload: { polyfill: false } },
});
const host = await startBrowserHost({ folder });
const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
try {
  const tab = await browser.newPage();
  tab.on("pageerror", (error) => console.error(error.message));
  await tab.goto(host.url);
  await tab.waitForFunction("typeof window.bench === 'function'");
  const result = await tab.evaluate(`window.bench(${ROUNDS})`);
  report(/** @type {import("./page/main.ts").BenchResult} */ (result), browser.version());
  const house = /** @type {string} */ (await tab.evaluate("window.houseText(1000)"));
  const folderOfWindow = fileURLToPath(new URL("../../dist/window", import.meta.url));
  reportWindow(await measureWindow(browser, house));
  target(
    "a finished sample from the start page, median",
    quantile(await measureSample(browser, folderOfWindow), 0.5),
    1000,
    "ms",
  );
  if (!reportScopeView(await measureScopeView(browser, folderOfWindow))) process.exitCode = 1;
  for (const boxes of LONG ? [...SIZES, ...LONG_SIZES] : SIZES) {
    // A file of that many boxes and half as many cables again is larger than what is opened.
    const make = boxes > MOST_DENSE ? "houseText" : "denseText";
    const text = /** @type {string} */ (await tab.evaluate(`window.${make}(${boxes})`));
    const cables = make === "denseText" ? boxes * 1.5 : boxes;
    reportSheet(boxes, cables, await measureSheet(browser, { text, boxes, folder: folderOfWindow }));
    if (boxes === TARGET_SIZE) reportOpening(boxes, await measureOpening(browser, text, folderOfWindow));
  }
  await tab.close();
} finally {
  await browser.close();
  await host.close();
}
if (!reportReadings(await measureReadings())) process.exitCode = 1;
if (!reportProof(await measureProof())) process.exitCode = 1;
if (!reportProvedEdits(await measureProvedEdits())) process.exitCode = 1;
if (!reportMakeUp(await measureMakeUp())) process.exitCode = 1;
if (!reportScope(await measureScope())) process.exitCode = 1;
if (!reportSurvey(await measureSurvey())) process.exitCode = 1;
if (!reportPaper(await measurePaper())) process.exitCode = 1;
if (!reportArranging(await measureArranging())) process.exitCode = 1;
if (!reportCommandField(await measureCommandField())) process.exitCode = 1;
reportRules(await measureRules());
const ngspice = getNgspice();
if (ngspice === undefined) console.error(`The circuit solver was not measured beside ngspice. ${NO_NGSPICE}`);
else if (!reportCircuit(await measureCircuit(ngspice))) process.exitCode = 1;

/** @param {import("./page/main.ts").BenchResult} result @param {string} version */
function report({ edits, firstCheck, parse, save, noise }, version) {
  console.log(
    `Chromium ${version}, Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? "unknown processor"}`,
  );
  console.log(`Noise of the machine: the same arithmetic took ${figures(noise)} ms\n`);
  const [small, large, , largeProposed] = edits;
  if (small === undefined || large === undefined || largeProposed === undefined)
    throw new Error("Two sizes are measured, without and with proposed.");
  for (const [index, { boxes, proposed, command, findings }] of edits.entries()) {
    const states = proposed ? ", proposed started, edits of as found that flow on" : "";
    console.log(`${boxes} boxes, ${boxes * 10} conductors, ${findings.length} edits${states}`);
    console.log(`  command to next state      ${figures(command)} ms`);
    console.log(`  command to its findings    ${figures(findings)} ms`);
    console.log(`  first check of the whole   ${firstCheck[index]?.toFixed(0)} ms`);
  }
  console.log(`Document of ${parse.boxes} boxes, ${(parse.bytes / 1e6).toFixed(1)} MB`);
  console.log(`  parse and validate         ${figures(parse.ms)} ms`);
  console.log(`  write as text              ${figures(save)} ms\n`);
  const growth = quantile(large.findings, 0.5) / quantile(small.findings, 0.5);
  target("edit to findings at 1,000 boxes, p95", quantile(large.findings, 0.95), 16, "ms");
  target("the same with proposed started, p95", quantile(largeProposed.findings, 0.95), 16, "ms");
  target("growth of the median from 100 to 1,000 boxes", growth, 1.3, "times");
  target("command to next state at 1,000 boxes, p95", quantile(large.command, 0.95), 4, "ms");
  target("parse and validate, median", quantile(parse.ms, 0.5), 100, "ms");
}

/** @param {import("./window.mjs").WindowTimes} times */
function reportWindow({ bare, opened, step, frame }) {
  console.log(`\nWindow with 1,000 boxes, ${step.length} steps of a drag at full size`);
  console.log(`  usable without a drawing   ${figures(bare)} ms`);
  console.log(`  usable with the drawing    ${figures(opened)} ms`);
  console.log(`  main thread busy a step    ${figures(step)} ms`);
  console.log(`  from frame to frame        ${figures(frame)} ms`);
  console.log(
    `  load of the machine        ${loadavg()
      .map((load) => load.toFixed(1))
      .join(" ")} on ${cpus().length} processors\n`,
  );
  target("drag at 1,000 boxes, median of a step", quantile(step, 0.5), 10, "ms");
  target("drag at 1,000 boxes, p95 of a step", quantile(step, 0.95), 20, "ms");
  target("opening 1,000 boxes, beyond the bare window", quantile(opened, 0.5) - quantile(bare, 0.5), 400, "ms");
}

/** @param {number} boxes @param {{ bare: number[], opened: number[] }} times */
function reportOpening(boxes, { bare, opened }) {
  console.log(`  usable without a drawing   ${figures(bare)} ms`);
  console.log(`  usable with the drawing    ${figures(opened)} ms`);
  const beyond = quantile(opened, 0.5) - quantile(bare, 0.5);
  target(`opening ${boxes} boxes, beyond the bare window`, beyond, 400, "ms");
}

/** @param {number} boxes @param {number} cables @param {import("./sheet.mjs").SheetTimes} times */
function reportSheet(boxes, cables, { checked, panWhole, zoomWhole, through, pan, drag, typing, heapMiB }) {
  console.log(`\nSheet with ${boxes} boxes and ${cables} cables, main thread busy a step, in thread time`);
  const rows = { panWhole, zoomWhole, through, pan, drag };
  for (const [name, { busy, frame }] of Object.entries(rows))
    console.log(
      `  ${SHEET_WORDS[name]?.padEnd(27)}${figures(busy)} ms   frame p95 ${quantile(frame, 0.95).toFixed(1)} ms`,
    );
  console.log(`  a key until it is painted  ${figures(typing)} ms`);
  console.log(`  heap after collection      ${heapMiB.toFixed(1)} MiB`);
  if (!checked) console.log("  The first check had stopped: signs of findings are not in the picture.");
  console.log(
    `  load of the machine        ${loadavg()
      .map((load) => load.toFixed(1))
      .join(" ")}\n`,
  );
  if (boxes !== TARGET_SIZE) return;
  target("pan with everything in view, p95 of a step", quantile(panWhole.busy, 0.95), 25, "ms");
  target("zoom with everything in view, p95 of a step", quantile(zoomWhole.busy, 0.95), 25, "ms");
  target("pan at full size, p95 of a step", quantile(pan.busy, 0.95), 15, "ms");
  target("drag at full size, p95 of a step", quantile(drag.busy, 0.95), 15, "ms");
  target("a key in a name field until it is painted, p95", quantile(typing, 0.95), 33, "ms");
  target("heap", heapMiB, 80, "MiB");
}

/** @param {readonly number[]} values */
function figures(values) {
  const [low, median, high] = [0, 0.5, 0.95].map((share) => quantile(values, share).toFixed(2).padStart(7));
  return `median ${median}   p95 ${high}   least ${low}`;
}

/** @param {readonly number[]} values @param {number} share */
function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** @param {string} what @param {number} value @param {number} most @param {string} unit */
function target(what, value, most, unit) {
  const met = value <= most;
  if (!met) process.exitCode = 1;
  console.log(`${met ? "met   " : "MISSED"} ${what}: ${value.toFixed(2)} ${unit}, at most ${most}`);
}

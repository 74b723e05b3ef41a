/**
 * Measures job folders from a drawing that was read to the bytes of its PDF: checked, proved and compared, laid out, and
 * written. One of all sheets of a small job, and one of the drawing and the cards of a house whose boxes are of plastic. Processor time of the process; the first round, in which nothing is compiled yet, is what a person on the command
 * line waits for. Alone: `node tests/bench/paper.mjs`.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { figures, isStarted, middle, reportLoad, withCore } from "./core-bench.mjs";

/** @typedef {typeof import("../../shared-model/format/parse-project.ts") & typeof import("../../shared-model/analysis/sheet-input.ts") & typeof import("../../shared-model/sheets/registry.ts") & typeof import("../../shared-model/sheets/page/number-pages.ts") & typeof import("../../shared-model/hosts/paper.ts")} Core */

const PARTS = [
  "shared-model/format/parse-project.ts",
  "shared-model/analysis/sheet-input.ts",
  "shared-model/sheets/registry.ts",
  "shared-model/sheets/page/number-pages.ts",
  "shared-model/hosts/paper.ts",
];
const MOST = 5000;
const PAGES = 20;
const ROUNDS = 8;
const CUTS = [400, 600, 700];
const DAY = "2026-05-04";

const { resolve } = createRequire(import.meta.url);
const fileOf = (/** @type {string} */ subset, /** @type {number} */ weight) =>
  readFileSync(
    resolve(`@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`),
  );
const face = Object.fromEntries(
  CUTS.flatMap((weight) => [
    [`latin-${weight}`, fileOf("latin", weight)],
    [`extended-${weight}`, fileOf("latin-ext", weight)],
  ]),
);

/** Milliseconds of the process since it began. */
function spent() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** @typedef {import("../../shared-model/model/project.ts").Project} Project */
/** @typedef {{ readonly title: string, readonly sample: string, readonly kinds?: readonly string[], readonly change?: (project: Project) => Project }} Job */

/** All boxes of plastic, and another connector on one joint in each of twenty: a card for each. @param {Project} project @returns {Project} */
function withTwentyChanges(project) {
  const asFound = structuredClone(project.asFound);
  for (const box of Object.values(asFound.enclosures))
    if (box.kind === "box") Object.assign(box, { material: "nonmetallic" });
  const proposed = structuredClone(asFound);
  const joints = Object.values(proposed.enclosures).flatMap(({ splices }) => Object.values(splices).slice(0, 1));
  if (joints.length < PAGES) throw new Error(`The sample has ${joints.length} boxes with joints.`);
  for (const joint of joints.slice(0, PAGES)) Object.assign(joint, { connector: "lever-5" });
  return { ...project, asFound, proposed };
}

/** @type {readonly Job[]} */
const JOBS = [
  { title: "the laundry sample, all sheets", sample: "laundry-proposed" },
  {
    title: "the house sample, drawing and cards of 20 plastic boxes",
    sample: "house-twelve-circuits",
    kinds: ["drawing", "make-up"],
    change: withTwentyChanges,
  },
];

/** @returns Of each job. */
export function measurePaper() {
  return withCore(PARTS, async (/** @type {Core} */ core) => {
    const measured = [];
    for (const job of JOBS) measured.push({ title: job.title, ...(await measureJob(core, job)) });
    return measured;
  });
}

/**
 * @param {Core} core @param {Job} job
 * @returns Milliseconds of every round by what they went into, the first round first; and what came out.
 */
async function measureJob({ parseProject, sheetInput, SHEETS, numberFolder, pdfOf }, { sample, kinds, change }) {
  const text = readFileSync(fileURLToPath(new URL(`../../assets/samples/${sample}.loadside`, import.meta.url)), "utf8");
  const sheets = SHEETS.filter(({ kind }) => kinds === undefined || kinds.includes(kind));
  /** @type {number[][]} */
  const [gathered, laidOut, written, whole] = [[], [], [], []];
  let [pages, bytes] = [0, 0];
  for (let round = 0; round <= ROUNDS; round++) {
    const opened = parseProject(text);
    if (!opened.ok) throw new Error("The sample does not open.");
    const project = change === undefined ? opened.value.project : change(opened.value.project);
    const start = spent();
    const input = sheetInput(project, { state: "proposed", paper: "letter", date: DAY });
    const checked = spent();
    const folder = numberFolder(sheets.map(({ make }) => make(input)));
    const laid = spent();
    const pdf = await pdfOf(folder, { title: "Job folder", date: DAY, face: /** @type {any} */ (face) });
    const done = spent();
    gathered?.push(checked - start);
    laidOut?.push(laid - checked);
    written?.push(done - laid);
    whole?.push(done - start);
    [pages, bytes] = [folder.length, pdf.length];
  }
  return { gathered, laidOut, written, whole, pages, bytes };
}

/** @param {Awaited<ReturnType<typeof measurePaper>>} jobs @returns {boolean} Whether the targets were met. */
export function reportPaper(jobs) {
  const met = jobs.map(reportJob);
  reportLoad();
  return met.every(Boolean);
}

/** @param {Awaited<ReturnType<typeof measurePaper>>[number]} result @returns {boolean} */
function reportJob({ title, gathered = [], laidOut = [], written = [], whole = [], pages, bytes }) {
  console.log(
    `\nJob folder of ${title}: ${pages} pages, ${Math.round(bytes / 1024)} KiB; ${ROUNDS} rounds after the first`,
  );
  for (const [name, ms] of /** @type {const} */ ([
    ["checked, proved, compared", gathered],
    ["laid out", laidOut],
    ["written as PDF", written],
  ]))
    console.log(`  ${name.padEnd(28)} ${figures(ms.slice(1))} ms; the first time ${ms[0]?.toFixed(0)}`);
  const [first = Number.NaN, ...later] = whole;
  const met = pages >= PAGES && first <= MOST;
  console.log(
    `${met ? "met   " : "MISSED"} at least ${PAGES} pages: ${first.toFixed(0)} ms the first time, ${middle(later).toFixed(0)} then, at most ${MOST}`,
  );
  return met;
}

if (isStarted(import.meta) && !reportPaper(await measurePaper())) process.exitCode = 1;

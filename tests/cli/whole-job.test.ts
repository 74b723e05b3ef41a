/** A whole job on the command line, from the sample as found to the folder on paper, in one folder and in one file. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { wiringOf } from "../e2e/support/wiring.ts";
import { HAS_POPPLER, textOfPdf } from "../sheets/read-pdf.ts";
import { buildLoadside, loadside } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-whole-job-"));
const JOB = "job.loadside";

beforeAll(buildLoadside, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, value: unknown): string => {
  writeFileSync(join(folder, name), JSON.stringify(value));
  return name;
};

/** Runs a verb on the job. @returns What it printed. */
function run(status: number, ...args: readonly string[]): string {
  const ended = loadside(args, { cwd: folder });
  expect([ended.status, ended.stderr], args.join(" ")).toEqual([status, ""]);
  return ended.stdout;
}

function readJob(): Project {
  const read = parseProject(readFileSync(join(folder, JOB), "utf8"));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(" "));
  return read.value.project;
}

/** Proposed in words, without the type of the device at the laundry: the sample has the one that the code does not take there. */
const proposedWiring = ({ proposed, ...others }: Project): readonly string[] =>
  wiringOf({ ...others, asFound: proposed ?? others.asFound }).filter((line) => !line.startsWith("B1: R1b "));

/** The worked run of the trade card: one energisation, cold readings, and three joins, the last for the last cable. */
const volts = (cable: string, [toWhite, toGround, whiteToGround]: readonly [number, number, number]) =>
  Object.entries({ "black-white": toWhite, "black-ground": toGround, "white-ground": whiteToGround }).map(
    ([pair, value]) => ({ arrangement: "A2", instrument: "low-impedance-meter", cable, pair, value }),
  );
const joined = (cables: readonly string[], works: readonly string[]) => ({
  ...{ arrangement: "A3", instrument: "plug-in-tester", switches: { S1: "on" } },
  ...{ joined: ["C1", ...cables], works },
});
const SURVEY = [
  ...volts("C1", [122, 122, 0]),
  ...["C2", "C3", "C4", "C5"].flatMap((cable) => volts(cable, [0, 0, 0])),
  ...["C2", "C3", "C4", "C5"].map((cable) => ({
    ...{ arrangement: "A1", instrument: "continuity", nothingPlugged: true, switches: { S1: "on" } },
    ...{ cable, pair: "black-white", value: cable === "C4" ? 18 : "open" },
  })),
  joined(["C2", "C4"], ["R2", "R3", "L1"]),
  joined(["C2", "C3"], ["R2", "R3", "R4"]),
  joined(["C5"], ["R5"]),
];
const BEHIND = ["R1b", "R2", "R3", "R5"];
const TESTS = [
  { stage: "before", at: "R1", test: "hot-neutral", value: 121.8 },
  { stage: "after", at: "R1b", test: "own-test", outlets: BEHIND },
  { stage: "after", at: "R1b", test: "reset", outlets: BEHIND },
  { stage: "after", at: "R4b", test: "plug-in-button", outlets: ["R4b"] },
];
const WHO = { by: "Pat Example", takenAt: "2026-05-04" };
const INTENT = {
  supply: "C1",
  downstream: [
    { cable: "C2", protect: true },
    { cable: "C3", protect: false },
    { cable: "C4", protect: false },
    { cable: "C5", protect: true },
  ],
};
const NEW_AT_R1 = { replace: [{ device: "R1", type: "dual-function-receptacle-15" }] };

test("new, survey, fit, record, scope, makeup, export: the same figures at every step", () => {
  run(0, "new", "--sample", "laundry-box", "--out", JOB);

  const survey = ["survey", JOB, "--box", "B1", "--json"];
  expect(JSON.parse(run(0, ...survey))).toMatchObject({ atStart: 120, left: 120 });
  const found = run(0, ...survey, "--readings", put("survey.json", { ...WHO, readings: SURVEY }), "--out", JOB);
  const told = JSON.parse(found);
  expect(told).toMatchObject({ atStart: 120, left: 1 });
  expect(told.cables.map(({ role }: { role: { words: string } }) => role.words)).toEqual([
    ...["supply", "feeds R2 and R3", "feeds R4", "feeds L1", "feeds R5"],
  ]);

  // Ten off, sixteen on, three new joints: counted by hand, see the moves of the trade card.
  const intent = put("intent.json", { ...INTENT, ...NEW_AT_R1 });
  const planned = JSON.parse(run(0, "makeup", JOB, "--box", "B1", "--intent", intent, "--json"));
  expect(planned.moves).toMatchObject({ detach: 10, attach: 16, newSplices: 3 });

  const fitted = JSON.parse(run(0, "fit", JOB, "--outlet", "R1", "--out", JOB, "--json"));
  expect(fitted).toMatchObject({
    moves: { detach: 10, attach: 16, newSplices: 3 },
    // Ten conductors of 12 AWG, one device, five grounds of which one counts a quarter: 22.5 + 4.5 + 2.25 + 0.5625.
    fill: { after: { totalIn3: 29.8125, spareIn3: 0.4875, verdict: "fits" } },
  });
  run(0, "fit", JOB, "--outlet", "R4", "--out", JOB);
  expect(proposedWiring(readJob())).toEqual(proposedWiring(openSample("laundry-proposed")));

  const record = put("record.json", { ...WHO, readings: TESTS });
  const compared = JSON.parse(run(0, "record", JOB, "--readings", record, "--out", JOB, "--json"));
  expect(compared).toMatchObject({ added: TESTS.length });
  run(0, "record", JOB);

  const scope = JSON.parse(run(0, "scope", JOB, "--json"));
  expect(scope.totals).toMatchObject({ detach: 13, attach: 19, newJoints: 3, devices: 2 });
  expect(scope.findings.introduced.filter(({ severity }: { severity: string }) => severity !== "advice")).toEqual([]);

  // What was fitted is what would be made: nothing is left to move.
  const again = run(0, "makeup", JOB, "--box", "B1", "--intent", put("same.json", INTENT), "--json");
  expect(JSON.parse(again).moves).toMatchObject({ detach: 0, attach: 0, newSplices: 0 });

  const folderOf = ["export", JOB, "--sheet", "job-folder", "--date", "2026-05-04", "--out", "job.pdf"] as const;
  // No label is called for by what was fitted here, and the folder says that it has no page for one.
  const { status, stderr } = loadside(folderOf, { cwd: folder });
  expect([status, stderr]).toEqual([0, `${JOB}: Left out of the folder, with nothing to say: labels.\n`]);
  const pdf = readFileSync(join(folder, "job.pdf"));
  const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(10);
  if (HAS_POPPLER) {
    const words = textOfPdf(pdf).replace(/\s+/g, " ");
    for (const one of ["29.8125", "10 detach, 16 attach", `folder ${pages} of ${pages}`, "Pat Example", "R1b"])
      expect(words).toContain(one);
  }
  expect(readdirSync(folder).sort()).toEqual(
    [JOB, "job.pdf", "intent.json", "record.json", "same.json", "survey.json"].sort(),
  );
});

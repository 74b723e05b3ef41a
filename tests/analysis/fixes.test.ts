import { readFileSync } from "node:fs";
import { afterAll, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { openSession } from "../../shared-model/analysis/session.ts";
import type { Finding, Fix } from "../../shared-model/answers/finding.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { type JumperId, jumperEnd } from "../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { getEndFacts } from "../../shared-model/queries/end-facts.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { compareWireSize } from "../../shared-model/units/wire-size.ts";
import { withMistakes } from "../builders/mistakes.ts";
import { Picker } from "../builders/picker.ts";
import { checkDocument, rawAnswers } from "../rules/check-drawing.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
/** Wrong drawings, spread over the samples. */
const DRAWINGS = LONG ? 1_000 : 100;
const MOST_MISTAKES = 4;

const starts: readonly { readonly name: string; readonly project: Project }[] = samples.map(({ name, file }) => {
  const parsed = parseProject(readFileSync(new URL(`../../assets/samples/${file}`, import.meta.url), "utf8"));
  if (!parsed.ok) throw new Error(`${file} does not open.`);
  const { project } = parsed.value;
  if (project.proposed !== undefined) return { name, project };
  const started = runCommand(project, { command: "start-proposed", args: {} });
  if (!started.ok) throw new Error(started.refusal.message);
  return { name, project: started.project };
});

/**
 * Looked at without the session that judged the fix: everything from nothing, severities as the rules give them, and
 * consequences counted whether or not they are folded under a cause: a repaired cause brings to light what it covered.
 */
interface Standing {
  /** Their keys, one for each time that one is told. */
  readonly serious: readonly string[];
  readonly guarded: ReadonlySet<string>;
}

const SERIOUS: ReadonlySet<string> = new Set(["danger", "violation"]);

function standingOf(project: Project): Standing {
  const copy = structuredClone(project);
  const reports = rawAnswers(copy, "proposed").flatMap((parts) => parts.flatMap((part) => part.reports));
  const serious = reports
    .filter(({ rule, report }) => SERIOUS.has(report.severity ?? rule.severity))
    .map(({ rule, report }) => findingKey(rule.id, report.subjects));
  return { serious, guarded: guarded(getInstallation(copy, "proposed")) };
}

const TOO_SMALL = /^conductor-too-small\|jumper:([^|]+)\|(.+)$/;

/**
 * A pigtail that a fix makes, like a conductor in its joint that is too small behind the same breaker already: it is as thick
 * as that and carries no more, and what cures the one, a smaller breaker, cures both.
 */
function isLikeItsJoint(key: string, before: Standing, project: Project, fixed: Project): boolean {
  const [, id, breaker] = key.match(TOO_SMALL) ?? [];
  if (id === undefined || breaker === undefined) return false;
  const jumper = id as JumperId;
  if (Object.values(getInstallation(project, "proposed").enclosures).some(({ jumpers }) => jumper in jumpers))
    return false;
  const installation = getInstallation(fixed, "proposed");
  const box = Object.values(installation.enclosures).find(({ jumpers }) => jumper in jumpers);
  const made = box?.jumpers[jumper];
  if (box === undefined || made === undefined) return false;
  const beside = (["a", "b"] as const).flatMap((side) => {
    const at = box.places[jumperEnd(jumper, side)]?.at;
    return at?.kind === "splice" ? membersOf(box, at.splice) : [];
  });
  return beside.some((end) => {
    const { parsed, awg } = getEndFacts(installation, box, end);
    const of = parsed.of === "cable" ? `cable:${parsed.cable}` : `jumper:${parsed.jumper}`;
    return before.serious.includes(`conductor-too-small|${of}|${breaker}`) && compareWireSize(made.awg, awg) >= 0;
  });
}

/** Outlets that a device protects, by key. */
const guarded = (installation: Installation): ReadonlySet<string> =>
  new Set(
    allSections(installation).flatMap((section) =>
      sectionProof(section).outlets.flatMap(({ standing, protectedBy }) =>
        protectedBy.length > 0 ? [standing.outlet.key] : [],
      ),
    ),
  );

/** Outlets of a device that was replaced live on in its successor. */
function successorsOf(installation: Installation): ReadonlyMap<string, string> {
  const replaced = new Map<string, string>();
  for (const { devices } of Object.values(installation.enclosures))
    for (const device of Object.values(devices))
      if (device.replaces !== undefined) replaced.set(device.replaces, device.id);
  return replaced;
}

const tally = { findings: 0, tried: 0, withdrawn: 0, refused: 0 };
const applied = new Map<string, number>();
const objections = new Map<string, number>();

function tryEveryFix(name: string, project: Project): void {
  const session = openSession(structuredClone(project));
  const before = standingOf(project);
  for (const finding of session.report("proposed").findings) {
    tally.findings += 1;
    for (const fix of [...(finding.fix === undefined ? [] : [finding.fix]), ...(finding.offers ?? [])])
      tryFix(name, project, before, session, finding, fix);
  }
}

function tryFix(
  name: string,
  project: Project,
  before: Standing,
  session: ReturnType<typeof openSession>,
  finding: Finding,
  fix: Fix,
): void {
  tally.tried += 1;
  const [judged] = session.preview("proposed", [fix.call], finding.key);
  if (judged === undefined || "refused" in judged) {
    tally.refused += 1;
    objections.set(`${finding.rule}: refused`, (objections.get(`${finding.rule}: refused`) ?? 0) + 1);
    return;
  }
  if (judged.objection !== undefined) {
    tally.withdrawn += 1;
    objections.set(finding.rule, (objections.get(finding.rule) ?? 0) + 1);
    return;
  }
  const done = runCommand(project, fix.call);
  if (!done.ok) throw new Error(done.refusal.message);
  const where = `${name}: "${fix.title}" for ${finding.key}`;
  expect(invariantProblems(done.project), where).toEqual([]);
  expect(done.project.asFound, where).toBe(project.asFound);
  const after = standingOf(done.project);
  const worse = after.serious.filter((key) => !isLikeItsJoint(key, before, project, done.project));
  expect(worse.length, where).toBeLessThanOrEqual(before.serious.length);
  const successors = successorsOf(getInstallation(done.project, "proposed"));
  // What already came for another is replaced in its turn under the name of that other.
  const stoodFor = new Map([...successorsOf(getInstallation(project, "proposed"))].map(([old, now]) => [now, old]));
  const lost = [...before.guarded].filter((outlet) => {
    const [device = ""] = outlet.split("/");
    const successor = successors.get(stoodFor.get(device) ?? device) ?? "";
    return !after.guarded.has(outlet) && !after.guarded.has(successor);
  });
  expect(lost, where).toEqual([]);
  const again = checkDocument(structuredClone(done.project), "proposed").findings;
  if (finding.rule !== "not-carried-over")
    expect(
      again.some(({ key }) => key === finding.key),
      `${where} is mended`,
    ).toBe(false);
  applied.set(finding.rule, (applied.get(finding.rule) ?? 0) + 1);
}

test.each(starts)(
  "every fix over the sample $name mends and takes nothing away",
  ({ name, project }) => {
    tryEveryFix(name, project);
  },
  120_000,
);

test(
  `every fix over ${DRAWINGS} wrong drawings mends and takes nothing away`,
  () => {
    const small = starts.filter(({ project }) => Object.keys(project.asFound.enclosures).length <= 20);
    for (let index = 0; index < DRAWINGS; index += 1) {
      const start = small[index % small.length] as (typeof starts)[number];
      const { project } = withMistakes(start.project, new Picker(index), MOST_MISTAKES);
      tryEveryFix(`${start.name}, mistakes ${index}`, project);
    }
  },
  LONG ? 3_600_000 : 300_000,
);

test("a pigtail of 14 AWG behind a breaker of 20 A, as the cables that it is spliced with", () => {
  const start = starts.find(({ name }) => name === "two-wire-bedroom");
  if (start === undefined) throw new Error("No such sample.");
  const target = (id: string) => ({ kind: "device", id });
  const calls = [
    { target: target("device-R2b"), field: "entryKind", value: "push-in" },
    { target: target("device-Q4"), field: "breakerRatingA", value: 20 },
  ].map((args) => ({ command: "set-property", args: { state: "proposed", ...args } }));
  const done = runCommand(start.project, { command: "run-together", args: { title: "two mistakes", calls } });
  if (!done.ok) throw new Error(done.refusal.message);
  const session = openSession(structuredClone(done.project));
  const finding = session.report("proposed").findings.find(({ rule }) => rule === "push-in-feedthrough");
  expect(finding?.fix?.title).toContain("Splice the conductors of R2b");
  tryEveryFix(start.name, done.project);
});

afterAll(() => {
  // The laws above say nothing unless fixes were given, and most of them stood.
  const sum = [...applied.values()].reduce((total, one) => total + one, 0);
  const table = (counts: ReadonlyMap<string, number>) => JSON.stringify(Object.fromEntries([...counts].sort()));
  console.log(
    `fixes: ${tally.findings} findings, ${tally.tried} fixes tried, ${sum} applied ${table(applied)}, ${tally.withdrawn} withdrawn, ${tally.refused} refused ${table(objections)}`,
  );
  expect(sum).toBeGreaterThan(DRAWINGS / 4);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import type { Finding, Fix } from "../../shared-model/answers/finding.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { type Mistake, mistakes, spoil } from "./box-mistakes.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";

const RUNS = process.env.LOADSIDE_LONG === "1" ? 1000 : 80;

/** Rules whose fixes are made inside one box, and what box fill may do under each. */
const BOX_RULES: Readonly<Record<string, "same" | "may change">> = {
  "box-overfull": "may change",
  "cable-entry-unsecured": "same",
  "splice-no-connector": "same",
  "splice-over-capacity": "same",
  "two-wires-one-screw": "same",
  "clamp-hole-doubled": "same",
  "push-in-gauge": "same",
  "metal-box-unbonded": "same",
  "egc-not-spliced-all": "same",
  "device-egc-missing": "same",
};

const STARTS = { laundryAsFound, laundryProposed, multiwire };
const starts = fc.constantFrom(...(Object.keys(STARTS) as (keyof typeof STARTS)[]));

/** Undefined where two mistakes together are no sound document. */
function spoilt(start: keyof typeof STARTS, all: readonly Mistake[]): Project | undefined {
  const drawing = STARTS[start]();
  for (const mistake of all) spoil(drawing, mistake);
  const project = drawing.project();
  const both: Project = { ...project, proposed: structuredClone(project.asFound) };
  return invariantProblems(both).length === 0 ? both : undefined;
}

const serious = (project: Project): readonly string[] =>
  checkDocument(project, "proposed")
    .findings.filter(({ severity }) => severity === "danger" || severity === "violation")
    .map(({ key }) => key);

/** What was said before a fix, folded or not: what a cause covered may show once that is mended. */
const saidIn = (project: Project): readonly string[] =>
  rawAnswers(project, "proposed")
    .flat()
    .flatMap(({ reports }) => reports)
    .filter(({ rule, report }) => ["danger", "violation"].includes(report.severity ?? rule.severity))
    .map(({ rule, report }) => findingKey(rule.id, report.subjects));

function protectedOutlets({ proposed, asFound }: Project): readonly string[] {
  return allSections(proposed ?? asFound)
    .flatMap((section) => sectionProof(section).outlets)
    .filter(({ protectedBy }) => protectedBy.length > 0)
    .map(({ standing }) => standing.outlet.key);
}

const SAME_FAULT = /^(conductor-too-small|hot-neutral-joined|neutral-ground-joined)\|jumper:([^|]+)(.*)$/;

/**
 * A fault that was there before and shows at a jumper that the fix made: a pigtail like conductors that are too thin
 * already behind the same breaker, a link within a joint that is a short already. The session withholds such a fix.
 */
function showsElsewhere(key: string, { proposed, asFound }: Project, before: readonly string[]): boolean {
  const [, rule, jumper, rest = ""] = key.match(SAME_FAULT) ?? [];
  if (rule === undefined || jumper === undefined) return false;
  const isOld = Object.values((proposed ?? asFound).enclosures).some(({ jumpers }) => jumper in jumpers);
  return !isOld && before.some((one) => one.startsWith(`${rule}|`) && one.endsWith(rest));
}

const OF_THE_GROUND =
  /^(device-egc-missing\|device|metal-box-unbonded\|enclosure|egc-not-spliced-all\|enclosure|egc-broken-by-removal\|device):([^|]+)$/;

/** A ground that arrives in another box shows what was missing there: it was not there to be joined to before. */
function comesToLight(key: string, finding: Finding, { proposed, asFound }: Project): boolean {
  const [, , id] = key.match(OF_THE_GROUND) ?? [];
  if (id === undefined || finding.rule !== "egc-not-spliced-all") return false;
  const home = Object.values((proposed ?? asFound).enclosures).find((box) => box.id === id || id in box.devices);
  return home !== undefined && home.id !== finding.subjects[0]?.id;
}

const fillsOf = ({ proposed, asFound, edition }: Project): readonly number[] =>
  Object.values((proposed ?? asFound).enclosures).map(
    (box) => fillLedger(proposed ?? asFound, box, getEdition(edition)).total,
  );

const fixesOf = ({ fix, offers = [] }: Finding): readonly Fix[] => [...(fix === undefined ? [] : [fix]), ...offers];

/** Every fix and offer over a document runs, clears its finding, makes nothing worse and takes no protection away. */
function tryAll(project: Project, count: (rule: string) => void = () => {}): void {
  const before = saidIn(project);
  const guarded = protectedOutlets(project);
  for (const finding of checkDocument(project, "proposed").findings) {
    const fill = BOX_RULES[finding.rule];
    if (fill === undefined) continue;
    for (const fix of fixesOf(finding)) {
      count(finding.rule);
      const done = runCommand(project, fix.call);
      if (!done.ok) throw new Error(`${finding.rule}: ${fix.title}: ${done.refusal.message}`);
      expect(invariantProblems(done.project)).toEqual([]);
      const after = serious(done.project);
      const fresh = after.filter(
        (key) => !before.includes(key) && !showsElsewhere(key, project, before) && !comesToLight(key, finding, project),
      );
      expect({ fix, new: fresh }).toEqual({ fix, new: [] });
      expect({ fix, still: after.includes(finding.key) }).toEqual({ fix, still: false });
      expect(protectedOutlets(done.project)).toEqual(expect.arrayContaining([...guarded]));
      if (fill === "same") expect(fillsOf(done.project)).toEqual(fillsOf(project));
    }
  }
}

test("every fix and offer runs, clears its finding, makes nothing worse and takes no protection away", () => {
  const tried = new Map<string, number>();
  fc.assert(
    fc.property(starts, mistakes, (start, all) => {
      const project = spoilt(start, all);
      if (project !== undefined) tryAll(project, (rule) => tried.set(rule, (tried.get(rule) ?? 0) + 1));
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
  // Over few drawings a rule or two may not come up; two conductors in one clamp hole come up about once in a thousand.
  expect(tried.size).toBeGreaterThanOrEqual(Object.keys(BOX_RULES).length - (RUNS < 1000 ? 3 : 1));
}, 1_200_000);

test("a bare wire from the neutral to the ground screw is not spliced with the white to get both off a push-in entry", () => {
  const drawing = multiwire().setDevice("RA", { entryKind: "push-in" }).put({ "BAg.1": "RA.N1" });
  const project = proposing(drawing);
  expect(findingOn(project, "push-in-gauge", "RA").fix).toBeUndefined();
  tryAll(project);
});

test("what is under a screw that the ground ran through is told once it does no more", () => {
  const drawing = laundryAsFound()
    .put({ "C4.cu@B1": "cap" })
    .cable("N7", "al-10-2-g", "country", "B7")
    .put({ "N7.bk@B7": "L1.G", "N7.wh@B7": "L1.G", "N7.cu@B7": "L1.G" });
  const project = proposing(drawing);
  expect(findingOn(project, "egc-not-spliced-all", "B1").fix?.title).toContain("Join C4 bare to Z");
  tryAll(project);
});

test("a pigtail for the metal of a box does not hang on the screw of a device: the screw gets its own", () => {
  const drawing = laundryProposed().removeJumper("B4b").put({ "C3.cu@B4": "R4b.G" });
  const project = proposing(drawing);
  const { fix } = findingOn(project, "metal-box-unbonded", "B4");
  const done = fix && runCommand(project, fix.call);
  expect(done?.ok && serious(done.project).filter((key) => key.includes("R4b.G"))).toEqual([]);
  tryAll(project);
});

test("grounds that a ground comes to in another box hang on a screw there: told with it, and not by the fix", () => {
  const drawing = laundryProposed().removeJumper("g").put({ "B6b.1": "R5.G" });
  const project = proposing(drawing);
  expect(findingOn(project, "egc-not-spliced-all", "B1").fix?.title).toContain("Join E2 to E1");
  tryAll(project);
});

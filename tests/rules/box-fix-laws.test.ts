import fc from "fast-check";
import { expect, test } from "vitest";
import type { Finding, Fix } from "../../shared-model/answers/finding.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { connectors } from "../../shared-model/catalog/connectors.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Box, EntryMeans } from "../../shared-model/model/enclosure.ts";
import { type EndKey, type EntryId, parseEnd } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
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

type Mistake = readonly [kind: number, which: number, what: number];

/** One mistake of those that the rules of a box look for, read off three numbers. */
function spoil(drawing: Drawing, [kind, which, what]: Mistake): void {
  const boxes = Object.values(drawing.enclosures).filter((one): one is typeof one & Box => one.kind === "box");
  const box = boxes[which % boxes.length];
  if (box === undefined) return;
  const pick = <T>(list: readonly T[]): T | undefined => list[what % list.length];
  switch (kind) {
    case 0: {
      const end = pick(Object.keys(box.places) as EndKey[]);
      const at = placesIn(box)[(which * 7 + what) % placesIn(box).length];
      if (end !== undefined && at !== undefined) box.places[end] = { at };
      return;
    }
    case 1: {
      const jumper = pick(Object.keys(box.jumpers));
      if (jumper !== undefined) drawing.removeJumper(jumper);
      return;
    }
    case 2: {
      const splice = pick(Object.keys(box.splices));
      const connector = ["none", "taped", "unknown", ...connectors.map(({ id }) => id)][
        which % (connectors.length + 3)
      ];
      if (splice !== undefined && connector !== undefined) drawing.setSplice(splice, { connector });
      return;
    }
    case 3: {
      const device = pick(Object.keys(box.devices));
      const entryKind = (["side-screw", "push-in", "clamp-plate"] as const)[which % 3];
      if (device !== undefined && entryKind !== undefined) drawing.setDevice(device, { entryKind });
      return;
    }
    case 4: {
      const entry = pick(Object.values(box.entries));
      const means = (["none", "internal-clamp"] satisfies EntryMeans[])[which % 2];
      const { entries } = drawing.at(box.name);
      if (entry !== undefined && means !== undefined) entries[entry.id as EntryId] = { ...entry, means };
      return;
    }
    case 5: {
      const facts: readonly Partial<Box>[] = [
        { material: "nonmetallic", shape: "device" },
        { material: "unknown" },
        { volume: { kind: "marked", volumeIn3: cubicInches(10 + (what % 20)) } },
        { volume: { kind: "table", size: "4x1-1/2 square" } },
        { internalClamps: "unknown" },
        { beingSurveyed: true },
      ];
      drawing.setBox(box.name, pick(facts) ?? {});
      return;
    }
    case 6: {
      const item = pick(cableItems);
      const name = `N${Object.keys(drawing.cables).length}`;
      if (item === undefined) return;
      drawing.cable(name, item.id, box.name, "country");
      for (const end of Object.keys(drawing.at(box.name).places) as EndKey[]) {
        const places = placesIn(box);
        const parsed = parseEnd(end);
        const at = places[(which + end.length) % places.length];
        if (parsed?.of === "cable" && parsed.cable === name && at !== undefined)
          drawing.at(box.name).places[end] = { at };
      }
      return;
    }
    default: {
      const cable = pick(Object.keys(drawing.cables));
      if (cable !== undefined) drawing.setConductors(cable, which % 2 === 0 ? { awg: "14" } : { stranded: true });
    }
  }
}

const placesIn = (box: Box): readonly Place["at"][] => [
  { kind: "loose" },
  { kind: "capped" },
  { kind: "bond" },
  ...Object.values(box.splices).map(({ id }) => ({ kind: "splice", splice: id }) as const),
  ...Object.values(box.devices).flatMap((device) =>
    terminalsOf(device).flatMap(({ name, holes }) =>
      Array.from({ length: holes }, (_, hole) => ({
        kind: "terminal" as const,
        device: device.id,
        terminal: name,
        hole: hole + 1,
      })),
    ),
  ),
];

const mistakes = fc.array(fc.tuple(fc.nat(7), fc.nat(), fc.nat()), { minLength: 1, maxLength: 5 });

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
  /^(device-egc-missing\|device|metal-box-unbonded\|enclosure|egc-not-spliced-all\|enclosure):([^|]+)$/;

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
  // Over few drawings a rule or two may not come up.
  expect(tried.size).toBeGreaterThanOrEqual(Object.keys(BOX_RULES).length - (RUNS < 1000 ? 3 : 0));
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

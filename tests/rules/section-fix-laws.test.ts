import fc from "fast-check";
import { expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { proposing } from "./fix-tester.ts";
import { alone, laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { protectedNames } from "./section-fix-tester.ts";

const RUNS = process.env.LOADSIDE_LONG === "1" ? 1000 : 40;
/** Rules whose fixes change where conductors of a circuit are; those of grounds are tried elsewhere. */
const OURS: ReadonlySet<string> = new Set([
  "conductor-too-small",
  "polarity-swapped",
  "switch-in-neutral",
  "neutral-ground-joined",
  "line-load-swapped",
  "line-load-half-swapped",
  "neutral-both-sides",
  "downstream-neutral-on-line",
  "downstream-hot-on-line",
  "outlet-not-protected",
]);

/** One slip of somebody who makes up a box: an end elsewhere, two exchanged, a jumper too many, two terminals exchanged. */
function slip(drawing: Drawing, [kind, which, where]: readonly [number, number, number]): void {
  const boxes = Object.values(drawing.enclosures);
  const box = boxes[which % boxes.length];
  if (box === undefined) return;
  const ends = Object.keys(box.places) as EndKey[];
  const end = ends[where % ends.length];
  const other = ends[(where * 3 + which) % ends.length];
  const places: readonly Place["at"][] = [
    { kind: "capped" },
    ...Object.values(box.splices).map(({ id }) => ({ kind: "splice", splice: id }) as const),
    ...Object.values(box.devices).flatMap((device) =>
      terminalsOf(device).map(
        ({ name }) => ({ kind: "terminal", device: device.id, terminal: name, hole: 1 }) as const,
      ),
    ),
  ];
  const at = places[(where * 5 + which) % places.length];
  const to = places[(where + 1) % places.length];
  if (end === undefined || other === undefined || at === undefined || to === undefined) return;
  switch (kind % 4) {
    case 0:
      box.places[end] = { at };
      return;
    case 1: {
      const kept = box.places[end] as Place;
      box.places[end] = box.places[other] as Place;
      box.places[other] = kept;
      return;
    }
    case 2: {
      if (at.kind === "capped" || to.kind === "capped") return;
      const id = `extra${Object.keys(box.jumpers).length}`;
      box.jumpers[id as never] = {
        id: id as never,
        name: id,
        awg: "12",
        colour: "black",
        material: "copper",
        stranded: false,
        order: 99,
      };
      box.places[`${id}.a` as EndKey] = { at };
      box.places[`${id}.b` as EndKey] = { at: to };
      return;
    }
    default: {
      const devices = Object.values(box.devices);
      const device = devices[where % devices.length];
      const terminals = device === undefined ? [] : terminalsOf(device);
      const [one, two] = [terminals[where % terminals.length], terminals[which % terminals.length]];
      if (device !== undefined && one !== undefined && two !== undefined)
        drawing.exchange(device.name, one.name, two.name);
    }
  }
}

const wrong: fc.Arbitrary<Project> = fc
  .record({
    // What lacks protection by one cause is told, and mended, at the first: others are first where they are alone.
    start: fc.constantFrom(
      laundryAsFound,
      laundryProposed,
      multiwire,
      () => alone(laundryAsFound(), "R2"),
      () => alone(laundryAsFound(), "R4"),
    ),
    slips: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat()), { minLength: 1, maxLength: 3 }),
  })
  .map(({ start, slips }) => {
    const drawing = start();
    for (const one of slips) slip(drawing, one);
    return proposing(drawing);
  })
  .filter((project) => invariantProblems(project).length === 0);

/** Dangers and violations, folded ones too: a repaired cause brings to light what it covered. */
const serious = (project: Project): readonly string[] =>
  rawAnswers(project, "proposed")
    .flat()
    .flatMap(({ reports }) => reports)
    .filter(({ rule, report }) => SERIOUS.has(report.severity ?? rule.severity))
    .map(({ rule, report }) => findingKey(rule.id, report.subjects));

const SERIOUS: ReadonlySet<string> = new Set(["danger", "violation"]);

/** Under the name of the device that another came for. */
function underOldNames(project: Project, keys: readonly string[]): readonly string[] {
  const devices = Object.values(project.proposed?.enclosures ?? {}).flatMap((box) => Object.values(box.devices));
  const old = new Map(devices.flatMap(({ id, replaces }) => (replaces === undefined ? [] : [[id, replaces] as const])));
  return keys.map((key) => [...old].reduce((text, [id, before]) => text.replaceAll(id, before), key));
}

test("every fix and offer of a rule that follows the wiring runs, clears its finding and takes no protection away", {
  timeout: 600_000,
}, () => {
  const tried = new Map<string, number>();
  const worse: string[] = [];
  fc.assert(
    fc.property(wrong, (project) => {
      const { findings } = checkDocument(project, "proposed");
      const before = new Set(serious(project));
      const held = protectedNames(project);
      for (const finding of findings.filter(({ rule }) => OURS.has(rule))) {
        for (const fix of [...(finding.fix ? [finding.fix] : []), ...(finding.offers ?? [])]) {
          tried.set(finding.rule, (tried.get(finding.rule) ?? 0) + 1);
          const done = runCommand(project, fix.call);
          expect(done.ok ? "" : `${fix.title}: ${done.refusal.message}`).toBe("");
          if (!done.ok) return;
          expect(invariantProblems(done.project)).toEqual([]);
          const after = checkDocument(done.project, "proposed").findings;
          if (after.some(({ key }) => key === finding.key)) worse.push(`${finding.key} stays after "${fix.title}"`);
          const left = protectedNames(done.project);
          const lost = [...held].filter((name) => !left.has(name));
          if (lost.length > 0) worse.push(`${finding.key} by "${fix.title}" takes protection from ${lost.join(", ")}`);
          const fresh = underOldNames(done.project, serious(done.project)).filter((key) => !before.has(key));
          if (fresh.length > 0) worse.push(`${finding.key} by "${fix.title}" brings ${fresh.join(", ")}`);
        }
      }
    }),
    { numRuns: RUNS },
  );
  expect(worse).toEqual([]);
  expect([...tried.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThan(RUNS / 2);
});

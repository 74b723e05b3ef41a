import { expect } from "vitest";
import type { Finding } from "../../shared-model/answers/finding.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { conductorUses } from "../../shared-model/rules/conductor-uses.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { ungroundedFaces } from "../../shared-model/rules/no-ground.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import { protectedNames } from "./section-fix-tester.ts";

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

const DANGER: ReadonlySet<string> = new Set(["danger"]);
const SERIOUS: ReadonlySet<string> = new Set(["danger", "violation"]);

/** Dangers and violations, folded ones too: a repaired cause brings to light what it covered. */
const serious = (project: Project, severities = SERIOUS): readonly string[] =>
  rawAnswers(project, "proposed")
    .flat()
    .flatMap(({ reports }) => reports)
    .filter(({ rule, report }) => severities.has(report.severity ?? rule.severity))
    .map(({ rule, report }) => findingKey(rule.id, report.subjects));

/** Under the name of the device that another came for. */
function underOldNames(project: Project, keys: readonly string[]): readonly string[] {
  const devices = Object.values(project.proposed?.enclosures ?? {}).flatMap((box) => Object.values(box.devices));
  const old = new Map(devices.flatMap(({ id, replaces }) => (replaces === undefined ? [] : [[id, replaces] as const])));
  return keys.map((key) => [...old].reduce((text, [id, before]) => text.replaceAll(id, before), key));
}

/**
 * What stood before the fix and could not be told: the colour of a conductor that the neutral reaches, while ground or hot reach
 * it as well by the piece that is taken out; and that a receptacle without a ground has no protection instead, while its hot and
 * neutral are exchanged, so that nothing of it can be proved; and a second insulated conductor in a joint with grounds, which is
 * told once for each joint.
 */
function wasThere(key: string, finding: Finding, project: Project): boolean {
  return [isColourInConflict, isUngroundedAndCrossed, isInJointTold].some((is) => is(key, finding, project));
}

function isInJointTold(key: string, _: Finding, project: Project): boolean {
  const end = key.match(/^insulated-as-ground\|.+\|end:(.+)$/)?.[1] as EndKey | undefined;
  const box = Object.values((project.proposed ?? project.asFound).enclosures).find(
    ({ places }) => end !== undefined && end in places,
  );
  const at = end === undefined ? undefined : box?.places[end]?.at;
  if (box === undefined || at?.kind !== "splice") return false;
  const before = serious(project).filter((one) => one.startsWith("insulated-as-ground|"));
  return membersOf(box, at.splice).some((other) => before.some((one) => one.endsWith(`|end:${other}`)));
}

function isUngroundedAndCrossed(key: string, { rule, subjects }: Finding, { proposed, asFound }: Project): boolean {
  const [, outlet] = key.match(/^grounding-type-unprotected\|outlet:(.+)$/) ?? [];
  if (rule !== "polarity-swapped" || !subjects.some(({ id }) => id === outlet)) return false;
  return allSections(proposed ?? asFound).some((section) =>
    ungroundedFaces(section).some(({ outlets }) => outlets.some((one) => one.outlet.key === outlet && !one.live)),
  );
}

function isColourInConflict(key: string, { rule }: Finding, { proposed, asFound }: Project): boolean {
  const [, kind, id] = key.match(/^coloured-as-neutral\|(cable|jumper):([^|]+)$/) ?? [];
  if (rule !== "neutral-ground-joined" || kind === undefined) return false;
  return allSections(proposed ?? asFound).some((section) => {
    const reach = section.reach();
    return conductorUses(section).some(
      ({ subject, role, ends }) =>
        subject.kind === kind &&
        subject.id === id &&
        role === "conflict" &&
        ends.some(({ end }) => reach.isGrounded({ end })),
    );
  });
}

/** A violation that is folded under a finding that stood before the fix is told by that. */
const isToldBy = (key: string, before: readonly Finding[], after: readonly Finding[]): boolean =>
  !after.some((one) => one.key === key) &&
  after.some(
    (one) =>
      before.some((old) => old.key === one.key) &&
      one.foldedSubjects.some(({ kind, id }) => key.split("|")[1] === `${kind}:${id}`),
  );

/**
 * What is wrong with the fixes of the rules that follow the wiring, one line each: a finding that stays, protection that is
 * lost, a danger or violation that was not there. `count` is told the rule of each fix that was tried.
 */
export function worseBy(project: Project, count: (rule: string) => void = () => {}): readonly string[] {
  const worse: string[] = [];
  const { findings } = checkDocument(project, "proposed");
  const before = new Set(serious(project));
  const held = protectedNames(project);
  for (const finding of findings.filter(({ rule }) => OURS.has(rule))) {
    for (const fix of [...(finding.fix ? [finding.fix] : []), ...(finding.offers ?? [])]) {
      count(finding.rule);
      const done = runCommand(project, fix.call);
      if (!done.ok) throw new Error(`${fix.title}: ${done.refusal.message}`);
      expect(invariantProblems(done.project)).toEqual([]);
      const after = checkDocument(done.project, "proposed").findings;
      if (after.some(({ key }) => key === finding.key)) worse.push(`${finding.key} stays after "${fix.title}"`);
      const left = protectedNames(done.project);
      const lost = [...held].filter((name) => !left.has(name));
      if (lost.length > 0) worse.push(`${finding.key} by "${fix.title}" takes protection from ${lost.join(", ")}`);
      const dangers = new Set(underOldNames(done.project, serious(done.project, DANGER)));
      const fresh = underOldNames(done.project, serious(done.project)).filter(
        (key) =>
          !before.has(key) && !wasThere(key, finding, project) && (dangers.has(key) || !isToldBy(key, findings, after)),
      );
      if (fresh.length > 0) worse.push(`${finding.key} by "${fix.title}" brings ${fresh.join(", ")}`);
    }
  }
  return worse;
}

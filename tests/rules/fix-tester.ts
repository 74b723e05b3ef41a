import { expect } from "vitest";
import type { Finding, Fix } from "../../shared-model/answers/finding.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { findingKey } from "../../shared-model/rules/fold.ts";
import { butNotes, checkDocument } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";

interface Tried {
  /** What pressing the fix says that it does. */
  readonly title: string;
  /** The document with the fix carried out in proposed. */
  readonly project: Project;
  /** All findings of proposed then but notes, "rule subject". */
  readonly left: readonly string[];
}

interface Choice {
  /** Words in the title of the offer that is taken; without it the plain fix is. */
  readonly offer?: string;
  /** For a fix that changes what the box holds or what it is. */
  readonly changesFill?: boolean;
}

/** The drawing with a proposed state equal to as found. */
export const proposing = (drawing: Drawing): Project => {
  const project = drawing.project();
  return { ...project, proposed: project.asFound };
};

/** The finding of a rule on a first subject, in proposed. Throws when there is none. */
export function findingOn(project: Project, rule: string, on: string): Finding {
  const { findings } = checkDocument(project, "proposed");
  const found = findings.find((one) => one.rule === rule && one.subjects[0]?.name === on);
  if (found === undefined) throw new Error(`No ${rule} at ${on}: ${findings.map(({ key }) => key).join(", ")}`);
  return found;
}

/**
 * Carries out the fix of a finding in proposed and judges it: it runs, the finding is gone, nothing at danger or
 * violation is new in the whole document, the bookkeeping holds, as found stays as it was, and the count of every box
 * is the same unless the fix is one that changes it. As found the finding has neither fix nor offers.
 */
export function tryFix(drawing: Drawing, rule: string, on: string, { offer, changesFill = false }: Choice = {}): Tried {
  const before = proposing(drawing);
  const finding = findingOn(before, rule, on);
  for (const asFound of checkDocument(before).findings) {
    expect(asFound.fix).toBeUndefined();
    expect(asFound.offers).toBeUndefined();
  }
  const fix: Fix | undefined =
    offer === undefined ? finding.fix : finding.offers?.find(({ title }) => title.includes(offer));
  if (fix === undefined)
    throw new Error(`No such fix; offered: ${(finding.offers ?? []).map(({ title }) => title).join(" | ")}`);
  const done = runCommand(before, fix.call);
  if (!done.ok) throw new Error(`${fix.title}: ${done.refusal.message}`);
  const { project } = done;
  expect(invariantProblems(project)).toEqual([]);
  expect(project.asFound).toEqual(before.asFound);
  const after = checkDocument(project, "proposed").findings;
  expect(after.map(({ key }) => key)).not.toContain(finding.key);
  const serious = (findings: readonly Finding[]): readonly string[] =>
    findings.filter(({ severity }) => severity === "danger" || severity === "violation").map(({ key }) => key);
  const was = checkDocument(before, "proposed").findings;
  // What was folded under a finding of the same rule may show once that one is mended.
  const folded = was.flatMap(({ rule, foldedSubjects }) => foldedSubjects.map((one) => findingKey(rule, [one])));
  const known = new Set([...serious(was), ...folded]);
  expect(serious(after).filter((key) => !known.has(key))).toEqual([]);
  if (!changesFill) expect(fills(project)).toEqual(fills(before));
  return {
    title: fix.title,
    project,
    left: butNotes(after)
      .map((one) => `${one.rule} ${one.subjects[0]?.name}`)
      .sort(),
  };
}

/** The plain fix of a finding, if it has one. */
export const fixOf = (drawing: Drawing, rule: string, on: string): Fix | undefined =>
  findingOn(proposing(drawing), rule, on).fix;

function fills({ proposed, edition }: Project): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(proposed?.enclosures ?? {}).map(([id, box]) => {
      if (proposed === undefined) throw new Error("No proposed state.");
      return [id as EnclosureId, fillLedger(proposed, box, getEdition(edition)).total];
    }),
  );
}

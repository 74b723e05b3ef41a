import type { ScopeAnswers } from "../../shared-model/answers/finding.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { checksRunIn, fold } from "../../shared-model/rules/fold.ts";
import { sectionRules } from "../../shared-model/rules/registry.ts";
import {
  checkBox,
  checkProject,
  checkSection,
  type RawAnswers,
  type RuleWatch,
} from "../../shared-model/rules/run-rules.ts";
import { allSections } from "../../shared-model/solver/sections.ts";

export interface Checked extends ScopeAnswers {
  readonly checksRun: number;
}

/** Raw answers of every rule on a whole document: a group for each section, for each panel, and for the document. */
export function rawAnswers(
  project: Project,
  state: StateName = "as-found",
  watch?: RuleWatch,
): readonly (readonly RawAnswers[])[] {
  const installation = getInstallation(project, state);
  const context = { project, installation, state, ...(watch !== undefined && { watch }) };
  const groups: RawAnswers[][] = allSections(installation).map((section) => [
    ...section.enclosures.map((enclosure) => checkBox({ ...context, enclosure })),
    checkSection({ ...context, section }),
  ]);
  for (const enclosure of inOrder(installation.enclosures))
    if (enclosure.kind === "panel") groups.push([checkBox({ ...context, enclosure })]);
  groups.push([checkProject(context)]);
  return groups;
}

/** Every rule on a whole document, folded section by section. */
export function checkDocument(project: Project, state: StateName = "as-found"): Checked {
  const groups = rawAnswers(project, state);
  const answers = groups.map((parts) => fold(state, project.edition, parts));
  return {
    findings: answers.flatMap(({ findings }) => findings),
    couldNotTell: answers.flatMap(({ couldNotTell }) => couldNotTell),
    checksRun: checksRunIn(groups.flat()),
  };
}

type Said = { readonly rule: string; readonly subjects: readonly { readonly name: string }[] };

/** "box-overfull B1", by rule and first subject, sorted. */
export const inShort = (said: readonly Said[]): readonly string[] =>
  said.map(({ rule, subjects }) => `${rule} ${subjects[0]?.name}`).sort();

/** Findings of rules whose id has these words, where a drawing is about them. */
export const about = <T extends Said>(words: RegExp, said: readonly T[]): readonly T[] =>
  said.filter(({ rule }) => words.test(rule));

/** What is noted of the laundry drawing however it is wired: five grounds at B1, and one circuit for half of the house. */
const NOTES: ReadonlySet<string> = new Set([
  "egc-edition-difference",
  "laundry-circuit-mixed",
  "bath-circuit-mixed",
  "kitchen-circuit-lights",
]);

/** Findings but such notes. */
export const butNotes = <T extends Said>(said: readonly T[]): readonly T[] =>
  said.filter(({ rule }) => !NOTES.has(rule));

/** Findings but those of box fill and box make-up, and notes, where a drawing is about its wiring. */
export const ofWiring = <T extends Said>(said: readonly T[]): readonly T[] =>
  butNotes(said).filter(({ rule }) => WIRING.has(rule));

const WIRING: ReadonlySet<string> = new Set(sectionRules.map(({ id }) => id));

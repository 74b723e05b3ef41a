import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Amendment, Project } from "../model/project.ts";
import type { Severity } from "../model/severity.ts";
import { amendmentProblem } from "./amendments.ts";
import { getEdition } from "./editions/editions.ts";
import { rules } from "./registry.ts";
import type { Report } from "./rule.ts";

const wording = catalogue({
  changesNothing: (problem: Part) => `A local amendment changes nothing: ${problem} Correct or remove it.`,
  advice: "advice",
  caution: "a caution",
  danger: "a danger",
  noReason: "none is given.",
  off: (worst: Part, summary: Part, reason: Part) =>
    `Switched off by a local amendment, so nothing that breaks it is shown, at worst ${worst}: “${summary}” Reason: ${reason}`,
  offBy: (worst: Part, summary: Part, reason: Part, by: Part) =>
    `Switched off by a local amendment, so nothing that breaks it is shown, at worst ${worst}: “${summary}” Reason: ${reason} (required by ${by})`,
  violation: "a violation",
});

const WORST: Readonly<Record<Severity, string>> = {
  danger: wording.danger,
  violation: wording.violation,
  caution: wording.caution,
  advice: wording.advice,
};

/** Rule id under which an amendment that changes nothing is reported. */
const AMENDMENT_IGNORED = "amendment-ignored";
/** Rule id under which a rule is named that a local amendment switches off: it is never off in silence. */
const SWITCHED_OFF = "rule-switched-off";

/** What is said of an amendment without a rule of the catalogue. */
export interface AmendmentReport extends Report {
  readonly ruleId: typeof AMENDMENT_IGNORED | typeof SWITCHED_OFF;
}

/** A local amendment as the document has it, and why it changes nothing where it does not. */
export type StatedAmendment = Amendment & { readonly problem?: string };

/** All amendments of a document, in its order. */
export function statedAmendments({ amendments, edition }: Project): readonly StatedAmendment[] {
  return amendments.map((amendment) => {
    const problem = amendmentProblem(amendment, rules, getEdition(edition));
    return problem === undefined ? amendment : { ...amendment, problem };
  });
}

/** What is to be said of amendments: which change nothing, and which rules are off. */
export function amendmentReports(project: Project): readonly AmendmentReport[] {
  return statedAmendments(project).flatMap((amendment, index) => {
    const { problem, change } = amendment;
    if (problem === undefined) return change.kind === "off" ? switchedOff(project, amendment) : [];
    return {
      ruleId: AMENDMENT_IGNORED,
      severity: "caution",
      subjects: [{ kind: "project", id: `amendment-${index}`, name: amendment.rule }],
      message: wording.changesNothing(problem),
      data: { rule: amendment.rule },
    } satisfies AmendmentReport;
  });
}

/** A danger that is looked for no longer is a caution of its own. */
function switchedOff({ title }: Project, { rule: id, reason, by }: Amendment): readonly AmendmentReport[] {
  const rule = rules.find((one) => one.id === id);
  if (rule === undefined) return [];
  const told = [WORST[rule.severity], rule.summary, reason.trim() || wording.noReason] as const;
  return [
    {
      ruleId: SWITCHED_OFF,
      severity: rule.severity === "danger" ? "caution" : "advice",
      subjects: [{ kind: "project", id: `switched-off-${id}`, name: title }],
      message: by === undefined ? wording.off(...told) : wording.offBy(...told, by),
      data: { rule: id },
    },
  ];
}

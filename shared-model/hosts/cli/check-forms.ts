import type { Report } from "../../analysis/report.ts";
import type {
  AppliedAmendment,
  CannotTell,
  SectionConfidence,
  SectionPointer,
  Standing,
} from "../../answers/finding.ts";
import { getEdition } from "../../rules/editions/editions.ts";
import type { CheckedFile, CheckedFinding } from "./checked-file.ts";
import { inputName } from "./read-input.ts";

/** As scripts read it. What there is none of is null, so that every object has every key. */
export function checkAsJson({ file, report, findings }: CheckedFile): object {
  const { edition, state, couldNotTell, checksRun, amendments } = report;
  return {
    file,
    edition,
    editionVerified: getEdition(edition).verified,
    countingOnly: getEdition(edition).countingOnly,
    amendments: amendments.map(({ rule, change, reason, by, problem }) => ({
      rule,
      change,
      reason,
      by: by ?? null,
      takesEffect: problem === undefined,
      problem: problem ?? null,
    })),
    state,
    findings: findings.map(findingAsJson),
    checksRun,
    couldNotTell: couldNotTell.map(({ rule, subjects, message, missing }) => ({ rule, subjects, message, missing })),
  };
}

function findingAsJson({ finding, fix, offers, acknowledged }: CheckedFinding): object {
  const { rule, severity, status, subjects, message, numbers, section, basis, folded, standing, existing } = finding;
  const { textOf, amendments = [] } = finding;
  return {
    rule,
    severity,
    status,
    subjects,
    message,
    numbers,
    section: section?.section ?? null,
    sectionConfidence: section?.confidence ?? null,
    textOf: textOf ?? null,
    amendments,
    basis: basis ?? null,
    folded,
    standing: standing ?? null,
    existing: existing ?? false,
    acknowledged:
      acknowledged === undefined ? null : { by: acknowledged.by, reason: acknowledged.reason, at: acknowledged.at },
    fix: fix?.call.command ?? null,
    offers: offers.map(({ title }) => title),
  };
}

/** As a person reads it: once something is proposed, by how the findings stand to the plan, worst first in each group. */
export function checkAsText({ file, report, findings }: CheckedFile): string {
  const { couldNotTell, checksRun } = report;
  const count = findings.length === 0 ? "No findings" : `${findings.length} finding${findings.length === 1 ? "" : "s"}`;
  const blocks = [
    `${inputName(file)}: ${editionText(report)}, ${report.state === "as-found" ? "as found" : "proposed"}`,
    ...report.amendments.map(amendmentAsText),
    ...GROUPS.flatMap(({ standing, title }) => {
      const group = findings.filter(({ finding }) => finding.standing === standing);
      if (group.length === 0) return [];
      return [...(title === undefined ? [] : [title]), ...group.map(findingAsText)];
    }),
    ...couldNotTell.map(cannotTellAsText),
    `${count} in ${checksRun} check${checksRun === 1 ? "" : "s"} run, ${couldNotTell.length} could not be told.`,
  ];
  return `${blocks.join("\n\n")}\n`;
}

/** Before anything is proposed no finding stands to anything. */
const GROUPS: readonly { readonly standing: Standing | undefined; readonly title?: string }[] = [
  { standing: undefined },
  { standing: "introduced", title: "Introduced by the plan:" },
  { standing: "inherited-touched", title: "Inherited, at boxes that the work opens:" },
  { standing: "inherited", title: "Inherited, not touched:" },
  { standing: "repaired", title: "Repaired by the plan:" },
  { standing: "stays", title: "Stays:" },
];

function editionText({ edition }: Report): string {
  const { verified, textOf, countingOnly } = getEdition(edition);
  if (!verified) return `edition ${edition} (${textOf} text, not verified)`;
  return countingOnly ? `edition ${edition} (for counting only)` : `edition ${edition}`;
}

function amendmentAsText({ rule, change, reason, by, problem }: Report["amendments"][number]): string {
  const what = change.kind === "off" ? "is switched off" : `reads ${change.name} as ${change.value}`;
  return [
    `Local amendment: ${rule} ${what}${by === undefined ? "" : `, required by ${by}`}. Reason: ${reason}`,
    ...(problem === undefined ? [] : [`  It changes nothing. ${problem}`]),
  ].join("\n");
}

function findingAsText({ finding, fix, offers, acknowledged }: CheckedFinding): string {
  const { severity, rule, subjects, message, section, basis, status, existing, foldedSubjects } = finding;
  const { textOf, amendments = [] } = finding;
  const notes = [
    ...(existing === true ? ["a violation that was there before"] : []),
    ...(section === undefined ? [] : [sectionText(section)]),
    ...(textOf === undefined ? [] : [`by the ${textOf} text, not verified`]),
    ...(basis === undefined ? [] : [BASIS[basis]]),
    ...(status === "draft" ? ["draft rule"] : []),
  ];
  const consequences = foldedSubjects.map(({ name }) => name).join(", ");
  return [
    `${severity}  ${rule}  ${subjects.map(({ name }) => name).join(", ")}`,
    `  ${message}`,
    ...amendments.map(amendedText),
    ...(notes.length > 0 ? [`  (${notes.join("; ")})`] : []),
    ...(consequences === "" ? [] : [`  It brings with it findings at ${consequences}.`]),
    ...(fix === undefined ? [] : [`  Fix: ${fix.title}`]),
    ...offers.map(({ title }) => `  One way: ${title}`),
    ...(acknowledged === undefined
      ? []
      : [`  Acknowledged by ${acknowledged.by} on ${acknowledged.at}: ${acknowledged.reason}`]),
  ].join("\n");
}

const amendedText = ({ value, is, was, reason, by }: AppliedAmendment): string =>
  `  By local amendment${by === undefined ? "" : ` of ${by}`}, ${value} is ${is}${was === undefined ? "" : ` in place of ${was}`}: ${reason}`;

const BASIS = {
  measured: "rests on what was measured",
  seen: "rests on what was seen",
  told: "rests on what was told",
  assumed: "rests on what is assumed",
  unknown: "rests on what nobody has seen",
} as const;

const CONFIDENCE: Readonly<Record<Exclude<SectionConfidence, "own-rule">, string>> = {
  sourced: "",
  "from-memory": ", number from memory",
  unconfirmed: ", number not confirmed",
  doubtful: ", number doubtful",
};

const sectionText = ({ section, confidence }: SectionPointer): string =>
  confidence === "own-rule" ? "own check, no section" : `${section}${CONFIDENCE[confidence]}`;

const cannotTellAsText = ({ rule, subjects, message, missing }: CannotTell): string =>
  `cannot tell  ${rule}  ${subjects.map(({ name }) => name).join(", ")}\n  ${message}\n  (missing: ${missing})`;

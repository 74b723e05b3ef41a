import type { Report } from "../../analysis/session.ts";
import type { CannotTell, Finding, SectionPointer } from "../../answers/finding.ts";
import { getEdition } from "../../rules/editions/editions.ts";
import { inputName } from "./read-input.ts";

/** What the rules say about one state of one file. */
export interface CheckedFile {
  readonly file: string;
  readonly report: Report;
}

/** As scripts read it. What there is none of is null, so that every object has every key. */
export function checkAsJson({ file, report }: CheckedFile): object {
  const { edition, state, findings, couldNotTell, checksRun } = report;
  return {
    file,
    edition,
    editionVerified: getEdition(edition).verified,
    state,
    findings: findings.map(findingAsJson),
    checksRun,
    couldNotTell: couldNotTell.map(({ rule, subjects, message, missing }) => ({ rule, subjects, message, missing })),
  };
}

function findingAsJson(finding: Finding): object {
  const { rule, severity, status, subjects, message, numbers, section, basis, folded, existing, fix } = finding;
  return {
    rule,
    severity,
    status,
    subjects,
    message,
    numbers,
    section: section?.section ?? null,
    sectionConfidence: section?.confidence ?? null,
    basis: basis ?? null,
    folded,
    existing: existing ?? false,
    fix: fix?.call.command ?? null,
  };
}

/** As a person reads it. */
export function checkAsText({ file, report }: CheckedFile): string {
  const { findings, couldNotTell, checksRun } = report;
  const count = findings.length === 0 ? "No findings" : `${findings.length} finding${findings.length === 1 ? "" : "s"}`;
  const blocks = [
    `${inputName(file)}: ${editionText(report)}, ${report.state === "as-found" ? "as found" : "proposed"}`,
    ...findings.map(findingAsText),
    ...couldNotTell.map(cannotTellAsText),
    `${count} in ${checksRun} check${checksRun === 1 ? "" : "s"} run, ${couldNotTell.length} could not be told.`,
  ];
  return `${blocks.join("\n\n")}\n`;
}

function editionText({ edition }: Report): string {
  const { verified, textOf, countingOnly } = getEdition(edition);
  if (!verified) return `edition ${edition} (${textOf} text, not verified)`;
  return countingOnly ? `edition ${edition} (for counting only)` : `edition ${edition}`;
}

function findingAsText({ severity, rule, subjects, message, section, basis, status, foldedSubjects }: Finding): string {
  const notes = [
    ...(section === undefined ? [] : [sectionText(section)]),
    ...(basis === undefined ? [] : [BASIS[basis]]),
    ...(status === "draft" ? ["draft rule"] : []),
  ];
  const consequences = foldedSubjects.map(({ name }) => name).join(", ");
  return [
    `${severity}  ${rule}  ${subjects.map(({ name }) => name).join(", ")}`,
    `  ${message}`,
    ...(notes.length > 0 ? [`  (${notes.join("; ")})`] : []),
    ...(consequences === "" ? [] : [`  It brings with it findings at ${consequences}.`]),
  ].join("\n");
}

const BASIS = {
  measured: "rests on what was measured",
  seen: "rests on what was seen",
  told: "rests on what was told",
  assumed: "rests on what is assumed",
  unknown: "rests on what nobody has seen",
} as const;

const CONFIDENCE = {
  sourced: "",
  "from-memory": ", number from memory",
  unconfirmed: ", number not confirmed",
  doubtful: ", number doubtful",
  "own-rule": "",
} as const;

const sectionText = ({ section, confidence }: SectionPointer): string => `${section}${CONFIDENCE[confidence]}`;

const cannotTellAsText = ({ rule, subjects, message, missing }: CannotTell): string =>
  `cannot tell  ${rule}  ${subjects.map(({ name }) => name).join(", ")}\n  ${message}\n  (missing: ${missing})`;

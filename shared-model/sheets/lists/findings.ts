import type { CannotTell, Finding, Standing } from "../../answers/finding.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { acknowledgementOf } from "../../queries/acknowledgement-of.ts";
import type { Page } from "../display-list.ts";
import type { Flow } from "../page/flow.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { dayWords } from "../page/page-words.ts";
import type { TableRow } from "../page/table-blocks.ts";
import type { ListCell, ListTable } from "../tables/table.ts";
import {
  ASSUMING,
  acknowledged,
  amendedBy,
  BASIS_WORDS,
  draftRule,
  FINDING_TABLES,
  FINDINGS,
  firstSentence,
  foldedWords,
  GROUPS,
  runWords,
  SEVERITY_LEGEND,
  SEVERITY_WORDS,
  sectionWords,
  UNTOLD,
} from "./findings-words.ts";
import {
  type Figure,
  figuresBlock,
  isBlank,
  legendBlock,
  sayNothing,
  shownEnclosures,
  writeCautions,
} from "./list-parts.ts";
import { EVIDENCE_WORDS, LIST } from "./list-words.ts";
import { severitySign } from "./signs.ts";

interface FindingGroup {
  readonly key: keyof typeof GROUPS;
  readonly findings: readonly Finding[];
}

/** @returns Why there is nothing to tell of; undefined where something is drawn: that no check found anything is told too. */
export const noFindings = (input: SheetInput): string | undefined => (isBlank(input) ? LIST.nothingDrawn : undefined);

/** Findings by what happens to them, then those that rest on assumptions, then what could not be told. */
export function findingsPages(input: SheetInput): readonly Page[] {
  const isCompared = input.project.proposed !== undefined;
  const { flow, pages } = openListSheet(input, { kind: "findings", title: FINDINGS.title, difference: isCompared });
  const groups = groupsOf(input);
  const untold = untoldOf(input);
  const all = groups.flatMap(({ findings }) => findings);
  const nothing = noFindings(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  flow.block(
    figuresBlock(flow.width, [...groups.map(figureOf), { value: String(untold.length), caption: UNTOLD.caption }]),
  );
  flow.paragraph(`${all.length === 0 ? `${FINDINGS.none} ` : ""}${runWords(input.rules.checksRun, untold.length)}`);
  for (const { key, findings } of groups) {
    flow.heading(GROUPS[key].title, GROUPS[key].note);
    if (findings.length === 0) flow.paragraph(FINDINGS.noneOfThese);
    else writeFindings(flow, input, findings);
  }
  const resting = restingOn(groups);
  if (resting.length > 0) writeResting(flow, resting);
  if (untold.length > 0) writeUntold(flow, untold);
  flow.keepTogether(writeLegend);
  writeCautions(flow, ["DAT2"]);
  return pages();
}

const figureOf = ({ key, findings }: FindingGroup): Figure => ({
  value: String(findings.length),
  caption: GROUPS[key].caption,
});

const withStanding = (findings: readonly Finding[], standing: Standing): readonly Finding[] =>
  findings.filter((finding) => finding.standing === standing);

function groupsOf(input: SheetInput): readonly FindingGroup[] {
  const here = aboutShown(input);
  const asFound = input.findings.asFound.filter(here);
  if (input.findings.proposed === undefined) return [{ key: "found", findings: asFound }];
  const proposed = input.findings.proposed.filter(here);
  return [
    { key: "introduced", findings: withStanding(proposed, "introduced") },
    { key: "touched", findings: withStanding(proposed, "inherited-touched") },
    { key: "inherited", findings: withStanding(proposed, "inherited") },
    { key: "repaired", findings: withStanding(asFound, "repaired") },
  ];
}

const untoldOf = (input: SheetInput): readonly CannotTell[] =>
  (input.couldNotTell.proposed ?? input.couldNotTell.asFound).filter(aboutShown(input));

/** Of one box alone, what names it or something in it; else everything. */
function aboutShown(input: SheetInput): (said: Pick<Finding, "subjects">) => boolean {
  if (input.box === undefined) return () => true;
  const { asFound, proposed } = input.project;
  const ids = new Set([asFound, proposed ?? asFound].flatMap((state) => shownEnclosures(input, state).flatMap(idsIn)));
  return ({ subjects }) => subjects.some(({ id }) => ids.has(id) || ids.has(id.split("/")[0] ?? id));
}

const idsIn = ({ id, entries, devices, splices, jumpers, places }: Enclosure): readonly string[] => [
  id,
  ...[entries, devices, splices, jumpers, places].flatMap((table) => Object.keys(table)),
];

const restingOn = (groups: readonly FindingGroup[]): readonly Finding[] =>
  groups
    .filter(({ key }) => key !== "repaired")
    .flatMap(({ findings }) => findings)
    .filter(({ basis }) => basis === "assumed" || basis === "unknown" || basis === "told");

const WIDTHS = { subject: 32, section: 34 } as const;

function writeFindings(flow: Flow, input: SheetInput, findings: readonly Finding[]): void {
  flow.table({
    columns: [
      { head: FINDINGS.at, width: WIDTHS.subject, weight: 700 },
      { head: FINDINGS.what },
      { head: FINDINGS.section, width: WIDTHS.section },
    ],
    rows: findings.map((finding) => ({
      cells: [
        { text: subjectsOf(finding), sign: severitySign(finding.severity), note: SEVERITY_WORDS[finding.severity] },
        { text: finding.message, note: notesOf(input, finding).join(" ") },
        { text: sectionOf(finding), note: ruleOf(finding) },
      ],
    })),
  });
}

const subjectsOf = ({ subjects }: Pick<Finding, "subjects">): string => subjects.map(({ name }) => name).join(", ");

const ruleOf = ({ rule, status }: Finding): string => (status === "draft" ? draftRule(rule) : rule);

const sectionOf = ({ section }: Finding): string => (section === undefined ? "" : sectionWords(section));

function notesOf({ project }: SheetInput, finding: Finding): readonly string[] {
  const known = acknowledgementOf(project, finding);
  const { folded, foldedSubjects, existing, amendments = [] } = finding;
  return [
    ...(folded > 0 ? [foldedWords(folded, [...new Set(foldedSubjects.map(({ name }) => name))])] : []),
    ...(existing ? [FINDINGS.existing] : []),
    ...amendments.map(amendedBy),
    ...(known === undefined
      ? []
      : [
          acknowledged(
            known.acknowledgement.by,
            dayWords(known.acknowledgement.at),
            known.acknowledgement.reason,
            known.covers,
          ),
        ]),
  ];
}

function writeResting(flow: Flow, findings: readonly Finding[]): void {
  flow.heading(ASSUMING.title, ASSUMING.note);
  flow.table({
    columns: [
      { head: FINDINGS.at, width: WIDTHS.subject, weight: 700 },
      { head: FINDINGS.finding },
      { head: FINDINGS.weakestFact, width: WIDTHS.section },
    ],
    rows: findings.map(
      (finding): TableRow => ({
        cells: [
          { text: subjectsOf(finding), sign: severitySign(finding.severity) },
          { text: firstSentence(finding.message), note: finding.rule },
          finding.basis === undefined ? "" : BASIS_WORDS[finding.basis],
        ],
      }),
    ),
  });
}

function writeUntold(flow: Flow, untold: readonly CannotTell[]): void {
  flow.heading(UNTOLD.title, UNTOLD.note);
  flow.table({
    columns: [
      { head: FINDINGS.at, width: WIDTHS.subject, weight: 700 },
      { head: FINDINGS.whatUntold },
      { head: FINDINGS.missing, width: 50 },
    ],
    rows: untold.map((one) => ({
      cells: [
        { text: subjectsOf(one), sign: severitySign("cannot-tell") },
        { text: one.message, note: one.toDo ?? "" },
        { text: one.missing, check: true },
      ],
    })),
  });
}

function writeLegend(flow: Flow): void {
  const entries = Object.entries(SEVERITY_LEGEND) as (readonly [keyof typeof SEVERITY_LEGEND, string])[];
  flow.space(3);
  flow.block(
    legendBlock(
      flow.width,
      entries.map(([severity, words]) => [[severitySign(severity)], words]),
    ),
  );
}

/** One row a finding, and one for each thing that could not be told. */
export function findingsTables(input: SheetInput): readonly ListTable[] {
  const cells = (standing: string, finding: Finding): readonly ListCell[] => {
    const known = acknowledgementOf(input.project, finding)?.acknowledgement;
    return [
      standing,
      SEVERITY_WORDS[finding.severity],
      subjectsOf(finding),
      finding.rule,
      finding.message,
      finding.section?.section,
      finding.basis && EVIDENCE_WORDS[finding.basis],
      finding.folded,
      known?.by,
      known?.at.slice(0, 10),
      known?.reason,
    ];
  };
  return [
    {
      name: FINDING_TABLES.findings,
      columns: [
        { head: FINDING_TABLES.standing, kind: "text", width: 24 },
        { head: FINDING_TABLES.severity, kind: "text", width: 10 },
        { head: FINDING_TABLES.at, kind: "text", width: 18 },
        { head: FINDING_TABLES.rule, kind: "text", width: 26 },
        { head: FINDING_TABLES.finding, kind: "text", width: 80 },
        { head: FINDING_TABLES.section, kind: "text", width: 18 },
        { head: FINDING_TABLES.weakestFact, kind: "text", width: 12 },
        { head: FINDING_TABLES.folded, kind: "number", width: 10 },
        { head: FINDING_TABLES.acknowledgedBy, kind: "text", width: 18 },
        { head: FINDING_TABLES.acknowledgedOn, kind: "date", width: 12 },
        { head: FINDING_TABLES.reason, kind: "text", width: 40 },
      ],
      rows: groupsOf(input).flatMap(({ key, findings }) =>
        findings.map((finding) => cells(GROUPS[key].caption, finding)),
      ),
    },
    {
      name: FINDING_TABLES.untold,
      columns: [
        { head: FINDING_TABLES.at, kind: "text", width: 18 },
        { head: FINDING_TABLES.rule, kind: "text", width: 26 },
        { head: FINDING_TABLES.what, kind: "text", width: 80 },
        { head: FINDING_TABLES.missing, kind: "text", width: 40 },
      ],
      rows: untoldOf(input).map((one) => [subjectsOf(one), one.rule, one.message, one.missing]),
    },
  ];
}

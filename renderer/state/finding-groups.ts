import type { Finding, Severity, Standing } from "../../shared-model/answers/finding.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { laterWording } from "./later-words.ts";

/** Findings that are shown under one heading, worst first. */
export interface FindingGroup {
  readonly id: Severity | Standing | "not-carried-over" | "not-compared" | "acknowledged";
  readonly title: string;
  /** One line under the heading, where it does not speak for itself. */
  readonly about?: string;
  /** Folded away until it is asked for. */
  readonly quiet: boolean;
  /** Every finding under it is of the severity that the heading names. */
  readonly oneSeverity: boolean;
  readonly findings: readonly Finding[];
}

export interface ToGroup {
  readonly state: StateName;
  /** Whether proposed was started: only then findings are told apart by how they stand. */
  readonly compared: boolean;
  /** Of the shown state, worst first. */
  readonly findings: readonly Finding[];
  /** As found, worst first; looked at while proposed is shown, for what the plan repairs. */
  readonly asFound: readonly Finding[];
  /** Whether a person's word covers a finding as it is now. */
  isAcknowledged(finding: Finding): boolean;
}

/** The findings under their headings; headings without a finding are left out. Every finding is under exactly one. */
export function groupFindings(all: ToGroup): readonly FindingGroup[] {
  const { findings, compared, state } = all;
  // A danger keeps its place among the others: a person's word is shown on it, and hides nothing.
  const aside = findings.filter(
    (finding) => !isWordOfTheDocument(finding) && finding.severity !== "danger" && all.isAcknowledged(finding),
  );
  const away = new Set(aside);
  const held = findings.filter(isHeldBack);
  const open = findings.filter((finding) => !away.has(finding) && !isHeldBack(finding));
  const groups = !compared ? bySeverity(open) : state === "proposed" ? proposedGroups(open) : foundGroups(open);
  const repaired =
    compared && state === "proposed" ? all.asFound.filter(({ standing }) => standing === "repaired") : [];
  return [
    { ...PLAIN, id: "not-carried-over", title: laterWording.notCarriedOverFromAsFound, findings: held } as const,
    ...groups,
    { ...PLAIN, id: "acknowledged", title: laterWording.acknowledged, quiet: true, findings: aside } as const,
    {
      ...PLAIN,
      id: "repaired",
      title: laterWording.repaired,
      about: laterWording.foundInTheWiringAsIt,
      quiet: true,
      findings: repaired,
    } as const,
  ].filter((group) => group.findings.length > 0);
}

/** Word of an as-found edit that waits for a person to look at it; it is settled, not acknowledged. */
export const isHeldBack = ({ rule }: Finding): boolean => rule === "not-carried-over";

/** Not found in the wiring but written in the document: it stays until the document says otherwise, and nobody's word hides it. */
export const isWordOfTheDocument = (finding: Finding): boolean =>
  isHeldBack(finding) || finding.rule === "rule-switched-off" || finding.rule === "amendment-ignored";

const PLAIN = { quiet: false, oneSeverity: false } as const;

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  danger: laterWording.danger,
  violation: laterWording.violation,
  caution: laterWording.caution,
  advice: laterWording.advice,
};

/** How a finding stands between the accounts of the wiring, where no heading says it. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  introduced: laterWording.introducedByThePlan,
  "inherited-touched": laterWording.inheritedTheWorkOpensTheBox,
  inherited: laterWording.inheritedNotTouched,
  repaired: laterWording.repairedByThePlan,
  stays: laterWording.staysWord,
};

const bySeverity = (findings: readonly Finding[]): readonly FindingGroup[] =>
  SEVERITIES.map((severity) => ({
    ...PLAIN,
    id: severity,
    title: SEVERITY_WORDS[severity],
    oneSeverity: true,
    findings: findings.filter((finding) => finding.severity === severity),
  }));

const proposedGroups = (findings: readonly Finding[]): readonly FindingGroup[] => [
  {
    ...PLAIN,
    id: "introduced",
    title: laterWording.introducedByThePlan2,
    findings: standing(findings, "introduced"),
  },
  {
    ...PLAIN,
    id: "inherited-touched",
    title: laterWording.inheritedAtBoxesTheWorkOpens,
    about: laterWording.whatIsInAnOpenedBox,
    findings: standing(findings, "inherited-touched"),
  },
  {
    ...PLAIN,
    id: "inherited",
    title: laterWording.inheritedNotTouched2,
    about: laterWording.thereBeforeAtBoxesThatThe,
    findings: standing(findings, "inherited"),
  },
  notCompared(findings),
];

const foundGroups = (findings: readonly Finding[]): readonly FindingGroup[] => [
  { ...PLAIN, id: "stays", title: laterWording.stays, findings: standing(findings, "stays") },
  { ...PLAIN, id: "repaired", title: laterWording.repairedByThePlan2, findings: standing(findings, "repaired") },
  notCompared(findings),
];

const standing = (findings: readonly Finding[], wanted: Standing): readonly Finding[] =>
  findings.filter((finding) => finding.standing === wanted);

/** In the moment between starting proposed and the first answer about it. */
const notCompared = (findings: readonly Finding[]): FindingGroup => ({
  ...PLAIN,
  id: "not-compared",
  title: laterWording.beingCompared,
  findings: findings.filter((finding) => finding.standing === undefined),
});

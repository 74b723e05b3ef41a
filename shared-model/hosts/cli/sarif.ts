import { pathToFileURL } from "node:url";
import type { CannotTell, Severity, Standing, Subject } from "../../answers/finding.ts";
import { getEdition } from "../../rules/editions/editions.ts";
import { helpPage } from "../../rules/help-page.ts";
import { rules } from "../../rules/registry.ts";
import type { CheckedFile, CheckedFinding } from "./checked-file.ts";

/** OASIS SARIF 2.1.0. A danger and a violation are both an error there; the result's own properties keep them apart. */
const LEVELS: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  danger: "error",
  violation: "error",
  caution: "warning",
  advice: "note",
};

/** Against as found as the baseline; what is repaired is a result of as found, and has no state there. */
const BASELINE: Readonly<Partial<Record<Standing, "new" | "unchanged">>> = {
  introduced: "new",
  inherited: "unchanged",
  "inherited-touched": "unchanged",
};

/**
 * A SARIF 2.1.0 log: one run for each file and state, with every rule of the catalogue. What cannot be told is a result of
 * kind "open" (3.27.9), a person's acknowledgement a suppression (3.35).
 */
export const checkAsSarif = (checked: readonly CheckedFile[]): object => ({
  $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
  version: "2.1.0",
  runs: checked.map(run),
});

function run({ file, report, findings }: CheckedFile): object {
  const { edition, state, couldNotTell, checksRun, amendments } = report;
  const at = file === "-" ? undefined : { uri: pathToFileURL(file).href };
  return {
    tool: { driver: { name: "Loadside", rules: DESCRIPTORS } },
    automationDetails: { id: `${state}/` },
    ...(at !== undefined && { artifacts: [{ location: at, roles: ["analysisTarget"] }] }),
    columnKind: "utf16CodeUnits",
    results: [...findings.map((each) => findingResult(each, at)), ...couldNotTell.map((each) => openResult(each, at))],
    properties: { edition, editionVerified: getEdition(edition).verified, state, checksRun, amendments },
  };
}

const DESCRIPTORS: readonly object[] = rules.map((rule) => ({
  id: rule.id,
  shortDescription: { text: rule.summary },
  fullDescription: { text: rule.why },
  help: { text: `${rule.summary} ${rule.why}`, markdown: helpPage(rule) },
  defaultConfiguration: { level: LEVELS[rule.severity] },
  properties: { severity: rule.severity, status: rule.status, scope: rule.scope, sections: rule.sections },
}));

const INDEX: ReadonlyMap<string, number> = new Map(rules.map(({ id }, index) => [id, index]));

type Location = { readonly uri: string } | undefined;

/** What stands in the program without being a rule of the catalogue has no place in its list. */
const ruleOf = (id: string): object => {
  const ruleIndex = INDEX.get(id);
  return { ruleId: id, ...(ruleIndex !== undefined && { ruleIndex }) };
};

function findingResult({ finding, fix, offers, acknowledged }: CheckedFinding, at: Location): object {
  const { rule, key, severity, status, message, numbers, section, basis, folded, standing, existing } = finding;
  const baselineState = standing && BASELINE[standing];
  return {
    ...ruleOf(rule),
    kind: "fail",
    level: existing === true ? LEVELS.caution : LEVELS[severity],
    message: { text: message },
    locations: [locationOf(finding.subjects, at)],
    partialFingerprints: { "finding/v1": key },
    ...(baselineState !== undefined && { baselineState }),
    ...(acknowledged !== undefined && {
      suppressions: [
        {
          kind: "external",
          status: "accepted",
          justification: `${acknowledged.by}, ${acknowledged.at}: ${acknowledged.reason}`,
        },
      ],
    }),
    properties: {
      severity,
      status,
      numbers,
      folded,
      ...(section !== undefined && { section }),
      ...(finding.textOf !== undefined && { textOf: finding.textOf }),
      ...(finding.amendments !== undefined && { amendments: finding.amendments }),
      ...(basis !== undefined && { basis }),
      ...(standing !== undefined && { standing }),
      ...(fix !== undefined && { fix: fix.title }),
      ...(offers.length > 0 && { offers: offers.map(({ title }) => title) }),
    },
  };
}

const openResult = ({ rule, key, subjects, message, missing }: CannotTell, at: Location): object => ({
  ...ruleOf(rule),
  kind: "open",
  level: "none",
  message: { text: message },
  locations: [locationOf(subjects, at)],
  partialFingerprints: { "finding/v1": key },
  properties: { missing },
});

/** The file has no lines that a person would look up: a thing is told by its name and its id. */
const locationOf = (subjects: readonly Subject[], at: Location): object => ({
  ...(at !== undefined && { physicalLocation: { artifactLocation: { ...at, index: 0 } } }),
  logicalLocations: subjects.map(({ kind, id, name }) => ({ name, fullyQualifiedName: `${kind}/${id}`, kind })),
});

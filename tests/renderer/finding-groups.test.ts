/** How findings are put under headings. A finding is a plain value here: nothing electrical is decided in the window. */
import { expect, test } from "vitest";
import { groupFindings, type ToGroup } from "../../renderer/state/finding-groups.ts";
import type { Finding, Severity, Standing } from "../../shared-model/answers/finding.ts";

const finding = (key: string, severity: Severity, standing?: Standing): Finding => ({
  key,
  rule: "a-rule",
  severity,
  status: "draft",
  state: standing === "repaired" || standing === "stays" ? "as-found" : "proposed",
  subjects: [],
  message: `${key} is wrong.`,
  numbers: {},
  folded: 0,
  foldedSubjects: [],
  ...(standing !== undefined && { standing }),
});

const shown = (all: Partial<ToGroup>) =>
  groupFindings({
    state: "proposed",
    compared: true,
    findings: [],
    asFound: [],
    isAcknowledged: () => false,
    ...all,
  }).map(({ id, findings }) => [id, findings.map(({ key }) => key)]);

test("proposed tells apart what the plan brings, what it opens and what it leaves, and what it repaired", () => {
  const findings = [
    finding("danger of ours", "danger", "introduced"),
    finding("over there", "violation", "inherited-touched"),
    finding("ours", "violation", "introduced"),
    finding("left alone", "caution", "inherited"),
  ];
  const asFound = [finding("gone", "violation", "repaired"), finding("left alone", "violation", "stays")];
  expect(shown({ findings, asFound })).toEqual([
    ["introduced", ["danger of ours", "ours"]],
    ["inherited-touched", ["over there"]],
    ["inherited", ["left alone"]],
    ["repaired", ["gone"]],
  ]);
});

test("as found tells apart what the plan repairs and what stays", () => {
  const findings = [finding("gone", "violation", "repaired"), finding("left alone", "violation", "stays")];
  expect(shown({ state: "as-found", findings, asFound: findings })).toEqual([
    ["stays", ["left alone"]],
    ["repaired", ["gone"]],
  ]);
});

test("while nothing is proposed they are grouped by severity", () => {
  const findings = [finding("a", "danger"), finding("b", "caution"), finding("c", "caution")];
  expect(shown({ state: "as-found", compared: false, findings, asFound: findings })).toEqual([
    ["danger", ["a"]],
    ["caution", ["b", "c"]],
  ]);
});

test("what is acknowledged goes aside, a danger never does", () => {
  const findings = [finding("deadly", "danger", "introduced"), finding("known", "violation", "inherited")];
  expect(shown({ findings, isAcknowledged: () => true })).toEqual([
    ["introduced", ["deadly"]],
    ["acknowledged", ["known"]],
  ]);
});

test("as-found edits that were not carried over come first, and no word puts them aside", () => {
  const held: Finding = { ...finding("held back", "caution", "introduced"), rule: "not-carried-over" };
  const findings = [finding("deadly", "danger", "introduced"), held];
  expect(shown({ findings, isAcknowledged: () => true })).toEqual([
    ["not-carried-over", ["held back"]],
    ["introduced", ["deadly"]],
  ]);
});

test("no finding is lost or shown twice, whatever it is and however it stands", () => {
  const severities: readonly Severity[] = ["danger", "violation", "caution", "advice"];
  const standings: readonly (Standing | undefined)[] = ["introduced", "inherited", "inherited-touched", undefined];
  const findings = severities.flatMap((severity) =>
    standings.map((standing) => finding(`${severity} ${standing}`, severity, standing)),
  );
  for (const compared of [true, false]) {
    const groups = shown({ findings, compared, isAcknowledged: ({ severity }) => severity !== "advice" });
    expect(groups.flatMap(([, keys]) => keys).sort()).toEqual(findings.map(({ key }) => key).sort());
  }
});

test("cautions at boxes that the plan leaves alone say what they are", () => {
  const [group] = groupFindings({
    state: "proposed",
    compared: true,
    findings: [finding("left alone", "caution", "inherited")],
    asFound: [],
    isAcknowledged: () => false,
  });
  expect(group?.about).toMatch(/shown as cautions.*Opening the box/);
});

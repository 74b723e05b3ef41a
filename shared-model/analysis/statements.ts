import type { Finding, Severity, Subject } from "../answers/finding.ts";
import type { DeviceId } from "../model/ids.ts";
import { type OutletKey, outletKey, parseOutlet } from "../model/ids.ts";
import { findingKey } from "../rules/fold.ts";
import type { FoldedAnswers } from "./check-state.ts";

/** What a rule said, whether it shows as a finding or is folded under its cause. */
export interface Statement {
  readonly key: string;
  readonly rule: string;
  readonly severity: Severity;
  readonly subjects: readonly Subject[];
  readonly message: string;
}

/** Devices of proposed by the ones of as found that they came for. */
export type FormerDevices = ReadonlyMap<DeviceId, DeviceId>;

const cache = new WeakMap<FoldedAnswers, readonly Statement[]>();

/** Everything that was said of a scope: comparing what shows would call new what only lost its cause. */
export function statementsOf(scope: FoldedAnswers): readonly Statement[] {
  let statements = cache.get(scope);
  if (statements === undefined) {
    statements = scope.parts.flatMap(({ reports, ownReports }) =>
      [
        ...reports.map(({ rule, report }) => ({
          ...report,
          rule: rule.id,
          severity: report.severity ?? rule.severity,
        })),
        ...ownReports.map((report) => ({ ...report, rule: report.ruleId, severity: report.severity ?? "advice" })),
      ].map(({ rule, severity, subjects, message }) => ({
        key: findingKey(rule, subjects),
        rule,
        severity,
        subjects,
        message,
      })),
    );
    cache.set(scope, statements);
  }
  return statements;
}

/** What the same rule said of other things and is folded under a finding: one cause, told once. */
export const alikeUnder = (finding: Finding, scope: FoldedAnswers): readonly Statement[] =>
  finding.folded === 0
    ? []
    : statementsOf(scope).filter(
        ({ rule, key, subjects: [first] }) =>
          rule === finding.rule &&
          key !== finding.key &&
          finding.foldedSubjects.some(({ kind, id }) => kind === first?.kind && id === first.id),
      );

/**
 * Keys under which the same statement may have been made before: a device that replaces another goes by the name of the
 * other, in its terminals and outlets too, and an outlet goes for its halves and a half for the whole, since breaking a
 * tab off mends nothing. The first is the key with nothing but the devices exchanged.
 */
export function formerKeys(
  { rule, subjects }: Pick<Statement, "rule" | "subjects">,
  former: FormerDevices,
): readonly string[] {
  let lists: readonly (readonly Subject[])[] = [[]];
  for (const subject of subjects) {
    const ids = formerIds(subject, former);
    lists = ids.flatMap((id) => lists.map((list) => [...list, { ...subject, id }]));
  }
  return lists.map((list) => findingKey(rule, list));
}

function formerIds({ kind, id }: Subject, former: FormerDevices): readonly string[] {
  if (kind === "device") return [former.get(id as DeviceId) ?? id];
  if (kind === "terminal") {
    const dot = id.indexOf(".");
    const device = id.slice(0, dot) as DeviceId;
    return [`${former.get(device) ?? device}${id.slice(dot)}`];
  }
  if (kind !== "outlet") return [id];
  const { device, half } = parseOutlet(id as OutletKey);
  const before = former.get(device) ?? device;
  const whole = outletKey(before);
  return half === undefined
    ? [whole, outletKey(before, "upper"), outletKey(before, "lower")]
    : [outletKey(before, half), whole];
}

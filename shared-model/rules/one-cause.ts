import type { WrongPlace } from "../solver/section.ts";
import type { Report } from "./rule.ts";

/** A finding, and what it shares with those that the same repair takes away; undefined where it stands alone. */
export interface OfCause {
  readonly cause: string | undefined;
  readonly report: Report;
}

/** Equal for the same place in the wiring; undefined where no end is known that could be mended. */
export const causeAt = (place: WrongPlace | undefined): string | undefined =>
  place === undefined || place.ends.length === 0 ? undefined : `${place.enclosure}|${[...place.ends].sort().join()}`;

/** Findings of one rule, in their order: the first of a cause stands for it, and the others are folded under that one. */
export function oncePerCause(rule: string, found: readonly OfCause[]): readonly Report[] {
  const byCause = new Map<string, Report[]>();
  for (const { cause, report } of found) {
    if (cause === undefined) continue;
    const known = byCause.get(cause);
    if (known === undefined) byCause.set(cause, [report]);
    else known.push(report);
  }
  return found.map(({ cause, report }) => {
    const [first, ...others] = cause === undefined ? [] : (byCause.get(cause) ?? []);
    if (first !== report || others.length === 0) return report;
    const subjects = others.flatMap((one) => one.subjects.slice(0, 1).map(({ id }) => id));
    return { ...report, hides: [...(report.hides ?? []), { rule, subjects }] };
  });
}

import type { Severity } from "../../shared-model/answers/finding.ts";
import type { History } from "../../shared-model/commands/history.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { wording } from "./words.ts";

/** What the checks say, as far as it is read aloud after an edit. */
export interface HeardFindings {
  readonly findings: readonly { readonly key: string; readonly severity: Severity }[];
  readonly couldNotTell: number;
}

/** What the last step was: done, taken back, or done again; undefined when none was taken. */
export function spokenStep(before: History, after: History): string | undefined {
  const last = after.past.at(-1);
  if (after.nextSerial > before.nextSerial) return last === undefined ? undefined : `${last.title}.`;
  const [next] = after.future;
  if (after.future.length > before.future.length && next !== undefined) return wording.undone(next.title);
  if (after.future.length < before.future.length && last !== undefined) return wording.doneAgain(last.title);
  return undefined;
}

/** How many findings there are, the worst of them, and how many are new. It never says more than what was checked. */
export function spokenFindings(before: HeardFindings, { findings, couldNotTell }: HeardFindings): string {
  const unsure = couldNotTell === 0 ? "" : wording.couldNotBeTold2(couldNotTell);
  const worst = SEVERITIES.find((severity) => findings.some((finding) => finding.severity === severity));
  if (worst === undefined) return wording.noFindings(unsure);
  const known = new Set(before.findings.map(({ key }) => key));
  const fresh = findings.filter(({ key }) => !known.has(key)).length;
  const count = findings.length === 1 ? wording.n1Finding : wording.findings(findings.length);
  return `${count}, worst: ${worst}${fresh === 0 ? "" : wording.newWord(fresh)}.${unsure}`;
}

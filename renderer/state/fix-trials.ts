import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { StateName } from "../../shared-model/model/project.ts";

/** Asks the checks what would follow; undefined when the document moved on meanwhile or nothing is checking. */
export type AskChecks = (
  state: StateName,
  calls: readonly CommandCall[],
  mends: string,
) => Promise<readonly PreviewResult[] | undefined>;

let askChecks: AskChecks | undefined;

/** Says who is to be asked; the state folder does not know the checks. */
export function tryFixesBy(ask: AskChecks): void {
  askChecks = ask;
}

/**
 * What would follow from each fix of a finding: the plain one first, then its offers. An `objection` says why a fix is
 * not to be applied. Undefined where nobody can tell now.
 */
export async function judgeFixes(finding: Finding): Promise<readonly (PreviewResult | undefined)[]> {
  const { fix, offers = [], key, state } = finding;
  const calls = [...(fix === undefined ? [] : [fix]), ...offers].map(({ call }) => call);
  const results = calls.length === 0 ? [] : await askChecks?.(state, calls, key);
  return calls.map((_, index) => results?.[index]);
}

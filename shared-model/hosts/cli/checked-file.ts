import type { Report } from "../../analysis/report.ts";
import type { Session } from "../../analysis/session.ts";
import { tryFix } from "../../analysis/try-fix.ts";
import type { Finding, Fix } from "../../answers/finding.ts";
import type { Acknowledgement, StateName } from "../../model/project.ts";
import { acknowledgementOf } from "../../queries/acknowledgement-of.ts";

/** A finding with what a person can do about it, and what one has said about it. */
export interface CheckedFinding {
  readonly finding: Finding;
  /** Those that hold when they are tried: each removes the finding, brings no danger or violation, unprotects nothing. */
  readonly fix: Fix | undefined;
  readonly offers: readonly Fix[];
  /** A person's word that covers the finding as it is now. */
  readonly acknowledged: Acknowledgement | undefined;
}

/** What the rules say about one state of one file. */
export interface CheckedFile {
  readonly file: string;
  readonly report: Report;
  readonly findings: readonly CheckedFinding[];
}

export function checkedFile(file: string, session: Session, state: StateName): CheckedFile {
  const report = session.report(state);
  return { file, report, findings: report.findings.map((finding) => checkedFinding(session, finding)) };
}

function checkedFinding(session: Session, finding: Finding): CheckedFinding {
  const holds = (fix: Fix): boolean => tryFix(session, finding, fix).applies;
  const word = acknowledgementOf(session.project, finding);
  return {
    finding,
    fix: finding.fix !== undefined && holds(finding.fix) ? finding.fix : undefined,
    offers: (finding.offers ?? []).filter(holds),
    acknowledged: word?.covers === true ? word.acknowledgement : undefined,
  };
}

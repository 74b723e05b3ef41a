import type { Finding, Fix } from "../answers/finding.ts";
import type { Project } from "../model/project.ts";
import type { Session } from "./session.ts";
import type { Brings } from "./try-call.ts";

/** How a fix fares on a copy of the document; `why` says in sentences why it is not to be offered. */
export type TriedFix =
  | { readonly applies: true; readonly project: Project; readonly brings: Brings }
  | { readonly applies: false; readonly why: string };

/**
 * Tries one fix or offer of a finding: it applies when the command runs, the finding is gone afterwards, no danger or
 * violation has come, and every outlet that was protected still is.
 */
export function tryFix(session: Session, finding: Pick<Finding, "key" | "state">, fix: Fix): TriedFix {
  const tried = session.tryCall(finding.state, fix.call, finding.key);
  if (!tried.done) return { applies: false, why: tried.refused };
  const { edit, brings } = tried;
  if (brings.objection !== undefined) return { applies: false, why: brings.objection };
  return { applies: true, project: edit.project, brings };
}

import type { Finding } from "../answers/finding.ts";
import type { Acknowledgement, Project } from "../model/project.ts";
import { severityRank } from "../model/severity.ts";

export interface Acknowledged {
  readonly acknowledgement: Acknowledgement;
  /** False when the finding says something else now than it did when the word was given, or is graver. */
  readonly covers: boolean;
}

/** The word that a person gave for a finding; undefined when nobody did. A word without what was said covers whatever it says. */
export function acknowledgementOf(
  { acknowledgements }: Pick<Project, "acknowledgements">,
  { key, state, message, severity }: Pick<Finding, "key" | "state" | "message" | "severity">,
): Acknowledged | undefined {
  const acknowledgement = acknowledgements.find((one) => one.finding === key && one.state === state);
  if (acknowledgement === undefined) return undefined;
  const { said, severity: then } = acknowledgement;
  const covers =
    (said === undefined || said === message) && (then === undefined || severityRank(severity) >= severityRank(then));
  return { acknowledgement, covers };
}

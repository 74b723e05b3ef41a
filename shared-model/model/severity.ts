/** Worst first: shock or fire now; breaks an adopted rule; will not work, or depends; advice. */
export const SEVERITIES = ["danger", "violation", "caution", "advice"] as const;
export type Severity = (typeof SEVERITIES)[number];

const RANKS = new Map<Severity, number>(SEVERITIES.map((severity, rank) => [severity, rank]));

/** 0 for the worst. */
export const severityRank = (severity: Severity): number => RANKS.get(severity) ?? SEVERITIES.length;

/** At danger or violation: what an exit status and the judging of a repair count. */
export const isSerious = ({ severity }: { readonly severity: Severity }): boolean =>
  severity === "danger" || severity === "violation";
